#include "funnel.h"

#include "exact.h"

namespace netmend {
namespace {

void withoutStraightPoints(std::vector<Point>& way) {
  std::vector<Point> kept;
  for (const Point p : way) {
    if (!kept.empty() && kept.back() == p) continue;
    while (kept.size() >= 2 && side(kept[kept.size() - 2], kept.back(), p) == 0 &&
           dot(kept[kept.size() - 2], kept.back(), p) > 0)
      kept.pop_back();
    kept.push_back(p);
  }
  way = std::move(kept);
}

} // namespace

std::vector<Point> pulledTight(Point start, const std::vector<std::pair<Point, Point>>& doors, Point end) {
  // A funnel narrows from the last bend; where one side crosses the other, the way bends there and it starts
  // anew behind that door (after Lee and Preparata 1984).
  std::vector<Point> way{start};
  std::vector<std::pair<Point, Point>> all(doors);
  all.emplace_back(end, end);
  Point apex = start, left = start, right = start;
  std::size_t leftAt = 0, rightAt = 0;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const auto [newLeft, newRight] = all[i];
    if (right == apex || side(apex, right, newRight) >= 0) { // narrower on the right
      if (right == apex || left == apex || side(apex, left, newRight) < 0) {
        right = newRight;
        rightAt = i;
      } else {
        way.push_back(left);
        apex = right = left;
        i = rightAt = leftAt;
        continue;
      }
    }
    if (left == apex || side(apex, left, newLeft) <= 0) { // narrower on the left
      if (left == apex || right == apex || side(apex, right, newLeft) > 0) {
        left = newLeft;
        leftAt = i;
      } else {
        way.push_back(right);
        apex = left = right;
        i = leftAt = rightAt;
        continue;
      }
    }
  }
  way.push_back(end);
  withoutStraightPoints(way);
  return way;
}

} // namespace netmend
