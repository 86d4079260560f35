#include "netmend/netgraph/place_name.h"

#include <cmath>

#include "netmend/board/access.h"

namespace netmend {

namespace {

constexpr double nextToMm = 0.3; ///< nearer is "at"

const Part* partOf(const Board& board, const Pad& pad) {
  const Pin* pin = board.pins.find(pad.pin);
  return pin != nullptr ? board.parts.find(pin->part) : nullptr;
}

bool inSight(const Board& board, const Pad& pad) {
  const Part* part = partOf(board, pad);
  if (part != nullptr && part->fitted.known() && !part->fitted.value) return false;
  const auto access = accessOf(board, pad);
  return !access.known() || (access.value != Access::underLid && access.value != Access::underPart);
}

bool isOn(const Board& board, const Pad& pad, Side side) {
  if (pad.drill.valueOr({}).width.nm > 0) return true;
  const Part* part = partOf(board, pad);
  return part != nullptr && part->side.known() ? part->side.value == side : side == Side::top;
}

} // namespace

PlaceNames::PlaceNames(const Lookup& lookup) : lookup_(&lookup) {
  for (const Pad& pad : board().pads) {
    if (!pad.position.known() || !board().pins.find(pad.pin) || !inSight(board(), pad)) continue;
    if (isOn(board(), pad, Side::top)) top_.push_back({pad.position.value, pad.pin});
    if (isOn(board(), pad, Side::bottom)) bottom_.push_back({pad.position.value, pad.pin});
  }
}

Beside PlaceNames::beside(Point at, Side side) const {
  const Seen* nearest = nullptr;
  for (const Seen& seen : side == Side::top ? top_ : bottom_) {
    if (nearest != nullptr) {
      const Length here = distance(seen.at, at), best = distance(nearest->at, at);
      if (here > best) continue;
      if (here == best && pinLabel(board(), seen.pin) >= pinLabel(board(), nearest->pin)) continue;
    }
    nearest = &seen;
  }
  Beside out;
  if (nearest == nullptr) {
    out.at = at;
    return out;
  }
  out.pin = pinLabel(board(), nearest->pin);
  // The bottom is looked at from below: what is right on the top is left there.
  const double right = (at.x - nearest->at.x).mm() * (side == Side::top ? 1.0 : -1.0);
  const double up = (at.y - nearest->at.y).mm();
  const double mm = std::hypot(right, up);
  if (mm < nextToMm) return out;
  out.tenths = static_cast<int>(std::lround(mm * 10.0));
  if (std::abs(right) >= std::abs(up))
    out.heading = right >= 0.0 ? Heading::right : Heading::left;
  else
    out.heading = up >= 0.0 ? Heading::above : Heading::below;
  return out;
}

PlaceName::Layer PlaceNames::layerOf(int layer) const {
  if (layer <= 0) return PlaceName::Layer::top;
  const bool last = static_cast<std::size_t>(layer) + 1 == board().info.layerOrder.size();
  return last ? PlaceName::Layer::bottom : PlaceName::Layer::inner;
}

Side PlaceNames::sideOf(int layer) const {
  return layerOf(layer) == PlaceName::Layer::bottom ? Side::bottom : Side::top;
}

PlaceName PlaceNames::of(const CopperObject& object, Point at, int layer) const {
  PlaceName name;
  if (const auto* pin = std::get_if<PinId>(&object)) {
    name.sort = PlaceName::Sort::pin;
    name.label = pinLabel(board(), *pin);
  } else if (const auto* id = std::get_if<PadId>(&object)) {
    const Pad* pad = board().pads.find(*id);
    name.sort = PlaceName::Sort::pad;
    name.label = pad != nullptr ? pinLabel(board(), pad->pin) : "";
  } else {
    name.sort = std::holds_alternative<ViaId>(object) ? PlaceName::Sort::via : PlaceName::Sort::spot;
    name.beside = beside(at, sideOf(layer));
    name.layer = layerOf(layer);
  }
  return name;
}

PlaceName PlaceName::asSaid() const {
  PlaceName out = *this;
  // A stretch leads towards a pin, however far beside it its track ends.
  if (stretch != Stretch::whole && !to.beside.pin.empty()) out.to = {TrackEnd::Sort::pin, to.beside.pin, {}};
  return out;
}

} // namespace netmend
