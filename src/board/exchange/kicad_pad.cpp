#include <algorithm>
#include <array>
#include <optional>

#include "copper_shape.h"
#include "kicad_reader.h"
#include "netmend/board/shape.h"

namespace netmend::kicad {

namespace {

/// The words of a pad as they stand, y already turned up.
struct RawPad {
  std::string_view number, type, shape;
  Point at;
  Degrees angle;
  Size size;
  bool hasSize = false;
  Size drill;
  Point offset;
  Size delta; ///< trapezoid
  double roundness = 0;
  double chamfer = 0;
  std::vector<std::string_view> chamferedCorners, layers;
  bool rectAnchor = false;
  std::vector<Graphic> primitives;
  Fact<NetId> net;
};

void readDrill(KicadReader& r, RawPad& pad) {
  std::vector<Length> sizes;
  while (const Item item = r.in.next()) {
    if (item.kind == Item::Kind::atom) {
      if (item.text == "oval") continue;
      // Handed to a cursor of its own: the number has already been taken.
      Cursor number(item.text);
      sizes.push_back(number.length());
      if (number.failed())
        return r.in.fail(pattern("core", "a drill is not a number"), std::string(item.text.substr(0, 40)));
    } else if (item.text == "offset") {
      pad.offset = r.in.onlyPoint();
    } else {
      r.in.leave();
    }
  }
  if (sizes.empty()) return;
  pad.drill = {sizes.front(), sizes.back()};
  if (pad.drill.width < Length(0) || pad.drill.height < Length(0))
    r.in.fail(pattern("core", "a drill is negative"));
}

void readWords(KicadReader& r, std::vector<std::string_view>& into) {
  while (const Item item = r.in.next()) {
    if (item.kind == Item::Kind::list)
      r.in.leave();
    else
      into.push_back(item.text);
  }
}

void readOptions(KicadReader& r, RawPad& pad) {
  while (const Item item = r.in.next()) {
    if (item.isList("anchor"))
      pad.rectAnchor = r.in.onlyWord() == "rect";
    else if (item.kind == Item::Kind::list)
      r.in.leave();
  }
}

Size readSize(KicadReader& r) {
  const Length width = r.in.length();
  const Length height = r.in.length();
  r.in.leave();
  return {width, height};
}

void readAt(KicadReader& r, RawPad& pad) {
  pad.at = r.in.point();
  const Item angle = r.in.next();
  if (!angle) return;
  if (angle.kind == Item::Kind::atom && angle.text != "unlocked") {
    Cursor number(angle.text);
    pad.angle = Degrees(number.number());
    if (number.failed())
      r.in.fail(pattern("core", "an angle is not a number"), std::string(angle.text.substr(0, 40)),
                pattern("core", "degrees"));
  } else if (angle.kind == Item::Kind::list) {
    r.in.leave();
  }
  r.in.leave();
}

RawPad readWordsOfPad(KicadReader& r) {
  RawPad pad;
  pad.number = r.in.word();
  pad.type = r.in.word();
  pad.shape = r.in.word();
  while (const Item item = r.in.next()) {
    if (item.kind != Item::Kind::list) continue; // locked
    if (item.text == "at") {
      readAt(r, pad);
    } else if (item.text == "size") {
      pad.size = readSize(r);
      pad.hasSize = true;
    } else if (item.text == "rect_delta") {
      pad.delta = readSize(r);
    } else if (item.text == "drill") {
      readDrill(r, pad);
    } else if (item.text == "layers") {
      readWords(r, pad.layers);
    } else if (item.text == "roundrect_rratio") {
      pad.roundness = std::clamp(r.in.onlyNumber(), 0.0, 0.5);
    } else if (item.text == "chamfer_ratio") {
      pad.chamfer = std::clamp(r.in.onlyNumber(), 0.0, 0.5);
    } else if (item.text == "chamfer") {
      readWords(r, pad.chamferedCorners);
    } else if (item.text == "net") {
      pad.net = readItemNet(r);
    } else if (item.text == "options") {
      readOptions(r, pad);
    } else if (item.text == "primitives") {
      readPrimitives(r, pad.primitives);
    } else {
      if (item.text == "remove_unused_layers")
        r.count(pattern("core", "pads without ring on layers where nothing joins"));
      r.in.leave();
    }
  }
  return pad;
}

struct Layers {
  bool top = false, bottom = false, inner = false, maskTop = false, maskBottom = false;
};

Layers layersOf(KicadReader& r, const RawPad& pad) {
  Layers on;
  const auto& order = r.board().info.layerOrder;
  for (const std::string_view name : pad.layers) {
    if (name == "*.Cu") on.top = on.bottom = on.inner = true;
    if (name == "F&B.Cu") on.top = on.bottom = true;
    if (name == "*In.Cu") on.inner = true;
    if (name == "*.Mask" || name == "F&B.Mask") on.maskTop = on.maskBottom = true;
    if (name == "F.Mask") on.maskTop = true;
    if (name == "B.Mask") on.maskBottom = true;
    const auto found = r.copperLayers.find(name);
    if (found == r.copperLayers.end()) continue;
    (found->second == order.front() ? on.top : found->second == order.back() ? on.bottom : on.inner) = true;
  }
  return on;
}

Fact<PadReach> reachOf(KicadReader& r, const Layers& on) {
  if (on.top && on.bottom) return fromFile(on.inner ? PadReach::allLayers : PadReach::topAndBottom);
  if (on.top) return fromFile(PadReach::top);
  if (on.bottom) return fromFile(PadReach::bottom);
  if (on.inner) r.count(pattern("core", "pads only on inner layers, their reach left unknown"));
  return {};
}

MaskOpening openingOf(const Layers& on) {
  if (on.maskTop) return on.maskBottom ? MaskOpening::both : MaskOpening::top;
  return on.maskBottom ? MaskOpening::bottom : MaskOpening::none;
}

bool setShape(KicadReader& r, const RawPad& raw, PadItem& item) {
  Pad& pad = item.pad;
  const Length least = std::min(raw.size.width, raw.size.height);
  const auto share = [&](double ratio) { return Length::fromMm(least.mm() * ratio); };
  pad.size = fromFile(raw.size);
  const auto polygon = [&](Ring ring) {
    Box box;
    for (const Point p : ring)
      box.include(p);
    pad.shape = fromFile(PadShape::polygon);
    pad.size = fromFile(box.size());
    pad.polygon = std::move(ring);
  };
  if (raw.shape == "circle") {
    pad.shape = fromFile(PadShape::circle);
    pad.size.value.height = raw.size.width;
  } else if (raw.shape == "oval") {
    pad.shape = fromFile(PadShape::oval);
  } else if (raw.shape == "rect") {
    pad.shape = fromFile(PadShape::rectangle);
  } else if (raw.shape == "roundrect" && (raw.chamferedCorners.empty() || raw.chamfer <= 0)) {
    pad.shape = fromFile(PadShape::roundedRectangle);
    pad.cornerRadius = share(raw.roundness);
  } else if (raw.shape == "roundrect") {
    polygon(chamferedRing(raw.size, share(raw.roundness), share(raw.chamfer), raw.chamferedCorners));
  } else if (raw.shape == "trapezoid") {
    polygon(trapezoidRing(raw.size, raw.delta));
  } else if (raw.shape == "custom") {
    std::vector<Polygon> pieces = customPadPieces(raw.primitives, raw.size, raw.rectAnchor);
    if (pieces.empty()) {
      r.in.fail(pattern("core", "a custom pad has no copper"));
      return false;
    }
    polygon(asOneRing(pieces.front()));
    pieces.erase(pieces.begin());
    item.otherPieces = std::move(pieces);
  } else {
    r.in.fail(pattern("core", "an unknown pad shape"), std::string(raw.shape.substr(0, 40)),
              asItIs("circle, oval, rect, roundrect, trapezoid or custom"));
    return false;
  }
  return true;
}

} // namespace

PadItem readPad(KicadReader& r, Point origin, Degrees rotation) {
  const std::size_t place = r.in.place();
  const RawPad raw = readWordsOfPad(r);
  PadItem item{raw.number, raw.net.known() ? raw.net : fromFile(NetId{}), {}, {}, place};
  if (r.in.failed()) return item;
  if (!raw.hasSize || raw.size.width < Length(0) || raw.size.height < Length(0)) {
    r.in.fail(pattern("core", "a pad has no size"));
    return item;
  }
  static constexpr std::array types{"thru_hole", "smd", "connect", "np_thru_hole"};
  if (std::find(types.begin(), types.end(), raw.type) == types.end()) {
    r.in.fail(pattern("core", "an unknown kind of pad"), std::string(raw.type.substr(0, 40)),
              asItIs("thru_hole, smd, connect or np_thru_hole"));
    return item;
  }
  Pad& pad = item.pad;
  pad.origin = Origin::file;
  // The angle in the file is that on the board, the place that within the footprint.
  pad.rotation = raw.angle;
  pad.position = fromFile(placed(placed(origin, rotation, raw.at), raw.angle, raw.offset));
  pad.drillOffset = Point{} - raw.offset;
  pad.drill = fromFile(raw.type == "smd" || raw.type == "connect" ? Size{} : raw.drill);
  pad.plated = fromFile(raw.type == "thru_hole");
  const Layers on = layersOf(r, raw);
  pad.reach = reachOf(r, on);
  pad.maskOpening = fromFile(openingOf(on));
  if (!setShape(r, raw, item)) return item;
  const bool onlyHole =
      raw.type == "np_thru_hole" && raw.size.width <= raw.drill.width && raw.size.height <= raw.drill.height;
  if (onlyHole || (!on.top && !on.bottom && !on.inner)) {
    // No copper: a hole, or an opening in mask or paste. It counts as a pad and has no size.
    pad.size = fromFile(Size{});
    pad.polygon.clear();
    item.otherPieces.clear();
    pad.shape = fromFile(PadShape::circle);
  }
  return item;
}

} // namespace netmend::kicad
