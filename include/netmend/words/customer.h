#pragma once

#include <vector>

#include "netmend/base/said.h"
#include "netmend/jobbook/job.h"

/// What the customer is told: plain sentences, each made from the facts of one repair.
namespace netmend {

/// Mended, as far as anybody has measured: there is a repair, the job does not go back unrepaired, and no
/// reading taken after it was odd.
[[nodiscard]] bool isRepaired(const Job& job);

/// "The line KEY_COL3 was open between J4.9 and C28.1, most likely in a track inside the board." Empty:
/// nobody knows.
[[nodiscard]] Said foundSaid(const RepairAction& action);
/// The same of a suspect that nothing was done about.
[[nodiscard]] Said foundSaid(const FoundFault& fault);
/// One sentence for each thing found, none twice; without a repair what is likeliest, or how many pins are
/// odd.
[[nodiscard]] std::vector<Said> whatWeFound(const Job& job);

/// "Bridged J4.9 and C28.1 with 33 mm of wire."
[[nodiscard]] Said doneSaid(const RepairAction& action);
[[nodiscard]] std::vector<Said> whatWeDid(const Job& job);

/// The suspects of the line that was repaired: none where somebody has looked at another one since.
[[nodiscard]] std::vector<JobSuspect> suspectsOfRepair(const Job& job);

} // namespace netmend
