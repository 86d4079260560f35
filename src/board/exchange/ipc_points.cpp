#include <algorithm>
#include <utility>

#include "ipc_reader.h"

namespace netmend::ipc {

namespace {

bool isNotConnected(const std::string& net) {
  return net == "N/C" || net == "NC";
}

/// The mask field says where the mask covers; what it leaves open is asked for.
Fact<MaskOpening> openingOf(const TestRecord& record) {
  if (!record.mask) return {};
  switch (*record.mask) {
  case 0:
    return fromFile(MaskOpening::both);
  case 1:
    return fromFile(MaskOpening::bottom);
  case 2:
    return fromFile(MaskOpening::top);
  default:
    return fromFile(MaskOpening::none);
  }
}

Fact<PadReach> reachOf(IpcReader& r, const TestRecord& record, const FilePlace& place) {
  // A hole reaches through; its access side only says from where to probe it.
  if (record.drill && record.plated.value_or(true)) return fromFile(PadReach::allLayers);
  if (!record.access) return {};
  if (*record.access == 0) return fromFile(record.drill ? PadReach::allLayers : PadReach::topAndBottom);
  if (*record.access == 1) return fromFile(PadReach::top);
  if (*record.access == r.preamble.layers) return fromFile(PadReach::bottom);
  r.folded.add(pattern("core", "points on inner layers, their reach left unknown"), place.said());
  return {};
}

void setSize(Pad& pad, const TestRecord& record) {
  if (record.width <= Length(0)) return;
  if (record.length <= Length(0)) {
    pad.shape = fromFile(PadShape::circle);
    pad.size = fromFile(Size{record.width, record.width});
  } else {
    // Ovals and rounded rectangles are to be written as rectangles, so the file cannot tell them apart.
    pad.shape = guessed(PadShape::rectangle);
    pad.size = fromFile(Size{record.width, record.length});
  }
}

Pad padOf(IpcReader& r, const TestRecord& record, const FilePlace& place) {
  Pad pad;
  pad.position = fromFile(record.position.value_or(Point{}));
  pad.rotation = record.rotation;
  pad.reach = reachOf(r, record, place);
  pad.maskOpening = openingOf(record);
  pad.drill = fromFile(record.drill ? Size{*record.drill, *record.drill} : Size{});
  if (record.drill)
    pad.plated = record.plated ? fromFile(*record.plated) : guessed(record.kind != 367);
  else
    pad.plated = fromFile(false);
  setSize(pad, record);
  const bool onlyHole =
      record.drill && !pad.plated.value && record.length <= Length(0) && record.width <= *record.drill;
  if (onlyHole) { // no copper round it
    pad.shape = fromFile(PadShape::circle);
    pad.size = fromFile(Size{});
  }
  return pad;
}

/// A record that brings only the hole of a feature described by another one of its group.
bool isHoleOnly(const TestRecord& record) {
  return record.drill && record.width <= Length(0);
}

/// Puts each hole that lies on a feature of the group into that feature's record.
std::vector<TestRecord> withHoles(const std::vector<TestRecord>& records) {
  std::vector<TestRecord> result;
  for (const TestRecord& record : records)
    if (!isHoleOnly(record)) result.push_back(record);
  for (const TestRecord& hole : records) {
    if (!isHoleOnly(hole)) continue;
    const auto under = std::find_if(result.begin(), result.end(), [&](const TestRecord& feature) {
      return feature.position == hole.position && !feature.drill;
    });
    if (under == result.end()) {
      result.push_back(hole);
      continue;
    }
    under->drill = hole.drill;
    under->plated = hole.plated;
  }
  return result;
}

LayerId layer(const IpcReader& r, int number) {
  return number >= 1 && static_cast<std::size_t>(number) <= r.layers.size()
             ? r.layers[static_cast<std::size_t>(number) - 1]
             : LayerId{};
}

void addVia(IpcReader& r, const Group& group) {
  const std::vector<TestRecord> features = withHoles(group.records);
  const TestRecord& first = features.front();
  Via via;
  via.id = r.points.board().newId<ViaId>();
  via.origin = Origin::file;
  via.position = first.position.value_or(Point{});
  Length widest;
  for (const TestRecord& feature : features)
    widest = std::max(widest, feature.width);
  if (widest > Length(0)) via.diameter = fromFile(widest);
  if (first.drill) via.drill = fromFile(*first.drill);
  if (!via.diameter.known() && first.drill) via.diameter = guessed(*first.drill);
  const TestRecord& head = group.records.front();
  if (head.kind == 307) {
    via.from = fromFile(layer(r, std::min(head.fromLayer, head.toLayer)));
    via.to = fromFile(layer(r, std::max(head.fromLayer, head.toLayer)));
  } else if (head.access.value_or(0) > 0 && r.preamble.hasBlindVias()) {
    via.from = via.to = fromFile(layer(r, *head.access));
    r.folded.add(pattern("core", "blind vias of which only one layer is said, read as on that one alone"),
                 group.place.said());
  }
  via.maskOpening = openingOf(head);
  const std::string name = r.netName(group.net);
  if (isNotConnected(name))
    via.net = fromFile(NetId{});
  else if (!name.empty())
    via.net = fromFile(r.points.net(name));
  r.points.board().vias.put(via);
}

bool isVia(const Group& group) {
  if (group.records.front().kind == 307 || group.reference == "VIA") return true;
  // A plated hole that belongs to no part is a via, too.
  const bool drilled = std::any_of(group.records.begin(), group.records.end(), [](const TestRecord& record) {
    return record.drill && record.plated.value_or(false);
  });
  return group.reference.empty() && group.pin.empty() && drilled && group.records.front().kind == 317;
}

} // namespace

Result<void> finishGroup(IpcReader& r) {
  const Group group = std::exchange(r.group, {});
  if (group.records.empty()) return {};
  if (group.records.front().midpoint)
    r.folded.add(pattern("core", "points marked as lying in the middle of their net"), group.place.said());
  if (isVia(group)) {
    addVia(r, group);
    return {};
  }
  PinPoint point;
  point.part = group.reference;
  point.pin = group.pin;
  const std::string name = r.netName(group.net);
  point.notConnected = isNotConnected(name) || (group.records.front().kind == 367 && name.empty());
  if (!point.notConnected) point.net = name;
  const std::vector<TestRecord> features = withHoles(group.records);
  PinId own;
  for (const TestRecord& record : features) {
    point.pad = padOf(r, record, group.place);
    // A point that is connected to nothing is a pin of its own, with all features of its group.
    point.onItsOwn = point.notConnected || point.pin.empty();
    point.pad.pin = own;
    if (auto& first = r.firstTurned[static_cast<std::size_t>(turnOf(point.pad))]; first.empty())
      first = group.place;
    const auto pad = r.points.add(point, group.place);
    if (!pad) return failure(pad.error());
    if (point.onItsOwn) own = r.points.board().pads.find(*pad)->pin;
  }
  return {};
}

} // namespace netmend::ipc
