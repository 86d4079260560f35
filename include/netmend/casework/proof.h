#pragma once

#include <optional>
#include <string>
#include <vector>

#include "netmend/board/lookup.h"
#include "netmend/casework/repair_data.h"
#include "netmend/jobbook/job.h"
#include "netmend/probing/expected.h"

/// What has to be measured again after a repair, and what it must read.
namespace netmend {

enum class ProofWhy {
  odd,      ///< it was odd before
  landing,  ///< a wire ends here
  endToEnd, ///< along the wire, from landing to landing
  neighbour ///< beside one of the others, and read before; or beside a soldered end
};

/// One thing to measure again.
struct ProofPoint {
  ProofWhy why = ProofWhy::odd;
  ProbePoint point;
  ProbePoint other{PinId{}, "GND"};
  ReadingMode mode = ReadingMode::diode;
  Condition condition;   ///< of the reading before, so that the two compare
  RepairActionId action; ///< which this is a proof of
  std::optional<Expected> expected;
  std::optional<ValueInterval> limits; ///< where no board says what to expect, but the wire does
  ExpectedBy expectedBy = ExpectedBy::goodBoards;
  std::string asAt; ///< the point on the same net whose expected value is taken
  std::optional<JobReading> before;
  std::optional<JobReading> now;
};

/// What a proof is made from.
struct ProofBasis {
  const Job& job;
  const Lookup* lookup; ///< null: places are known by their labels alone
  const ExpectedTable& expected;
  const RepairData& data;
};

/// In the order of the work: what was odd, both landings and the wire between them, then their neighbours.
/// None without a repair action that could be proved.
[[nodiscard]] std::vector<ProofPoint> proofPoints(const ProofBasis& basis);

/// A reading taken here, in the condition of the one before, as the proof that it is.
[[nodiscard]] JobReading judgedProof(const ProofPoint& point, const Reading& reading,
                                     const ProofBasis& basis);

/// The same place measured in the same way, in whatever condition.
[[nodiscard]] bool isAt(const ProofPoint& point, const Reading& reading);

} // namespace netmend
