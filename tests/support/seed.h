#pragma once

#include <cstdlib>
#include <random>
#include <string_view>

namespace netmend {

/// What random tests start from: the same every day, so that a red run is somebody's change and not the dice.
/// NETMEND_SEED=random, as `tests/run full` sets it, throws them; NETMEND_SEED=17 repeats a run.
[[nodiscard]] inline unsigned testSeed() {
  const char* asked = std::getenv("NETMEND_SEED");
  if (asked == nullptr) return 20'261'125;
  if (std::string_view(asked) == "random") return std::random_device{}();
  return static_cast<unsigned>(std::strtoul(asked, nullptr, 10));
}

} // namespace netmend
