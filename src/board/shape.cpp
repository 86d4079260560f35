#include "netmend/board/shape.h"

#include <numbers>

namespace netmend {

namespace {

constexpr double pi = std::numbers::pi;
constexpr double mostChords = 4096.0;

Length rounded(double nm) {
  return Length(std::llround(nm));
}

/// How many chords keep within `maxError` of an arc: a chord over the angle a has the sagitta r·(1 −
/// cos(a/2)).
int chordCount(double radius, double sweep, Length maxError) {
  const double error = static_cast<double>(std::max<std::int64_t>(maxError.nm, 1));
  const double step = error >= radius ? pi / 2.0 : std::min(pi / 2.0, 2.0 * std::acos(1.0 - error / radius));
  const double count = std::clamp(std::ceil(std::abs(sweep) / step - 1e-9), 1.0, mostChords);
  // A corner at each quarter: the box around an upright pad comes out exact.
  const double quarters = std::max(1.0, std::round(std::abs(sweep) * 2.0 / pi));
  return static_cast<int>(std::ceil(count / quarters) * quarters);
}

Point onCircle(double x, double y, double radius, double angle) {
  return {rounded(x + radius * std::cos(angle)), rounded(y + radius * std::sin(angle))};
}

double crossProduct(Point a, Point b) {
  return static_cast<double>(a.x.nm) * static_cast<double>(b.y.nm) -
         static_cast<double>(a.y.nm) * static_cast<double>(b.x.nm);
}

bool clockwise(const Ring& ring) {
  double area = 0.0;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point& next = ring[(i + 1) % ring.size()];
    area += crossProduct(ring[i] - ring[0], next - ring[0]);
  }
  return area < 0.0;
}

Ring withoutRepeats(Ring ring) {
  ring.erase(std::unique(ring.begin(), ring.end()), ring.end());
  while (ring.size() > 1 && ring.front() == ring.back())
    ring.pop_back();
  return ring;
}

/// Corners of a w × h box around the origin, with a box that has shrunk to a line or point given as such.
Ring boxCore(Length w, Length h) {
  const Length x = w / 2;
  const Length y = h / 2;
  if (x.nm == 0 && y.nm == 0) return {{}};
  if (x.nm == 0) return {{x, -y}, {x, y}};
  if (y.nm == 0) return {{-x, y}, {x, y}};
  return {{-x, -y}, {x, -y}, {x, y}, {-x, y}};
}

/// Before rotation, about the pad's position.
std::optional<RoundedShape> shapeAtOrigin(const Pad& pad) {
  if (pad.shape.value == PadShape::polygon) {
    if (pad.polygon.size() < 3) return std::nullopt;
    return RoundedShape{pad.polygon, Length(0)};
  }
  if (!pad.size.known()) return std::nullopt;
  const auto [w, h] = pad.size.value;
  if (w.nm <= 0 || (h.nm <= 0 && pad.shape.value != PadShape::circle)) return std::nullopt;
  const Length half = std::min(w, h) / 2;
  switch (pad.shape.value) {
  case PadShape::circle:
    return RoundedShape{{{}}, w / 2};
  case PadShape::oval:
    return RoundedShape{boxCore(w - half * 2, h - half * 2), half};
  case PadShape::rectangle:
    return RoundedShape{boxCore(w, h), Length(0)};
  case PadShape::roundedRectangle: {
    const Length r = std::clamp(pad.cornerRadius, Length(0), half);
    return RoundedShape{boxCore(w - r * 2, h - r * 2), r};
  }
  case PadShape::polygon:
    break;
  }
  return std::nullopt;
}

} // namespace

Point placed(Point origin, Degrees rotation, Point offset) {
  const double turn = std::fmod(rotation.value, 360.0);
  const double quarter = turn / 90.0;
  if (quarter == std::floor(quarter)) {
    switch ((static_cast<int>(quarter) + 4) % 4) {
    case 0:
      return origin + offset;
    case 1:
      return origin + Point{-offset.y, offset.x};
    case 2:
      return origin + Point{-offset.x, -offset.y};
    default:
      return origin + Point{offset.y, -offset.x};
    }
  }
  const double a = turn * pi / 180.0;
  const auto x = static_cast<double>(offset.x.nm);
  const auto y = static_cast<double>(offset.y.nm);
  return origin +
         Point{rounded(x * std::cos(a) - y * std::sin(a)), rounded(x * std::sin(a) + y * std::cos(a))};
}

