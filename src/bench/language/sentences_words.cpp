// Words of enumerations, as files and command line have them.
#include "sentence_tables.h"

#include <array>

#include <QtGlobal>

namespace netmend {

namespace {

constexpr auto wordsTable = std::to_array<const char*>({
    QT_TRANSLATE_NOOP("core", "in range"),
    QT_TRANSLATE_NOOP("core", "open"),
    QT_TRANSLATE_NOOP("core", "short"),
    QT_TRANSLATE_NOOP("core", "low"),
    QT_TRANSLATE_NOOP("core", "high"),
    QT_TRANSLATE_NOOP("core", "reads where OL is expected"),
    QT_TRANSLATE_NOOP("core", "nothing to compare"),
    QT_TRANSLATE_NOOP("core", "diode"),
    QT_TRANSLATE_NOOP("core", "diode reversed"),
    QT_TRANSLATE_NOOP("core", "ohms"),
    QT_TRANSLATE_NOOP("core", "milliohms"),
    QT_TRANSLATE_NOOP("core", "continuity"),
    QT_TRANSLATE_NOOP("core", "volts"),
    QT_TRANSLATE_NOOP("core", "drop under current"),
    QT_TRANSLATE_NOOP("core", "temperature"),
    QT_TRANSLATE_NOOP("core", "settled"),
    QT_TRANSLATE_NOOP("core", "rising"),
    QT_TRANSLATE_NOOP("core", "unknown"),
    QT_TRANSLATE_NOOP("core", "booked in"),
    QT_TRANSLATE_NOOP("core", "probing"),
    QT_TRANSLATE_NOOP("core", "suspect found"),
    QT_TRANSLATE_NOOP("core", "repairing"),
    QT_TRANSLATE_NOOP("core", "proving"),
    QT_TRANSLATE_NOOP("core", "handed over"),
    QT_TRANSLATE_NOOP("core", "returned unrepaired"),
    QT_TRANSLATE_NOOP("core", "jumper"),
    QT_TRANSLATE_NOOP("core", "resolder"),
    QT_TRANSLATE_NOOP("core", "remove part"),
    QT_TRANSLATE_NOOP("core", "replace part"),
    QT_TRANSLATE_NOOP("core", "clean"),
    QT_TRANSLATE_NOOP("core", "cut track"),
    QT_TRANSLATE_NOOP("core", "not economic"),
    QT_TRANSLATE_NOOP("core", "fault"),
    QT_TRANSLATE_NOOP("core", "check"),
    QT_TRANSLATE_NOOP("core", "proof"),
    QT_TRANSLATE_NOOP("core", "connector"),
    QT_TRANSLATE_NOOP("core", "shield wall"),
    QT_TRANSLATE_NOOP("core", "battery"),
    QT_TRANSLATE_NOOP("core", "fastener"),
    QT_TRANSLATE_NOOP("core", "antenna"),
    QT_TRANSLATE_NOOP("core", "flex"),
    QT_TRANSLATE_NOOP("core", "heat-sensitive"),
    QT_TRANSLATE_NOOP("core", "tall part"),
    QT_TRANSLATE_NOOP("core", "signal"),
    QT_TRANSLATE_NOOP("core", "junction"),
    QT_TRANSLATE_NOOP("core", "supply"),
    QT_TRANSLATE_NOOP("core", "ground"),
    QT_TRANSLATE_NOOP("core", "unconnected"),
    QT_TRANSLATE_NOOP("core", "good"),
    QT_TRANSLATE_NOOP("core", "faulty"),
    QT_TRANSLATE_NOOP("core", "test pad"),
    QT_TRANSLATE_NOOP("core", "part terminal"),
    QT_TRANSLATE_NOOP("core", "via"),
    QT_TRANSLATE_NOOP("core", "tented via"),
    QT_TRANSLATE_NOOP("core", "scraped track"),
    QT_TRANSLATE_NOOP("core", "connector pin"),
    QT_TRANSLATE_NOOP("core", "top"),
    QT_TRANSLATE_NOOP("core", "bottom"),
    QT_TRANSLATE_NOOP("core", "four-wire ohms"),
    QT_TRANSLATE_NOOP("core", "DC volts"),
    QT_TRANSLATE_NOOP("core", "other"),
});

} // namespace

std::span<const char* const> wordsSentences() {
  return wordsTable;
}

} // namespace netmend
