#pragma once

#include "netmend/base/said.h"
#include "netmend/isolation/line_names.h"
#include "netmend/jobbook/job.h"

/// What an isolation found, in words.
namespace netmend {

/// "> 99.9 %", "12.3 %".
[[nodiscard]] Said shareSaid(double probability);

/// "open: joint of J4.9, or 2 more places that read the same".
[[nodiscard]] Said nameOf(const FoundFault& fault);
/// Its two parts: the likeliest place, and how many more read the same (empty: none).
[[nodiscard]] Said headlineOf(const FoundFault& fault);
[[nodiscard]] Said othersSaid(const FoundFault& fault);
[[nodiscard]] Said nameOf(const FaultClass& faultClass, const LineNames& names);
/// What one reading says for or against a suspect: "J4.11 read 0.471 V; here 0.453 ± 0.008 V is expected: 34
/// times less likely".
[[nodiscard]] Said evidenceSaid(const JobEvidence& evidence);
/// A suspect as a job keeps it; one of an older book as it was written there.
[[nodiscard]] Said nameOf(const JobSuspect& suspect);
/// … with its most telling readings.
[[nodiscard]] Said explanationOf(const JobSuspect& suspect);
/// Readings that should be taken again, and why.
[[nodiscard]] std::vector<Said> readingsToTakeAgain(const Isolation& isolation, const LineNames& names,
                                                    const Suspects& suspects);

/// One line: "Halves what is left."
[[nodiscard]] Said probeLine(const NextProbe& next, const ProbeProposal& probe);
/// "diode mode at J4.11: narrows 8.3 possible repairs down to 4.3 in 15 s; …"
[[nodiscard]] Said probeReasons(const LineNames& names, const NextProbe& next, const ProbeProposal& probe);
/// Why to probe on, or to stop, in figures.
[[nodiscard]] Said adviceReasons(const Isolation& isolation, const LineNames& names, const NextProbe& next);

[[nodiscard]] Said noticeSaid(const LineNotice& notice);
/// Why the reading was not used.
[[nodiscard]] Said setAsideSaid(const SetAside& aside);

} // namespace netmend
