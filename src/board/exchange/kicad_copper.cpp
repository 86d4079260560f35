#include <fmt/format.h>

#include "copper_shape.h"
#include "kicad_reader.h"

namespace netmend::kicad {

namespace {

/// `(layer "F.Cu")`, and from version 9 on `(layers "F.Cu" "F.Mask")` for a track without mask over it.
std::string_view firstLayer(KicadReader& r) {
  return r.in.onlyWord();
}

void readTrack(KicadReader& r, TrackWay way) {
  Track track;
  track.id = r.board().newId<TrackId>();
  track.way = way;
  track.origin = Origin::file;
  bool start = false, end = false, mid = way != TrackWay::arc;
  std::string_view layer;
  const std::size_t place = r.in.place();
  while (const Item item = r.in.next()) {
    if (item.kind != Item::Kind::list) continue;
    if (item.text == "start") {
      track.start = r.in.onlyPoint();
      start = true;
    } else if (item.text == "end") {
      track.end = r.in.onlyPoint();
      end = true;
    } else if (item.text == "mid") {
      track.mid = r.in.onlyPoint();
      mid = true;
    } else if (item.text == "width") {
      track.width = fromFile(r.in.onlyLength());
    } else if (item.text == "layer" || item.text == "layers") {
      layer = firstLayer(r);
    } else if (item.text == "net") {
      track.net = readItemNet(r);
    } else {
      r.in.leave();
    }
  }
  if (r.in.failed()) return;
  if (!start || !end || !mid) return r.in.fail(pattern("core", "a track lacks start, mid or end"));
  if (layer.empty()) return r.in.fail(pattern("core", "a track is on no layer"));
  track.layer = copperLayer(r, layer);
  if (!track.layer.known()) {
    return r.count(r.otherLayers.contains(layer)
                       ? pattern("core", "tracks on layers without copper, left out")
                       : pattern("core", "tracks on layers that the file does not declare, left out"),
                   place);
  }
  if (!track.width.known()) return r.in.fail(pattern("core", "a track has no width"));
  if (track.width.value <= Length(0)) {
    return r.in.fail(pattern("core", "a track has no width"),
                     said(pattern("core", "{} mm"), fmt::format("{}", track.width.value.mm())),
                     pattern("core", "more than 0 mm"));
  }
  if (!track.net.known()) track.net = fromFile(NetId{});
  r.board().tracks.put(track);
}

/// Per via from version 9 on: `(tenting front back)`, `(tenting none)`, `(tenting (front yes) (back no))`.
Fact<MaskOpening> readTenting(KicadReader& r) {
  bool top = false;
  bool bottom = false;
  bool asBoard = false;
  while (const Item item = r.in.next()) {
    bool on = true;
    if (item.kind == Item::Kind::list) {
      const std::string_view value = r.in.onlyWord();
      asBoard = asBoard || value == "none";
      on = value == "yes";
    }
    if (item.text == "front") top = on;
    if (item.text == "back") bottom = on;
  }
  if (asBoard) return {};
  if (top && bottom) return fromFile(MaskOpening::none);
  if (top) return fromFile(MaskOpening::bottom);
  return fromFile(bottom ? MaskOpening::top : MaskOpening::both);
}

struct Fill {
  Ring ring;
  std::string_view layer; ///< empty before version 6: the zone's
  std::size_t place;
};

Fill readFill(KicadReader& r) {
  Fill fill{{}, {}, r.in.place()};
  while (const Item part = r.in.next()) {
    if (part.isList("layer"))
      fill.layer = r.in.onlyWord();
    else if (part.isList("pts"))
      fill.ring = readCorners(r.in);
    else if (part.kind == Item::Kind::list)
      r.in.leave();
  }
  return fill;
}

void addFill(KicadReader& r, Fill fill, Fact<NetId> net, Length growth) {
  const Fact<LayerId> layer = copperLayer(r, fill.layer);
  if (!layer.known()) {
    return r.count(r.otherLayers.contains(fill.layer)
                       ? pattern("core", "filled zones on layers without copper, left out")
                       : pattern("core", "filled zones on layers that the file does not declare, left out"),
                   fill.place);
  }
  Ring& ring = fill.ring;
  if (ring.size() < 3) return;
  std::vector<Polygon> polygons;
  if (growth > Length(0)) polygons = grown(withoutSlits(ring), growth);
  if (polygons.empty()) {
    if (growth > Length(0))
      r.count(pattern("core", "old filled areas that could not be widened by the pen they were drawn with"),
              fill.place);
    polygons.push_back({std::move(ring), {}});
  }
  for (Polygon& polygon : polygons) {
    Area area;
    area.id = r.board().newId<AreaId>();
    area.polygon = std::move(polygon);
    area.layer = layer;
    area.net = net;
    area.origin = Origin::file;
    r.board().areas.put(std::move(area));
  }
}

} // namespace

void readSegment(KicadReader& r) {
  readTrack(r, TrackWay::straight);
}

void readArc(KicadReader& r) {
  readTrack(r, TrackWay::arc);
}

void readVia(KicadReader& r) {
  Via via;
  via.id = r.board().newId<ViaId>();
  via.origin = Origin::file;
  via.maskOpening = r.viaMask;
  const std::size_t place = r.in.place();
  bool at = false;
  while (const Item item = r.in.next()) {
    if (item.kind != Item::Kind::list) continue; // blind, micro, locked: the layers tell the span
    if (item.text == "at") {
      via.position = r.in.onlyPoint();
      at = true;
    } else if (item.text == "size") {
      via.diameter = fromFile(r.in.onlyLength());
    } else if (item.text == "drill") {
      via.drill = fromFile(r.in.onlyLength());
    } else if (item.text == "layers") {
      via.from = copperLayer(r, r.in.word());
      via.to = copperLayer(r, r.in.onlyWord());
      if (!via.from.known() || !via.to.known())
        r.count(pattern("core", "vias between layers that the file does not declare, taken as through all"),
                place);
    } else if (item.text == "net") {
      via.net = readItemNet(r);
    } else if (item.text == "tenting") {
      if (const auto own = readTenting(r); own.known()) via.maskOpening = own;
    } else {
      if (item.text == "remove_unused_layers")
        r.count(pattern("core", "vias without ring on layers where nothing joins"), place);
      r.in.leave();
    }
  }
  if (r.in.failed()) return;
  if (!at) return r.in.fail(pattern("core", "a via has no place"));
  if (!via.diameter.known()) return r.in.fail(pattern("core", "a via has no size"));
  if (via.diameter.value <= Length(0)) return r.count(pattern("core", "vias without size, left out"), place);
  if (via.drill.known() && via.drill.value < Length(0))
    return r.in.fail(pattern("core", "a via's drill is negative"));
  if (!via.net.known()) via.net = fromFile(NetId{});
  r.board().vias.put(via);
}

void readZone(KicadReader& r) {
  Fact<NetId> net = fromFile(NetId{});
  std::string_view zoneLayer;
  Length pen;
  // Unless it is said otherwise, versions 4 and 5 draw the edge of a fill with a pen of the zone's least
  // width, and later ones fill to the edge.
  constexpr long penless = 20210000;
  bool drawnWithPen = r.version < penless;
  std::vector<Fill> fills;
  bool ruleArea = false;
  const std::size_t place = r.in.place();
  while (const Item item = r.in.next()) {
    if (item.kind != Item::Kind::list) continue;
    if (item.text == "net") {
      net = readItemNet(r);
    } else if (item.text == "layer") {
      zoneLayer = r.in.onlyWord();
    } else if (item.text == "min_thickness") {
      pen = r.in.onlyLength();
    } else if (item.text == "filled_areas_thickness") {
      drawnWithPen = r.in.onlyWord() != "no";
    } else if (item.text == "keepout") {
      ruleArea = true;
      r.in.leave();
    } else if (item.text == "filled_polygon") {
      fills.push_back(readFill(r));
    } else {
      r.in.leave();
    }
  }
  if (r.in.failed()) return;
  if (fills.empty() && !ruleArea && net.value)
    r.count(pattern("core", "zones that are not filled, so that their copper is not known"), place);
  for (Fill& fill : fills) {
    if (fill.layer.empty()) fill.layer = zoneLayer;
    addFill(r, std::move(fill), net, drawnWithPen ? pen / 2 : Length(0));
  }
}

} // namespace netmend::kicad
