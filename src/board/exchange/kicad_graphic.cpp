#include "kicad_graphic.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "netmend/board/shape.h"

namespace netmend::kicad {

namespace {

/// Up to and with version 5 an arc is centre, start and angle; on the screen, where y points down, a
/// positive angle goes clockwise, and so it does here, where y points up.
void arcFromAngle(Graphic& g, double degrees) {
  if (g.points.size() != 3) return;
  const Point centre = g.points[0];
  const Point start = g.points[2];
  g.points = {start, placed(centre, Degrees(-degrees / 2), start - centre),
              placed(centre, Degrees(-degrees), start - centre)};
}

void setPoint(Graphic& g, std::size_t index, Point p) {
  if (g.points.size() <= index) g.points.resize(index + 1);
  g.points[index] = p;
}

bool isNo(std::string_view word) {
  return word == "none" || word == "no";
}

Length strokeWidth(Cursor& in) {
  Length width;
  while (const Item item = in.next()) {
    if (item.kind != Item::Kind::list) continue;
    if (item.text == "width")
      width = in.onlyLength();
    else
      in.leave();
  }
  return width;
}

std::size_t pointsNeeded(Graphic::Kind kind) {
  switch (kind) {
  case Graphic::Kind::line:
  case Graphic::Kind::circle:
  case Graphic::Kind::rectangle:
    return 2;
  case Graphic::Kind::curve:
    return 4;
  case Graphic::Kind::arc:
  case Graphic::Kind::polygon:
    return 3;
  }
  return 0;
}

Point onBezier(const std::vector<Point>& c, double t) {
  const double u = 1 - t;
  const double a = u * u * u, b = 3 * u * u * t, d = 3 * u * t * t, e = t * t * t;
  const auto mix = [&](auto part) {
    return Length(std::llround(a * static_cast<double>(part(c[0])) + b * static_cast<double>(part(c[1])) +
                               d * static_cast<double>(part(c[2])) + e * static_cast<double>(part(c[3]))));
  };
  return {mix([](Point p) { return p.x.nm; }), mix([](Point p) { return p.y.nm; })};
}

} // namespace

std::optional<Graphic::Kind> graphicKind(std::string_view head) {
  if (head.size() < 4) return std::nullopt;
  head.remove_prefix(3);
  if (head == "line") return Graphic::Kind::line;
  if (head == "arc") return Graphic::Kind::arc;
  if (head == "circle") return Graphic::Kind::circle;
  if (head == "rect") return Graphic::Kind::rectangle;
  if (head == "poly") return Graphic::Kind::polygon;
  if (head == "curve") return Graphic::Kind::curve;
  return std::nullopt;
}

Ring readCorners(Cursor& in) {
  Ring ring;
  while (const Item item = in.next()) {
    if (item.isList("xy")) {
      ring.push_back(in.onlyPoint());
    } else if (item.isList("arc")) {
      const Graphic arc = readGraphic(in, Graphic::Kind::arc);
      if (in.failed()) break;
      const Ring path = pathOf(arc, Length(1000)).points;
      ring.insert(ring.end(), path.begin(), path.end());
    } else if (item.kind == Item::Kind::list) {
      in.leave();
    }
  }
  return ring;
}

namespace {

/// What a shape's list has said beside its points.
struct Said {
  std::optional<double> angle;
  bool fill = false;
  bool mid = false;
};

void readLayerNames(Cursor& in, Graphic& g) {
  while (const Item layer = in.next()) {
    if (layer.kind == Item::Kind::list)
      in.leave();
    else
      g.layers.push_back(layer.text);
  }
}

void readPart(Cursor& in, std::string_view head, Graphic& g, Said& said) {
  // Arcs keep start, mid, end; everything else its points in the order of the file's words.
  const std::size_t last = g.kind == Graphic::Kind::arc ? 2 : 1;
  if (head == "start" || head == "center") {
    setPoint(g, 0, in.onlyPoint());
  } else if (head == "end") {
    setPoint(g, last, in.onlyPoint());
  } else if (head == "mid") {
    setPoint(g, 1, in.onlyPoint());
    said.mid = true;
  } else if (head == "pts") {
    g.points = readCorners(in);
  } else if (head == "angle") {
    said.angle = in.onlyNumber();
  } else if (head == "width") {
    g.width = in.onlyLength();
  } else if (head == "stroke") {
    g.width = strokeWidth(in);
  } else if (head == "fill") {
    g.filled = !isNo(in.onlyWord());
    said.fill = true;
  } else if (head == "layer" || head == "layers") {
    readLayerNames(in, g);
  } else if (head == "net") {
    g.net = in.next();
    if (g.net.kind == Item::Kind::list) in.leave();
    if (g.net) in.leave();
  } else {
    in.leave();
  }
}

} // namespace

Graphic readGraphic(Cursor& in, Graphic::Kind kind) {
  Graphic g;
  g.kind = kind;
  g.place = in.place();
  Said said;
  while (const Item item = in.next())
    if (item.kind == Item::Kind::list) readPart(in, item.text, g, said);
  if (in.failed()) return g;
  const bool isArc = kind == Graphic::Kind::arc;
  if (g.points.size() < pointsNeeded(kind) || (isArc && !said.mid && !said.angle)) {
    in.fail(pattern("core", "a drawn shape lacks points"));
    return g;
  }
  // The CAD program itself writes -0.000001 for a shape that is only filled.
  g.width = std::max(g.width, Length(0));
  if (isArc && !said.mid) arcFromAngle(g, *said.angle);
  // Before fills were written, a polygon was always filled and nothing else ever.
  if (!said.fill) g.filled = kind == Graphic::Kind::polygon;
  return g;
}

Path pathOf(const Graphic& g, Length maxError) {
  switch (g.kind) {
  case Graphic::Kind::line:
    return {g.points, false};
  case Graphic::Kind::arc: {
    Track arc;
    arc.way = TrackWay::arc;
    arc.start = g.points[0];
    arc.mid = g.points[1];
    arc.end = g.points[2];
    Ring points = centreLine(arc, maxError);
    const bool closed = points.size() > 2 && points.front() == points.back();
    if (closed) points.pop_back();
    return {std::move(points), closed};
  }
  case Graphic::Kind::circle:
    return {outlineOf({{g.points[0]}, distance(g.points[0], g.points[1])}, maxError), true};
  case Graphic::Kind::rectangle: {
    const Point a = g.points[0];
    const Point b = g.points[1];
    return {{a, {b.x, a.y}, b, {a.x, b.y}}, true};
  }
  case Graphic::Kind::polygon:
    return {g.points, true};
  case Graphic::Kind::curve: {
    Ring points;
    constexpr int pieces = 32;
    for (int i = 0; i <= pieces; ++i)
      points.push_back(onBezier(g.points, static_cast<double>(i) / pieces));
    return {std::move(points), false};
  }
  }
  return {};
}

} // namespace netmend::kicad
