#include "netmend/words/step.h"

#include <cmath>

#include <fmt/format.h>

#include "joined.h"
#include "netmend/casework/function_check.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/words/fault.h"
#include "netmend/words/jumper.h"

namespace netmend {

namespace {

Said readsSaid(const std::optional<ExpectedReading>& expected, Pattern otherwise) {
  if (!expected) return otherwise;
  if (expected->overLimit) return pattern("core", "OL in diode mode");
  return said(pattern("core", "{} ± {} in diode mode"),
              readingText(expected->value.value, ReadingMode::diode),
              readingText(expected->giveOrTake.value, ReadingMode::diode));
}

/// In the order of `jumperGaps`.
Said jumperText(const std::string& text, const JumperRecord& jumper) {
  const WireFigures& figures = *jumper.figures;
  const Pattern rest = pattern("core", "the value that the rest of the line gives there");
  const Said stripping = figures.stripping.empty() ? Said(pattern("core", "strip its ends"))
                                                   : Said(dataPattern(figures.stripping));
  Said out =
      said(dataPattern(text), nameOf(jumper.from), nameOf(jumper.to), nameOf(jumper.side),
           Said(dataPattern(jumper.wire)), fmt::format("{:.1f} mm", figures.length.mm()),
           fmt::format("{:.0f} mm", std::ceil(figures.cutLength.mm())), stripping, figures.tacks,
           fmt::format("{:.3g} A", figures.current.value), fmt::format("{:.3g} mV", 1e3 * figures.drop.value),
           fmt::format("{:.3g} ohm", figures.resistance.value), readsSaid(figures.prediction.atFrom, rest),
           readsSaid(figures.prediction.atTo, rest),
           readsSaid(figures.prediction.bridged, pattern("core", "the value of a good board")));
  out.names.assign(jumperGaps.begin(), jumperGaps.end());
  return out;
}

/// What good boards read where a repair by hand is measured.
Said knownSaid(const WorkStep& step) {
  if (!step.measure || step.measure->mode != ReadingMode::diode || !step.measure->comparable())
    return pattern("core", "what a good board reads there");
  const StepMeasure& wanted = *step.measure;
  if (!wanted.interval) return asItIs("OL");
  Said range = said(pattern("core", "{} to {}"), readingText(wanted.interval->lowest, wanted.mode),
                    readingText(wanted.interval->highest, wanted.mode));
  return wanted.overLimit ? said(pattern("core", "OL or {}"), std::move(range)) : range;
}

std::string labelsOf(const RepairAction& action) {
  if (action.places.empty()) return action.target;
  std::string out;
  for (const ProbePoint& place : action.places)
    out += (out.empty() ? "" : ", ") + place.label;
  return out;
}

/// In the order of `repairGaps`.
Said textOf(const std::string& text, const WorkStep& step, const RepairAction& action) {
  if (text.empty()) return {};
  if (action.jumper) return action.jumper->figures ? jumperText(text, *action.jumper) : asItIs(text);
  const auto place = [&](std::size_t i) {
    return i < action.places.size() ? action.places[i].label : action.target;
  };
  Said out = said(dataPattern(text), action.target, action.reason, labelsOf(action), knownSaid(step),
                  place(0), place(1));
  out.names.assign(repairGaps.begin(), repairGaps.end());
  return out;
}

} // namespace

Said stepSaid(const WorkStep& step, const RepairAction& action) {
  return isFunctionCheck(step) ? asItIs(step.text) : textOf(step.text, step, action);
}

Said detailSaid(const WorkStep& step, const RepairAction& action) {
  return textOf(step.detail, step, action);
}

Said expectedSaid(const WorkStep& step, const RepairAction& action) {
  if (isFunctionCheck(step)) return pattern("core", "It works as on a good device");
  return textOf(step.expected, step, action);
}

Said otherwiseSaid(const WorkStep& step, const RepairAction& action) {
  return textOf(step.otherwise, step, action);
}

Said readSaid(const CheckRead& read, ReadingMode mode) {
  const std::string value = readingText(read.value, mode);
  if (read.outcome == StepOutcome::agrees) return said(pattern("core", "{}, as it must be"), value);
  if (read.outcome == StepOutcome::disagrees) return said(pattern("core", "{}, NOT as it must be"), value);
  return asItIs(value);
}

Said noteSaid(const WorkStep& step) {
  std::vector<Said> all;
  if (step.read && step.measure) all.push_back(readSaid(*step.read, step.measure->mode));
  // Done although it read wrong: somebody had a reason.
  const bool overruled = step.done && step.read && step.read->outcome == StepOutcome::disagrees;
  if (!step.note.empty())
    all.push_back(overruled ? said(pattern("core", "overruled: {}"), step.note) : asItIs(step.note));
  return joined(all);
}

Said reasonSaid(const RepairAction& action) {
  if (action.because) return nameOf(*action.because);
  if (!action.reason.empty()) return asItIs(action.reason);
  return action.jumper ? Said(pattern("core", "break at the edges named by hand")) : Said();
}

} // namespace netmend