std::optional<RoundedShape> padShape(const Pad& pad) {
  if (!pad.position.known() || !pad.shape.known()) return std::nullopt;
  auto shape = shapeAtOrigin(pad);
  if (!shape) return std::nullopt;
  for (Point& corner : shape->core)
    corner = placed(pad.position.value, pad.rotation, corner);
  return shape;
}

Ring outlineOf(const RoundedShape& shape, Length maxError) {
  Ring core = withoutRepeats(shape.core);
  if (core.empty()) return {};
  if (clockwise(core)) std::reverse(core.begin(), core.end());
  const auto radius = static_cast<double>(shape.radius.nm);
  if (radius <= 0.0) return core;
  Ring out;
  const auto arc = [&](Point centre, double from, double sweep, bool withEnd) {
    const int count = chordCount(radius, sweep, maxError);
    for (int i = 0; i < count + (withEnd ? 1 : 0); ++i) {
      out.push_back(onCircle(static_cast<double>(centre.x.nm), static_cast<double>(centre.y.nm), radius,
                             from + sweep * i / count));
    }
  };
  if (core.size() == 1) {
    arc(core[0], 0.0, 2.0 * pi, false);
    return out;
  }
  const auto outward = [&](std::size_t edge) {
    const Point d = core[(edge + 1) % core.size()] - core[edge];
    return std::atan2(static_cast<double>(-d.x.nm), static_cast<double>(d.y.nm));
  };
  for (std::size_t i = 0; i < core.size(); ++i) {
    const double from = outward((i + core.size() - 1) % core.size());
    double sweep = outward(i) - from;
    while (sweep < -1e-9)
      sweep += 2.0 * pi;
    arc(core[i], from, std::max(sweep, 0.0), sweep > 1e-9);
  }
  return withoutRepeats(std::move(out));
}

std::optional<Point> drillCentre(const Pad& pad) {
  if (!pad.position.known() || !pad.drill.known()) return std::nullopt;
  if (pad.drill.value.width.nm <= 0 || pad.drill.value.height.nm <= 0) return std::nullopt;
  return placed(pad.position.value, pad.rotation, pad.drillOffset);
}

std::optional<ArcGeometry> arcGeometry(Point start, Point mid, Point end) {
  const auto x0 = static_cast<double>(start.x.nm);
  const auto y0 = static_cast<double>(start.y.nm);
  // Relative to the start: board coordinates are large against an arc, and their squares would lose digits.
  const auto mx = static_cast<double>((mid - start).x.nm);
  const auto my = static_cast<double>((mid - start).y.nm);
  if (start == end) {
    const double r = std::hypot(mx, my) / 2.0;
    if (r == 0.0) return std::nullopt;
    return ArcGeometry{x0 + mx / 2.0, y0 + my / 2.0, r, std::atan2(-my, -mx), 2.0 * pi};
  }
  const auto ex = static_cast<double>((end - start).x.nm);
  const auto ey = static_cast<double>((end - start).y.nm);
  const double cross = mx * ey - my * ex;
  if (std::abs(cross) <= 0.5 * std::hypot(ex, ey)) return std::nullopt;
  const double m2 = mx * mx + my * my;
  const double e2 = ex * ex + ey * ey;
  const double cx = (ey * m2 - my * e2) / (2.0 * cross);
  const double cy = (mx * e2 - ex * m2) / (2.0 * cross);
  const double from = std::atan2(-cy, -cx);
  double sweep = std::atan2(ey - cy, ex - cx) - from;
  if (cross > 0.0 && sweep <= 0.0) sweep += 2.0 * pi;
  if (cross < 0.0 && sweep >= 0.0) sweep -= 2.0 * pi;
  return ArcGeometry{x0 + cx, y0 + cy, std::hypot(cx, cy), from, sweep};
}

Ring centreLine(const Track& track, Length maxError) {
  if (track.way != TrackWay::arc) return {track.start, track.end};
  const auto arc = arcGeometry(track.start, track.mid, track.end);
  if (!arc) return {track.start, track.end};
  const int count = chordCount(arc->radius, arc->sweep, maxError);
  Ring out{track.start};
  for (int i = 1; i < count; ++i)
    out.push_back(
        onCircle(arc->centreX, arc->centreY, arc->radius, arc->startAngle + arc->sweep * i / count));
  out.push_back(track.end);
  return out;
}

std::optional<Length> trackLength(const Track& track) {
  if (track.way == TrackWay::unknownWay) return std::nullopt;
  if (track.way == TrackWay::arc) {
    if (const auto arc = arcGeometry(track.start, track.mid, track.end))
      return rounded(arc->radius * std::abs(arc->sweep));
  }
  return distance(track.start, track.end);
}

} // namespace netmend
