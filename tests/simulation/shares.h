#pragma once

#include <filesystem>
#include <map>
#include <optional>
#include <string>

#include "netmend/board/board.h"

namespace netmend::simulation {

struct TerminationShare {
  double junction = 0.0;
  double resistive = 0.0;
};

/// `data/fault_priors.json` as the simulator draws from it, read by means of its own.
struct FaultShares {
  double sound = 0.0;
  double slipped = 0.0;
  double solderJoint = 0.0, connectorJoint = 0.0, trackPerMm = 0.0, via = 0.0, part = 0.0;
  double deadPin = 0.0, shortToGround = 0.0;
  double railOhms = 300.0, railFactor = 4.0;
  double readingSpread = 0.0015;                  ///< V
  std::map<std::string, TerminationShare> behind; ///< by part kind as written; "unknown" and "otherwise" too

  [[nodiscard]] TerminationShare of(const std::optional<PartKind>& kind) const;
};
/// Throws where the file is not as expected: a test or benchmark can not go on.
[[nodiscard]] FaultShares faultShares(const std::filesystem::path& file);

} // namespace netmend::simulation
