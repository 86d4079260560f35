#pragma once

#include <functional>
#include <stop_token>

#include "netmend/base/said.h"

namespace netmend {

/// Handed to work that may take long. Both members are optional.
struct Progress {
  std::function<void(const Pattern& what, double share)> report; ///< share from 0 to 1
  std::stop_token stop;

  void operator()(const Pattern& what, double share) const {
    if (report) report(what, share);
  }
  [[nodiscard]] bool stopped() const { return stop.stop_requested(); }
};

} // namespace netmend
