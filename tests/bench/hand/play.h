#pragma once

#include <cstddef>
#include <filesystem>
#include <functional>
#include <string>
#include <vector>

#include "event_watch.h"
#include "ledger.h"

namespace netmend::testing {

/// How the hand is let at a window.
struct Play {
  unsigned seed = 0;
  int events = 0;
  std::vector<std::filesystem::path> boards; ///< real ones; a typed one and a drawn one come after them
  HandlerLimits limits{};
  int checkEvery = 300;   ///< events
  int reopenEvery = 2000; ///< events
  /// Told when a window has opened, for tests of the hand itself.
  std::function<void(BenchWindow&)> opened{};
};

struct Played {
  int events = 0;
  long deliveries = 0;
  int taken = 0; ///< readings shown as taken
  int takenBack = 0;
  Ledger::Come come;
  int checks = 0; ///< of the book against what was shown
  Handler mostWork;
  Handler longest;
  std::vector<Handler> over;
  std::vector<Handler> waiting;
  std::vector<std::string> lost; ///< what the ledger found
  std::string lately;            ///< the last events
};

/// Lets the hand at a bench window over a store of its own.
[[nodiscard]] Played letPlay(const Play& play);

/// The only application of these tests.
[[nodiscard]] EventWatch& eventWatch();

} // namespace netmend::testing
