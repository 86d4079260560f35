#pragma once

#include <optional>
#include <vector>

#include "netmend/netgraph/line.h"
#include "netmend/netgraph/place_name.h"

namespace netmend {

/// A track from one thing that a person can find to the next: a pin, a via, a fork.
struct TrackRun {
  TrackEnd from;
  TrackEnd to;
  double mm = 0.0; ///< zero: some of it has no known length
};

/// Where an edge of the graph lies on its run.
struct OnRun {
  std::size_t run = 0;
  double startMm = 0.0; ///< along the run, of the edge's end that is nearer to the run's start
  bool forwards = true; ///< that end is the edge's `from`
};

struct TrackRuns {
  std::vector<TrackRun> runs;
  std::vector<std::optional<OnRun>> ofEdge; ///< by the edge's index; none: it is no track
};

/// Time O(nodes + edges), and a name for each end.
[[nodiscard]] TrackRuns trackRuns(const PlaceNames& names, const Line& line);

} // namespace netmend
