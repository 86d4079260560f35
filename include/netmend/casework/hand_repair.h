#pragma once

#include <optional>
#include <string>
#include <vector>

#include "netmend/casework/board_under_work.h"
#include "netmend/jobbook/job.h"
#include "netmend/jumper/work_steps.h"
#include "netmend/probing/expected.h"

namespace netmend {

/// A repair that somebody names, instead of a way that was proposed.
struct HandRepair {
  RepairKind kind = RepairKind::resolder;
  /// A part, joint, place or net; both ends of a wire or sides of a solder bridge; of `other` what is done.
  std::string target;
  std::string reason;
  friend bool operator==(const HandRepair&, const HandRepair&) = default;
};

/// One line as it is typed: "J4.9 U3.12, track torn". Up to the first comma what is worked on, behind it why.
/// Of `other` all of it is what is done.
[[nodiscard]] HandRepair handRepairFrom(RepairKind kind, const std::string& line);

/// What a repair by hand is made from.
struct HandRepairBasis {
  const BoardUnderWork& board; ///< of none, places are known by their labels alone
  const ExpectedTable& expected;
  const std::vector<JobReading>& readings; ///< the job's
  const WorkSteps& steps;
  ProbePoint odd{}; ///< the pin that the repair is about: measured where the target is no place of its own
};

struct HandRepaired {
  RepairAction action;
  std::optional<Said> doubt{}; ///< what somebody should look at twice: the board says otherwise
};

/// With its steps, and what their checks must read by what good boards read at the same place: those that
/// name no figure get it, so that the work stops where the repair did not help. Two ends stand apart by "to",
/// a dash or an arrow, or are two words. Fails for an empty target, a wire that has not two ends, and a pin
/// that its part has not.
[[nodiscard]] Result<HandRepaired> handRepair(const HandRepair& repair, const HandRepairBasis& basis);

} // namespace netmend
