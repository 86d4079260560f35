#pragma once

#include <vector>

#include "netmend/drawing/board_scene.h"

namespace netmend {

/// What the view goes to by itself: the due place, or a jumper's way. Without places: nothing.
struct Followed {
  std::vector<Point> places;
  friend bool operator==(const Followed&, const Followed&) = default;
};
[[nodiscard]] Followed followedIn(const Overlay& overlay);

/// The place with its nearest part, or the jumper with the parts at its ends, over a third of the frame's
/// width and no more than half its height, from the side that is touched; never further away than all of the
/// board. Moved so that no suspect is under what `overlay` says is covered.
[[nodiscard]] BoardView viewFollowing(const Followed& followed, const BoardScene& scene, const BoardView& now,
                                      const Overlay& overlay);

/// On the way from one view to another: 0 is there, 1 here.
[[nodiscard]] BoardView between(const BoardView& from, const BoardView& to, double share);

} // namespace netmend
