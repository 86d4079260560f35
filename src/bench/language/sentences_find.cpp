// Verdicts, suspects and the next probe.
#include "sentence_tables.h"

#include <array>

#include <QtGlobal>

namespace netmend {

namespace {

constexpr auto findTable = std::to_array<const char*>({
    QT_TRANSLATE_NOOP("core", "reads {}"),
    QT_TRANSLATE_NOOP("core", "more than a million to 1"),
    QT_TRANSLATE_NOOP("core", "{n} to 1"),
    QT_TRANSLATE_NOOP("core", "1 to more than a million"),
    QT_TRANSLATE_NOOP("core", "1 to {n}"),
    QT_TRANSLATE_NOOP("core", "less than once in a million"),
    QT_TRANSLATE_NOOP("core", "once in {n}"),
    QT_TRANSLATE_NOOP("core", "{n} good board read OL"),
    QT_TRANSLATE_NOOP("core", "{n} good boards read OL"),
    QT_TRANSLATE_NOOP("core", "{n} good board read {}"),
    QT_TRANSLATE_NOOP("core", "{n} good boards read {}"),
    QT_TRANSLATE_NOOP("core", "of {n} good boards {n} read OL, the others {}"),
    QT_TRANSLATE_NOOP("core", "entered by hand: {}"),
    QT_TRANSLATE_NOOP("core", "no board measured; the default for {}: {}"),
    QT_TRANSLATE_NOOP("core", "a pin with a junction"),
    QT_TRANSLATE_NOOP("core", "{id} pins"),
    QT_TRANSLATE_NOOP("core", "{n} to {n}"),
    QT_TRANSLATE_NOOP("core", "{n} or {n}"),
    QT_TRANSLATE_NOOP("core", "OL or {}"),
    QT_TRANSLATE_NOOP("core", "{n} to {n} or {}"),
    QT_TRANSLATE_NOOP("core", "{n} below the expected {n}, {n} times the spread"),
    QT_TRANSLATE_NOOP("core", "{n} above the expected {n}, {n} times the spread"),
    QT_TRANSLATE_NOOP("core", "a good board reads something as telling {}"),
    QT_TRANSLATE_NOOP("core", "odds of a fault here {}"),
    QT_TRANSLATE_NOOP("core", "flagged for its odds, though the walk's rate allows only {}"),
    QT_TRANSLATE_NOOP("core", "flagged from {} on"),
    QT_TRANSLATE_NOOP("core", "press again: a missed contact reads OL too"),
    QT_TRANSLATE_NOOP("core", "it was still rising: wait until it has settled"),
    QT_TRANSLATE_NOOP(
        "core",
        "no good board was measured here in this mode and condition, and nobody entered what to expect"),
    QT_TRANSLATE_NOOP("core", "no rule in the data for readings in {}"),
    QT_TRANSLATE_NOOP("core", "anything is possible"),
    QT_TRANSLATE_NOOP("core", "OL is expected"),
    QT_TRANSLATE_NOOP("core", "{n} ± {n} is expected"),
    QT_TRANSLATE_NOOP("core", "{n} ± {n} V is expected, or OL ({n} %)"),
    QT_TRANSLATE_NOOP("core", "as computed from what is behind the pins"),
    QT_TRANSLATE_NOOP("core", "{} read {}; here {}: {}"),
    QT_TRANSLATE_NOOP("core", "as likely as before"),
    QT_TRANSLATE_NOOP("core", "{n} times likelier"),
    QT_TRANSLATE_NOOP("core", "{n} times less likely"),
    QT_TRANSLATE_NOOP("core", "more than {n} times likelier"),
    QT_TRANSLATE_NOOP("core", "more than {n} times less likely"),
    QT_TRANSLATE_NOOP("core", "Before any reading {}"),
    QT_TRANSLATE_NOOP("core", "{n} more readings tell less"),
    QT_TRANSLATE_NOOP(
        "core",
        "{} read {}, but {} if it is \"{}\": the probe may have slipped ({n} %); take this reading again"),
    QT_TRANSLATE_NOOP("core",
                      "{} read OL, but good boards read {n} V there: if the probe had slipped, the line "
                      "may be sound; take this reading again"),
    QT_TRANSLATE_NOOP("core", "{} read OL, but good boards read {n} V there: take this reading again before "
                              "anything else"),
    QT_TRANSLATE_NOOP("core", "Shares on a line of this size are worked out to about {n} % only"),
    QT_TRANSLATE_NOOP("core", "open: {}"),
    QT_TRANSLATE_NOOP("core", "{}, or {n} more place that reads the same"),
    QT_TRANSLATE_NOOP("core", "{}, or {n} more places that read the same"),
    QT_TRANSLATE_NOOP("core", "no pin"),
    QT_TRANSLATE_NOOP("core", "{list} and {n} more"),
    QT_TRANSLATE_NOOP("core", "{list} and {id}"),
    QT_TRANSLATE_NOOP("core", "the line is sound"),
    QT_TRANSLATE_NOOP("core", "none of these"),
    QT_TRANSLATE_NOOP("core", "short to ground somewhere on the line"),
    QT_TRANSLATE_NOOP("core", "joint of {}"),
    QT_TRANSLATE_NOOP("core", "joint of a pin"),
    QT_TRANSLATE_NOOP("core", "a pin"),
    QT_TRANSLATE_NOOP("core", "track"),
    QT_TRANSLATE_NOOP("core", "track from {} to {}"),
    QT_TRANSLATE_NOOP("core", "via at {}"),
    QT_TRANSLATE_NOOP("core", "via at {}, top"),
    QT_TRANSLATE_NOOP("core", "via at {}, bottom"),
    QT_TRANSLATE_NOOP("core", "a via"),
    QT_TRANSLATE_NOOP("core", "{} itself"),
    QT_TRANSLATE_NOOP("core", "a part in the line"),
    QT_TRANSLATE_NOOP("core", "unknown way to {}"),
    QT_TRANSLATE_NOOP("core", "dead pin {} (inside the part, copper sound)"),
    QT_TRANSLATE_NOOP("core", "unknown way between {} on one side and {} on the other"),
    QT_TRANSLATE_NOOP("core", "pad of {}"),
    QT_TRANSLATE_NOOP("core", "track at {}"),
    QT_TRANSLATE_NOOP("core", "track at {}, {}"),
    QT_TRANSLATE_NOOP("core", "inner layer {n}"),
    QT_TRANSLATE_NOOP("core", "inner layer {n} ({})"),
    QT_TRANSLATE_NOOP("core", "narrows {n} possible repairs down to {n} in {n} s"),
    QT_TRANSLATE_NOOP("core", "continuity from {} to {}: {}"),
    QT_TRANSLATE_NOOP("core", "resistance from {} to {}: {}"),
    QT_TRANSLATE_NOOP("core", "OL is to be expected with {n} %"),
    QT_TRANSLATE_NOOP("core", "OL is to be expected with {n} %, else {n} ± {n} V"),
    QT_TRANSLATE_NOOP("core", "diode mode at {}: {}; {}"),
    QT_TRANSLATE_NOOP("core", "diode mode at {} once more, lest the probe had slipped: {}; {}"),
    QT_TRANSLATE_NOOP("core",
                      "as many as {n} equally likely repairs are left and the best guess holds {n} %"),
    QT_TRANSLATE_NOOP("core", "no place of this line can be reached"),
    QT_TRANSLATE_NOOP("core", "no reachable place would tell anything more"),
    QT_TRANSLATE_NOOP("core", "a wrong repair costs {}, on average {} from here"),
    QT_TRANSLATE_NOOP("core", "no reachable probe is worth its time (the best {})"),
    QT_TRANSLATE_NOOP("core", "probing on is worth its time"),
    QT_TRANSLATE_NOOP("core", "the way between {n} points is unknown: only breaks that cut off one of them "
                              "are considered; drawing part of the way tells more"),
    QT_TRANSLATE_NOOP("core", "copper whose way nobody has seen holds {n} % of the chances: there a break is "
                              "found between pins, not along the track; drawing that way would say where"),
    QT_TRANSLATE_NOOP("core", "a known-good value is for a pin that is not on this line"),
    QT_TRANSLATE_NOOP("core", "no good board's value is known on this line: readings are predicted to about "
                              "{n} mV; one value from a good board would make that about {n} mV"),
    QT_TRANSLATE_NOOP("core", "only one pin of this line is known: a break can not be placed; entering the "
                              "pins that it leads to would make it possible"),
    QT_TRANSLATE_NOOP("core", "the meter has no diode mode: only resistances are used"),
    QT_TRANSLATE_NOOP("core", "the value is not a number"),
    QT_TRANSLATE_NOOP("core", "taken in another condition than the expected values hold for"),
    QT_TRANSLATE_NOOP("core", "still rising: take it again when it has settled"),
    QT_TRANSLATE_NOOP("core", "{} is not a place on this line"),
    QT_TRANSLATE_NOOP("core", "the other lead is at {}, neither on ground nor on this line"),
    QT_TRANSLATE_NOOP("core", "diode mode from point to point is not used"),
    QT_TRANSLATE_NOOP("core", "the meter has no diode mode"),
    QT_TRANSLATE_NOOP("core", "a negative resistance"),
    QT_TRANSLATE_NOOP("core", "{} to ground is not used"),
    QT_TRANSLATE_NOOP("core", "readings of mode \"{}\" are not used"),
    QT_TRANSLATE_NOOP("core", "{}, other lead on {}"),
    QT_TRANSLATE_NOOP("core", "next probe: {}"),
    QT_TRANSLATE_NOOP("core", "break"),
    QT_TRANSLATE_NOOP("core", "break, {}"),
    QT_TRANSLATE_NOOP("core", "or here, {}"),
});

} // namespace

std::span<const char* const> findSentences() {
  return findTable;
}

} // namespace netmend
