#pragma once

#include <filesystem>

#include "netmend/casework/injection.h"
#include "netmend/isolation/fault_priors.h"
#include "netmend/isolation/short_priors.h"
#include "netmend/jumper/proposal.h"
#include "netmend/jumper/work_steps.h"
#include "netmend/probing/verdict.h"
#include "netmend/sketch/chip_sizes.h"

namespace netmend {

/// All of the data folder that a repair needs, read once.
struct RepairData {
  ProbingData probing;
  FaultPriors priors;
  ProbeEfforts efforts;
  ShortPriors shorts;
  InjectionRules injection;
  JumperData jumper;
  WorkSteps work;
  ChipSizes sizes;
};
/// Errors name the file and a JSON pointer.
[[nodiscard]] Result<RepairData> loadRepairData(const std::filesystem::path& folder);

} // namespace netmend
