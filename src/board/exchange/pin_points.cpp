#include "pin_points.h"

#include <algorithm>

#include "netmend/board/shape.h"
#include "part_guess.h"

namespace netmend {

NetId PinPoints::net(const std::string& name) {
  NetId& id = nets_[name];
  if (!id) {
    Net added;
    added.id = id = board().newId<NetId>();
    added.name = name;
    added.origin = Origin::file;
    board().nets.put(std::move(added));
  }
  return id;
}

PinPoints::PartData& PinPoints::part(const std::string& reference) {
  const auto [it, isNew] = partIndex_.emplace(reference, parts_.size());
  if (isNew) {
    parts_.push_back({board().newId<PartId>(), reference});
  }
  return parts_[it->second];
}

Fact<NetId> PinPoints::netOf(const PinPoint& point) {
  if (point.notConnected) return fromFile(NetId{});
  if (point.net.empty()) return {};
  return fromFile(net(point.net));
}

PinId PinPoints::newPin(const PinPoint& point, Fact<NetId> net, PartData* owner) {
  Pin pin;
  pin.id = board().newId<PinId>();
  if (owner != nullptr) {
    pin.part = owner->id;
    ++owner->pins;
  }
  pin.name = point.pin;
  pin.net = net;
  pin.origin = Origin::file;
  const PinId id = pin.id;
  board().pins.put(std::move(pin));
  return id;
}

Result<PinId> PinPoints::pinFor(const PinPoint& point, PartData* owner, const FilePlace& place) {
  const Fact<NetId> pointNet = netOf(point);
  if (point.onItsOwn || point.pin.empty()) return newPin(point, pointNet, owner);
  const bool placed = point.pad.position.known();
  PinData& data = pins_[{owner != nullptr ? owner->id : PartId{}, point.pin}];
  if (!data.id) {
    data = {newPin(point, pointNet, owner), place, placed};
    return data.id;
  }
  const std::string label = point.part.empty() ? point.pin : point.part + "." + point.pin;
  if (board().pins.find(data.id)->net != pointNet) {
    if (conflict_ == LabelConflict::refuse) {
      return failure(
          {said(pattern("core", "pin {} stands on another net at {}"), label, data.firstPlace.said()),
           source_.file, place, asItIs(point.notConnected ? "N/C" : point.net),
           pattern("core", "one net a pin")});
    }
    cutLabels_.add(
        pattern("core",
                "pins that stand on another net elsewhere, read as two pins, their labels may have been cut"),
        said(pattern("core", "{}: {}, which stands at {}, too"), place.said(), label,
             data.firstPlace.said()));
    return newPin(point, pointNet, owner);
  }
  if (conflict_ == LabelConflict::refuse && (!placed || !data.placed)) {
    return failure({said(pattern("core", "pin {} stands at {} already"), label, data.firstPlace.said()),
                    source_.file,
                    place,
                    {},
                    pattern("core", "each pin once, or a place for each of its pads")});
  }
  return data.id;
}

Result<PadId> PinPoints::add(const PinPoint& point, const FilePlace& place) {
  PartData* owner = point.part.empty() ? nullptr : &part(point.part);
  const auto pin = point.pad.pin ? Result<PinId>(point.pad.pin) : pinFor(point, owner, place);
  if (!pin) return failure(pin.error());
  Pad pad = point.pad;
  pad.id = board().newId<PadId>();
  pad.pin = *pin;
  pad.origin = Origin::file;
  const PadId id = pad.id;
  board().pads.put(std::move(pad));
  return id;
}

void PinPoints::guessBody(Part& part, const std::vector<std::size_t>& pads) const {
  std::vector<Point> corners;
  bool onTop = false, onBottom = false;
  for (const std::size_t index : pads) {
    const Pad& pad = imported_.board.pads[index];
    if (pad.position.known()) corners.push_back(pad.position.value);
    if (const auto shape = padShape(pad)) {
      const Ring outline = outlineOf(*shape, Length(10'000));
      corners.insert(corners.end(), outline.begin(), outline.end());
    }
    if (pad.reach.known()) {
      onTop = onTop || pad.reach.value != PadReach::bottom;
      onBottom = onBottom || pad.reach.value != PadReach::top;
    }
  }
  if (onTop != onBottom) part.side = guessed(onTop ? Side::top : Side::bottom);
  if (corners.empty()) return;
  Box box;
  for (const Point p : corners)
    box.include(p);
  part.position = guessed(Point{(box.min.x + box.max.x) / 2, (box.min.y + box.max.y) / 2});
  Ring body = hullWithMargin(std::move(corners), source_.options.bodyMargin);
  const bool fits = std::all_of(body.begin(), body.end(), [](Point p) {
    return std::max({p.x, -p.x, p.y, -p.y}) <= largestLength;
  });
  body.shrink_to_fit(); // there may be many
  if (!body.empty() && fits) part.body = guessed(std::move(body));
}

Result<Imported> PinPoints::finish() {
  cutLabels_.moveTo(imported_.notices);
  pins_.clear();
  partIndex_.clear();
  nets_.clear();
  std::vector<std::pair<PartId, std::size_t>> padOf; // parts have their ids in the order in which they came
  padOf.reserve(board().pads.size());
  for (std::size_t i = 0; i < board().pads.size(); ++i)
    if (const PartId owner = board().pins.find(board().pads[i].pin)->part) padOf.emplace_back(owner, i);
  std::sort(padOf.begin(), padOf.end());
  board().parts.reserve(parts_.size());
  auto next = padOf.begin();
  std::vector<std::size_t> pads;
  for (PartData& data : parts_) {
    Part part;
    part.id = data.id;
    part.reference = std::move(data.reference);
    part.origin = Origin::file;
    part.kind = guessedKind(part.reference, part.value.valueOr({}), data.pins);
    pads.clear();
    for (; next != padOf.end() && next->first == data.id; ++next)
      pads.push_back(next->second);
    guessBody(part, pads);
    board().parts.put(std::move(part));
  }
  parts_.clear();
  return std::move(imported_);
}

} // namespace netmend
