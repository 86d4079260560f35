#pragma once

#include <string>

#include "netmend/jobbook/job.h"

/// What books up to version 4 kept in words, read once, when such a book is brought up to date. This is how
/// those versions wrote; it does not change with what the program says today.
namespace netmend::oldbook {

/// `verdict`: "open", "in range" …; `expected`: "OL", "0.441 V to 0.465 V", several joined by " or ". Not
/// judged, or not known: none.
[[nodiscard]] std::optional<Judged> judgedOf(const std::string& verdict, const std::string& expected,
                                             ReadingMode mode);

/// What a step that tries the device said to expect.
inline constexpr std::string_view functionWorks = "It works as on a good device";

/// The labels of a jumper's two ends: "C12.1 (part terminal)", "via at (12.1, 8.0) mm".
struct Ends {
  std::string from;
  std::string to;
};
[[nodiscard]] std::optional<Ends> endsOf(const std::string& jumper);
/// The jumper's JSON with the point that each end is read at: `C12.1` of "C12.1 (part terminal)".
[[nodiscard]] std::string jumperWithPoints(const std::string& jumper);

/// A check between two work steps, in the words of version 4 and before.
struct Check {
  std::string text;
  std::string expected;
  std::string target; ///< of its action
  std::optional<Ends> jumper;
};
/// Reads `0.649 V ± 12 mV in diode mode: go on. …`, `OL in diode mode: …`, `About 0.05 ohm …` (up to twice
/// that, as the step itself says) and `0 V across …` (what would be written so). The place is that of the
/// jumper's ends which the step names, else the action's target.
[[nodiscard]] StepMeasure measureOf(const Check& check);

} // namespace netmend::oldbook
