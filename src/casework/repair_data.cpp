#include "netmend/casework/repair_data.h"

namespace netmend {

Result<RepairData> loadRepairData(const std::filesystem::path& folder) {
  auto probing = loadProbingData(folder);
  if (!probing) return failure(probing.error());
  auto priors = readFaultPriors(folder / "fault_priors.json");
  if (!priors) return failure(priors.error());
  auto efforts = readProbeEfforts(folder / "efforts.json");
  if (!efforts) return failure(efforts.error());
  auto shorts = readShortPriors(folder / "fault_priors.json");
  if (!shorts) return failure(shorts.error());
  const auto injection = loadInjectionRules(folder / "injection.json");
  if (!injection) return failure(injection.error());
  auto jumper = loadJumperData(folder);
  if (!jumper) return failure(jumper.error());
  auto work = loadWorkSteps(folder / "work_steps.json");
  if (!work) return failure(work.error());
  auto sizes = loadChipSizes(folder / "part_sizes.json");
  if (!sizes) return failure(sizes.error());
  return RepairData{std::move(*probing), std::move(*priors), std::move(*efforts), std::move(*shorts),
                    *injection,          std::move(*jumper), std::move(*work),    std::move(*sizes)};
}

} // namespace netmend
