#pragma once

#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

#include "netmend/casework/fault_case.h"
#include "netmend/drawing/fault_overlay.h"

namespace netmend {

/// A letter for each suspect that was ever among the first, which ties list, tree and map. It stays with the
/// suspect while their order changes: who has looked at B finds B again.
class SuspectLetters {
public:
  /// Those at the front that have none yet get the next ones; another line begins at A.
  void give(const FaultCase& fault, std::size_t most = letteredSuspects);
  /// Parallel to `Suspects::ranked`; empty: it has none.
  [[nodiscard]] std::vector<std::string> ofRanked(const FaultCase& fault) const;

private:
  using Key = std::tuple<FaultKind, std::size_t, PinId>;
  [[nodiscard]] static Key keyOf(const FaultClass& faultClass);
  std::map<Key, char> letters_;
  std::optional<std::vector<NetId>> nets_; ///< of the line that they are on
  PinId pin_;
};

} // namespace netmend
