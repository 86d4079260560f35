#pragma once

#include "netmend/base/said.h"
#include "netmend/casework/proof.h"
#include "netmend/jobbook/job.h"
#include "netmend/probing/verdict.h"

/// What is said of a reading.
namespace netmend {

/// `in range`, `open`, `short` …
[[nodiscard]] Said nameOf(VerdictKind kind);

/// The same of a reading in the book, and that it comes and goes.
[[nodiscard]] Said nameOf(const JobReading& reading);
/// What was read here before, where it was something else: `it read OL before`.
[[nodiscard]] Said otherwiseSaid(const JobReading& before);

/// `OL`, `0.441 V to 0.465 V`, `OL or 0.441 V to 0.465 V`.
[[nodiscard]] Said whatIsExpected(const Expected& expected);
/// The same of what a reading was judged by, or a proof will be; empty: nothing to compare.
[[nodiscard]] Said whatIsExpected(const JobReading& reading);
[[nodiscard]] Said whatIsExpected(const ProofPoint& point);

/// Where what is expected of a proof comes from, where that is not plain: "as J4.9, on the same net". Empty
/// else.
[[nodiscard]] Said whereItIsFrom(ExpectedBy by, const std::string& asAt);

/// One line for the bench: the value alone where it is in range, else
/// `OL; 8 good boards read 0.632 V to 0.653 V`.
[[nodiscard]] Said verdictLine(const Reading& reading, const Verdict& verdict);
[[nodiscard]] Said verdictLine(const JobReading& reading);
/// What stands there besides the value; empty: nothing.
[[nodiscard]] Said besideValueSaid(const Reading& reading, const Verdict& verdict);
[[nodiscard]] Said besideValueSaid(const JobReading& reading);

/// Why the verdict is what it is: reading, what was expected and from what, how far off, how rare, the odds.
[[nodiscard]] Said verdictReasons(const Reading& reading, const Verdict& verdict);
/// The same of a reading in the book. Of an older book it is what stands there, word for word.
[[nodiscard]] Said verdictReasons(const JobReading& reading);

} // namespace netmend
