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
  /// For a part of the work: its shares are those from `from` to `to` of the whole.
  [[nodiscard]] Progress part(double from, double to) const {
    if (!report) return {{}, stop};
    return {[whole = report, from, to](const Pattern& what, double share) {
              whole(what, from + (to - from) * share);
            },
            stop};
  }
  [[nodiscard]] bool stopped() const { return stop.stop_requested(); }
};

} // namespace netmend
