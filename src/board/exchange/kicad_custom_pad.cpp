#include <algorithm>
#include <array>
#include <cmath>

#include "copper_shape.h"
#include "kicad_reader.h"
#include "netmend/base/plane.h"
#include "netmend/board/shape.h"

namespace netmend::kicad {

namespace {

// The union grows with every primitive; real pads have tens.
constexpr std::size_t mostPrimitives = 1000;

Ring boxRing(Size size) {
  const Length x = size.width / 2;
  const Length y = size.height / 2;
  return {{-x, -y}, {x, -y}, {x, y}, {-x, y}};
}

} // namespace

void readPrimitives(KicadReader& r, std::vector<Graphic>& into) {
  while (const Item item = r.in.next()) {
    if (item.kind != Item::Kind::list) continue;
    const auto kind = graphicKind(item.text);
    if (!kind || into.size() >= mostPrimitives) {
      if (kind)
        return r.in.fail(pattern("core", "a custom pad has too many primitives"), {},
                         pattern("core", "at most 1000"));
      r.in.leave();
      continue;
    }
    into.push_back(readGraphic(r.in, *kind));
  }
}

std::vector<Polygon> customPadPieces(const std::vector<Graphic>& primitives, Size size, bool rectAnchor) {
  std::vector<Polygon> parts;
  if (size.width > Length(0)) {
    parts.push_back({rectAnchor ? boxRing(size) : outlineOf({{Point{}}, size.width / 2}), {}});
  }
  for (const Graphic& g : primitives) {
    const Path path = pathOf(g, Length(1000));
    // A circle without line width is a disc, whatever the fill says, as it was before fills were written.
    const bool filled = path.closed && (g.filled || g.width == Length(0));
    for (Polygon& piece :
         filled ? filledShape(path.points, g.width) : strokeOf(path.points, path.closed, g.width))
      parts.push_back(std::move(piece));
  }
  std::vector<Polygon> pieces = united(parts);
  if (pieces.empty()) return parts;
  const auto main =
      std::find_if(pieces.begin(), pieces.end(), [](const Polygon& p) { return insideRing(p.outer, Vec{}); });
  if (main != pieces.end()) std::iter_swap(pieces.begin(), main);
  return pieces;
}

Ring chamferedRing(Size size, Length radius, Length cut, const std::vector<std::string_view>& cutCorners) {
  const auto isCut = [&](std::string_view name) {
    return std::find(cutCorners.begin(), cutCorners.end(), name) != cutCorners.end();
  };
  // Counter-clockwise from the lower right, each with the directions of the edge that comes in and goes out.
  struct Corner {
    std::string_view name;
    int x, y;
    Point in, out;
  };
  const Length one(1);
  const Length none(0);
  const std::array<Corner, 4> corners{Corner{"bottom_right", 1, -1, {one, none}, {none, one}},
                                      Corner{"top_right", 1, 1, {none, one}, {-one, none}},
                                      Corner{"top_left", -1, 1, {-one, none}, {none, -one}},
                                      Corner{"bottom_left", -1, -1, {none, -one}, {one, none}}};
  Ring ring;
  for (const Corner& c : corners) {
    const Point tip{size.width / 2 * c.x, size.height / 2 * c.y};
    const Length back = isCut(c.name) ? cut : radius;
    const auto along = [&](Point from, Point direction, Length by) {
      return from + Point{direction.x * by.nm, direction.y * by.nm};
    };
    const Point first = along(tip, c.in, -back);
    const Point last = along(tip, c.out, back);
    ring.push_back(first);
    if (isCut(c.name)) {
      ring.push_back(last);
    } else if (radius > none) {
      const Point centre = along(first, c.out, radius);
      constexpr int pieces = 16;
      for (int i = 1; i < pieces; ++i)
        ring.push_back(placed(centre, Degrees(90.0 * i / pieces), first - centre));
      ring.push_back(last);
    }
  }
  ring.erase(std::unique(ring.begin(), ring.end()), ring.end());
  return ring;
}

Ring trapezoidRing(Size size, Size delta) {
  const Length x = size.width / 2;
  const Length y = size.height / 2;
  const Length dx = delta.width / 2;
  const Length dy = delta.height / 2;
  // The file's corners with y down are (-x-dy, y+dx) (x+dy, y-dx) (x-dy, -y+dx) (-x+dy, -y-dx).
  return {{-x - dy, -y - dx}, {x + dy, -y + dx}, {x - dy, y - dx}, {-x + dy, y + dx}};
}

} // namespace netmend::kicad
