#include <algorithm>

#include "kicad_reader.h"
#include "netmend/board/shape.h"
#include "part_guess.h"

namespace netmend::kicad {

namespace {

/// A footprint while its list is being read.
struct Footprint {
  Part part;
  Point at;
  Degrees angle;
  bool bottom = false;
  std::string reference, value;
  std::vector<PadItem> pads;
  std::vector<Graphic> drawings;
};

bool onLayer(const Graphic& g, std::string_view name) {
  return std::find(g.layers.begin(), g.layers.end(), name) != g.layers.end();
}

/// Up to version 5 the name may be the user's.
bool isBottom(const KicadReader& r, std::string_view layer) {
  const auto found = r.copperLayers.find(layer);
  if (found == r.copperLayers.end()) return layer.starts_with("B.");
  return found->second == r.result.board.info.layerOrder.back();
}

void readPlace(KicadReader& r, Footprint& f) {
  f.at = r.in.point();
  const Item angle = r.in.next();
  if (!angle) return;
  if (angle.kind == Item::Kind::list) r.in.leave();
  if (angle.kind == Item::Kind::atom) {
    Cursor number(angle.text);
    f.angle = Degrees(number.number());
    if (number.failed())
      r.in.fail(pattern("core", "an angle is not a number"), std::string(angle.text.substr(0, 40)),
                pattern("core", "degrees"));
  }
  r.in.leave();
}

/// `(fp_text reference "R1" …)` up to version 7, `(property "Reference" "R1" …)` from version 8 on.
void readText(KicadReader& r, Footprint& f) {
  const std::size_t place = r.in.place();
  const Item what = r.in.next();
  if (what.kind != Item::Kind::atom) return r.in.fail(pattern("core", "a text lacks its kind"));
  const Item text = r.in.next();
  if (text.kind == Item::Kind::atom) {
    if (what.text == "reference" || what.text == "Reference") f.reference = unescaped(text.text);
    if (what.text == "value" || what.text == "Value") f.value = unescaped(text.text);
  } else if (text.kind == Item::Kind::list) {
    r.in.leave();
  }
  if (text) readStrokeless(r, textsLeftOut, place);
}

void readAttributes(KicadReader& r, Footprint& f) {
  while (const Item item = r.in.next()) {
    if (item.kind == Item::Kind::list) r.in.leave();
    if (item.isAtom("dnp")) f.part.fitted = fromFile(false);
  }
}

void readItems(KicadReader& r, Footprint& f) {
  bool placedYet = false;
  while (const Item item = r.in.next()) {
    if (item.kind != Item::Kind::list) continue; // locked, placed
    if (item.text == "at") {
      readPlace(r, f);
      placedYet = true;
    } else if (item.text == "layer") {
      f.bottom = isBottom(r, r.in.onlyWord());
    } else if (item.text == "fp_text" || item.text == "property") {
      readText(r, f);
    } else if (item.text == "fp_text_box") {
      readStrokeless(r, textsLeftOut, r.in.place());
    } else if (item.text == "attr") {
      readAttributes(r, f);
    } else if (item.text == "pad") {
      if (!placedYet)
        return r.in.fail(pattern("core", "a footprint has a pad before its place"), {}, asItIs("(at x y)"));
      f.pads.push_back(readPad(r, f.at, f.angle));
    } else if (item.text == "zone") {
      readZone(r);
    } else if (const auto kind = item.text.starts_with("fp_") ? graphicKind(item.text) : std::nullopt) {
      f.drawings.push_back(readGraphic(r.in, *kind));
    } else {
      r.in.leave();
    }
  }
  if (!r.in.failed() && !placedYet)
    r.in.fail(pattern("core", "a footprint has no place"), {}, asItIs("(at x y)"));
}

/// Points of all that is drawn on one layer, on the board.
std::vector<Point> drawnOn(const Footprint& f, std::string_view layer) {
  std::vector<Point> points;
  for (const Graphic& g : f.drawings) {
    if (!onLayer(g, layer)) continue;
    for (const Point p : pathOf(g, Length(10'000)).points)
      points.push_back(placed(f.at, f.angle, p));
  }
  return points;
}

/// The drawing for assembly shows the body; the courtyard is somewhat larger; pads are better than nothing.
Fact<Ring> bodyOf(const KicadReader& r, const Footprint& f) {
  if (Ring ring = convexHull(drawnOn(f, f.bottom ? "B.Fab" : "F.Fab")); !ring.empty()) return fromFile(ring);
  if (Ring ring = convexHull(drawnOn(f, f.bottom ? "B.CrtYd" : "F.CrtYd")); !ring.empty())
    return guessed(ring);
  std::vector<Point> points;
  for (const PadItem& item : f.pads) {
    if (const auto shape = padShape(item.pad)) {
      const Ring outline = outlineOf(*shape, Length(10'000));
      points.insert(points.end(), outline.begin(), outline.end());
    }
  }
  if (points.empty()) return {};
  if (Ring ring = hullWithMargin(std::move(points), r.source.options.bodyMargin); !ring.empty())
    return guessed(ring);
  return {};
}

/// Pieces of a custom pad that hang together with nothing of it are copper of its net on its layers.
void addOtherPieces(KicadReader& r, const PadItem& item) {
  if (item.otherPieces.empty() || !item.pad.reach.known()) return;
  const auto& order = r.board().info.layerOrder;
  const PadReach reach = item.pad.reach.value;
  for (std::size_t i = 0; i < order.size(); ++i) {
    const bool top = i == 0 && reach != PadReach::bottom;
    const bool bottom = i + 1 == order.size() && reach != PadReach::top;
    if (!top && !bottom && reach != PadReach::allLayers) continue;
    for (const Polygon& piece : item.otherPieces) {
      Area area;
      area.id = r.board().newId<AreaId>();
      area.polygon = piece;
      const auto turn = [&](Point& p) { p = placed(item.pad.position.value, item.pad.rotation, p); };
      for (Point& p : area.polygon.outer)
        turn(p);
      for (Ring& hole : area.polygon.holes)
        for (Point& p : hole)
          turn(p);
      area.layer = fromFile(order[i]);
      area.net = item.net;
      area.origin = Origin::file;
      r.board().areas.put(std::move(area));
      r.count(pattern("core", "pieces of custom pads that do not hang together with them, read as areas"),
              item.place);
    }
  }
}

/// Pads of one number and net are one pin; a pad without number is a pin of its own.
std::size_t addPads(KicadReader& r, Footprint& f) {
  std::map<std::pair<std::string_view, NetId>, PinId> pins;
  std::size_t count = 0;
  for (PadItem& item : f.pads) {
    PinId& pin = pins[{item.number, item.net.value}];
    if (!pin || item.number.empty()) {
      Pin added;
      added.id = pin = r.board().newId<PinId>();
      added.part = f.part.id;
      added.name = unescaped(item.number);
      added.net = item.net;
      added.origin = Origin::file;
      r.board().pins.put(std::move(added));
      ++count;
    }
    item.pad.id = r.board().newId<PadId>();
    item.pad.pin = pin;
    addOtherPieces(r, item);
    r.board().pads.put(std::move(item.pad));
  }
  return count;
}

} // namespace

void readFootprint(KicadReader& r) {
  Footprint f;
  f.part.id = r.board().newId<PartId>();
  f.part.origin = Origin::file;
  const std::string package = unescaped(r.in.word());
  if (!package.empty()) f.part.package = fromFile(package);
  readItems(r, f);
  if (r.in.failed()) return;
  Part& part = f.part;
  part.reference = f.reference;
  if (!f.value.empty() && f.value != "~") part.value = fromFile(f.value);
  part.side = fromFile(f.bottom ? Side::bottom : Side::top);
  part.position = fromFile(f.at);
  part.body = bodyOf(r, f);
  if (!part.fitted.known()) part.fitted = guessed(true);
  for (const Graphic& g : f.drawings)
    addDrawing(r, g, f.at, f.angle);
  const std::size_t pins = addPads(r, f);
  part.kind = guessedKind(f.reference, f.value, pins);
  r.board().parts.put(std::move(part));
}

} // namespace netmend::kicad
