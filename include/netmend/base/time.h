#pragma once

#include <chrono>

namespace netmend {

/// UTC, to the millisecond.
using Time = std::chrono::sys_time<std::chrono::milliseconds>;

[[nodiscard]] inline Time timeNow() {
  return std::chrono::time_point_cast<std::chrono::milliseconds>(std::chrono::system_clock::now());
}

} // namespace netmend
