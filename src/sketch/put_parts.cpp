#include "netmend/sketch/put_parts.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <charconv>
#include <cmath>
#include <numbers>

#include "draft.h"
#include "netmend/base/plane.h"

namespace netmend {

namespace {

constexpr auto prefixes = std::to_array<std::pair<std::string_view, PartKind>>(
    {{"R", PartKind::resistor},       {"RN", PartKind::resistorArray}, {"RA", PartKind::resistorArray},
     {"RP", PartKind::resistorArray}, {"C", PartKind::capacitor},      {"L", PartKind::inductor},
     {"FB", PartKind::ferrite},       {"FL", PartKind::filter},        {"F", PartKind::fuse},
     {"D", PartKind::diode},          {"LED", PartKind::led},          {"Q", PartKind::transistor},
     {"U", PartKind::chip},           {"IC", PartKind::chip},          {"Y", PartKind::crystal},
     {"X", PartKind::crystal},        {"J", PartKind::connector},      {"P", PartKind::connector},
     {"CN", PartKind::connector},     {"CON", PartKind::connector},    {"SW", PartKind::switchOrKey},
     {"S", PartKind::switchOrKey},    {"BT", PartKind::battery},       {"ANT", PartKind::antenna},
     {"SH", PartKind::shield},        {"TP", PartKind::testPoint},     {"MH", PartKind::mechanical},
     {"H", PartKind::mechanical}});

std::string upperCase(std::string_view text) {
  std::string out(text);
  for (char& c : out)
    c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
  return out;
}

const Part* partCalled(const Board& board, const std::string& reference) {
  const auto found = std::find_if(board.parts.begin(), board.parts.end(),
                                  [&](const Part& part) { return part.reference == reference; });
  return found != board.parts.end() ? &*found : nullptr;
}

Error isThere(const std::string& reference) {
  return {pattern("core", "is on this board already"), "", "", reference,
          pattern("core", "a reference that no part has yet")};
}

Part newPart(Draft& draft, const PartLabel& label, Side side) {
  Part part;
  part.id = draft.newId<PartId>();
  part.reference = label.reference;
  part.kind = fromUser(label.kind);
  if (!label.value.empty()) part.value = fromUser(label.value);
  part.side = fromUser(side);
  part.fitted = fromUser(true);
  part.origin = Origin::user;
  return part;
}

Pin newPin(Draft& draft, PartId part, std::string name) {
  Pin pin;
  pin.id = draft.newId<PinId>();
  pin.part = part;
  pin.name = std::move(name);
  pin.origin = Origin::user;
  return pin;
}

Pad newPad(Draft& draft, PinId pin, Point at, Side side) {
  Pad pad;
  pad.id = draft.newId<PadId>();
  pad.pin = pin;
  pad.position = fromUser(at);
  pad.reach = fromUser(side == Side::top ? PadReach::top : PadReach::bottom);
  pad.origin = Origin::user;
  return pad;
}

Pad padOf(Draft& draft, PinId pin, const PlacedArray::Pad& placed, const PinArray& array, Side side) {
  Pad pad = newPad(draft, pin, placed.at, side);
  pad.size = {placed.size, array.pad ? Origin::user : Origin::guessed};
  pad.rotation = placed.turn;
  const bool round = array.form == PinForm::grid || array.drill;
  pad.shape = guessed(round ? PadShape::circle : PadShape::rectangle);
  if (array.drill) {
    pad.drill = fromUser(*array.drill);
    pad.plated = guessed(true);
    pad.reach = fromUser(PadReach::allLayers);
  }
  return pad;
}

/// Whether one lies inside the other's outline, in the middle of its pads or its own place.
bool liesWithin(const Ring& outline, const Lookup& lookup, const Part& part) {
  if (part.position.known()) return insideRing(outline, vecOf(part.position.value));
  for (const PinId pin : lookup.pinsOf(part.id))
    if (const auto at = positionOf(lookup, pin); at.known()) return insideRing(outline, vecOf(at.value));
  return false;
}

Point middleOf(const Ring& ring) {
  Box box;
  for (const Point p : ring)
    box.include(p);
  return {(box.min.x + box.max.x) / 2, (box.min.y + box.max.y) / 2};
}

/// Puts pads at the pins of a part that was only a list.
Result<PartPut> placeList(const Lookup& lookup, const Part& there, const PinArray& array,
                          const PlacedArray& placed, Side side) {
  Draft draft(lookup.board());
  const auto& pins = lookup.pinsOf(there.id);
  const std::size_t numbered = pinNames(array).size();
  for (const PinId pin : pins)
    if (!lookup.padsOf(pin).empty()) return failure(isThere(there.reference));
  if (pins.size() != numbered)
    return failure({said(pattern("core", "{} has another number of pins"), there.reference), "", "",
                    std::to_string(numbered), std::to_string(pins.size())});
  // By name where the names are the same, else in their order.
  const auto named = [&](const std::string& name) {
    const auto found = std::find_if(pins.begin(), pins.end(),
                                    [&](PinId id) { return lookup.board().pins.find(id)->name == name; });
    return found != pins.end() ? *found : PinId();
  };
  const auto names = pinNames(array);
  const bool sameNames =
      std::all_of(names.begin(), names.end(), [&](const std::string& name) { return bool(named(name)); });
  Part part = there;
  part.side = fromUser(side);
  part.position = fromUser(placed.middle);
  part.body = guessed(placed.body);
  if (!part.fitted.known()) part.fitted = fromUser(true);
  for (std::size_t i = 0; i < placed.pads.size(); ++i) {
    PinId pin;
    if (i < numbered) {
      pin = sameNames ? named(placed.pads[i].name) : pins[i];
    } else {
      Pin tab = newPin(draft, part.id, placed.pads[i].name);
      pin = tab.id;
      draft.put(std::move(tab));
    }
    draft.put(padOf(draft, pin, placed.pads[i], array, side));
  }
  draft.put(part);
  return PartPut{part.id, draft.take()};
}

} // namespace

std::optional<PartKind> kindOfPrefix(std::string_view letters) {
  const std::string upper = upperCase(letters);
  const auto found = std::find_if(prefixes.begin(), prefixes.end(),
                                  [&](const auto& prefix) { return prefix.first == upper; });
  return found != prefixes.end() ? std::optional(found->second) : std::nullopt;
}

ReferenceParts partsOfReference(std::string_view reference) {
  const std::size_t letters = reference.find_last_not_of("0123456789") + 1; // none: 0
  const std::string_view digits = reference.substr(letters);
  // What is longer counts nothing, and would overflow when it is counted on.
  if (digits.empty() || digits.size() > 9) return {std::string(reference), {}};
  unsigned long number = 0;
  std::from_chars(digits.data(), digits.data() + digits.size(), number);
  return {std::string(reference.substr(0, letters)), number};
}

std::string nextReference(const Board& board, std::string_view letters, std::optional<unsigned long> from) {
  unsigned long highest = 0;
  std::vector<unsigned long> used;
  for (const Part& part : board.parts) {
    const auto parts = partsOfReference(part.reference);
    if (parts.letters != letters || !parts.number) continue;
    used.push_back(*parts.number);
    highest = std::max(highest, *parts.number);
  }
  unsigned long next = from.value_or(highest + 1);
  while (std::find(used.begin(), used.end(), next) != used.end())
    ++next;
  return std::string(letters) + std::to_string(next);
}

Result<PartPut> putArray(const Lookup& lookup, const PartLabel& label, const PinArray& array,
                         const PlacedArray& placed, Side side) {
  if (const Part* there = partCalled(lookup.board(), label.reference))
    return placeList(lookup, *there, array, placed, side);
  Draft draft(lookup.board());
  Part part = newPart(draft, label, side);
  part.position = fromUser(placed.middle);
  part.body = guessed(placed.body);
  for (const auto& pad : placed.pads) {
    Pin pin = newPin(draft, part.id, pad.name);
    draft.put(padOf(draft, pin.id, pad, array, side));
    draft.put(std::move(pin));
  }
  const PartId id = part.id;
  draft.put(std::move(part));
  return PartPut{id, draft.take()};
}

Result<PartPut> putTwoTerminal(const Board& board, const PartLabel& label, const ChipSize& size,
                               bool sizeGuessed, const TwoEnds& ends) {
  if (partCalled(board, label.reference) != nullptr) return failure(isThere(label.reference));
  const double dx = (ends.second.x - ends.first.x).mm();
  const double dy = (ends.second.y - ends.first.y).mm();
  const double apart = std::hypot(dx, dy);
  if (apart < 0.01) return failure({pattern("core", "both clicks are at the same place")});
  double turn = std::fmod(std::atan2(dy, dx) * 180.0 / std::numbers::pi + 360.0, 360.0);
  // Parts stand straight but for the hand that clicks.
  constexpr double slip = 6.0;
  const double quarter = std::round(turn / 90.0) * 90.0;
  if (std::abs(turn - quarter) < slip) turn = std::fmod(quarter, 360.0);
  const double c = std::cos(turn * std::numbers::pi / 180.0);
  const double s = std::sin(turn * std::numbers::pi / 180.0);
  const Point middle{(ends.first.x + ends.second.x) / 2, (ends.first.y + ends.second.y) / 2};
  const auto at = [&](double along, double across) {
    return Point{middle.x + Length::fromMm(along * c - across * s),
                 middle.y + Length::fromMm(along * s + across * c)};
  };
  Draft draft(board);
  Part part = newPart(draft, label, ends.side);
  part.position = fromUser(middle);
  part.package = {size.code, sizeGuessed ? Origin::guessed : Origin::user};
  const double l = size.body.width.mm() / 2;
  const double w = size.body.height.mm() / 2;
  part.body = {Ring{at(-l, -w), at(l, -w), at(l, w), at(-l, w)},
               sizeGuessed ? Origin::guessed : Origin::user};
  for (const int end : {0, 1}) {
    Pin pin = newPin(draft, part.id, end == 0 ? "1" : "2");
    Pad pad = newPad(draft, pin.id, at((end == 0 ? -0.5 : 0.5) * size.padsApart.mm(), 0.0), ends.side);
    pad.shape = guessed(PadShape::rectangle);
    pad.size = guessed(size.pad);
    pad.rotation = Degrees(std::fmod(turn, 180.0));
    draft.put(std::move(pin));
    draft.put(std::move(pad));
  }
  const PartId id = part.id;
  draft.put(std::move(part));
  return PartPut{id, draft.take()};
}

Result<PartPut> putBody(const Board& board, const PartLabel& label, const Ring& outline, Side side) {
  if (partCalled(board, label.reference) != nullptr) return failure(isThere(label.reference));
  if (outline.size() < 3) return failure({pattern("core", "an outline has three corners or more")});
  Draft draft(board);
  Part part = newPart(draft, label, side);
  part.body = fromUser(outline);
  part.position = fromUser(middleOf(outline));
  const PartId id = part.id;
  draft.put(std::move(part));
  return PartPut{id, draft.take()};
}

Result<PartPut> putShield(const Board& board, const std::string& reference, const ShieldFrame& frame) {
  auto put = putBody(board, {reference, PartKind::shield, {}}, frame.outline, frame.side);
  if (!put) return put;
  for (AnyChange& change : put->edit.changes)
    if (auto* part = std::get_if<Change<Part>>(&change); part != nullptr && frame.height)
      part->after->height = fromUser(*frame.height);
  const Lookup lookup(board);
  for (const Part& inside : board.parts) {
    if (inside.side.valueOr(frame.side) != frame.side || !liesWithin(frame.outline, lookup, inside)) continue;
    Part covered = inside;
    covered.lid = guessed(put->part);
    put->edit.put(std::move(covered));
  }
  return put;
}

Result<Edit> putTestPad(const Lookup& lookup, const std::string& name, Point at, Length diameter, Side side) {
  if (!lookup.pinsLabelled(name).empty()) return failure(isThere(name));
  Draft draft(lookup.board());
  Pin pin = newPin(draft, PartId(), name);
  Pad pad = newPad(draft, pin.id, at, side);
  pad.shape = guessed(PadShape::circle);
  pad.size = guessed(Size{diameter, diameter});
  draft.put(std::move(pin));
  draft.put(std::move(pad));
  return draft.take();
}

Edit removePart(const Lookup& lookup, PartId id) {
  const Board& board = lookup.board();
  if (board.parts.find(id) == nullptr) return {};
  Draft draft(board);
  for (const PinId pin : lookup.pinsOf(id)) {
    for (const PadId pad : lookup.padsOf(pin))
      draft.remove<Pad>(pad);
    draft.remove<Pin>(pin);
  }
  for (const Zone& zone : board.zones)
    if (zone.part == id) draft.remove<Zone>(zone.id);
  for (const Part& other : board.parts) {
    if (other.id == id || !other.lid.known() || other.lid.value != id) continue;
    Part uncovered = other;
    uncovered.lid = {};
    draft.put(std::move(uncovered));
  }
  draft.remove<Part>(id);
  return draft.take();
}

Edit movePart(const Lookup& lookup, PartId id, Point by) {
  const Board& board = lookup.board();
  const Part* there = board.parts.find(id);
  if (there == nullptr) return {};
  Draft draft(board);
  Part part = *there;
  if (part.position.known()) part.position.value = part.position.value + by;
  for (Point& corner : part.body.value)
    corner = corner + by;
  draft.put(std::move(part));
  for (const PinId pin : lookup.pinsOf(id))
    for (const PadId padId : lookup.padsOf(pin)) {
      Pad pad = *board.pads.find(padId);
      if (!pad.position.known()) continue;
      pad.position = fromUser(pad.position.value + by);
      draft.put(std::move(pad));
    }
  for (const Zone& zone : board.zones) {
    if (zone.part != id) continue;
    Zone moved = zone;
    for (Point& corner : moved.polygon.outer)
      corner = corner + by;
    for (Ring& hole : moved.polygon.holes)
      for (Point& corner : hole)
        corner = corner + by;
    draft.put(std::move(moved));
  }
  return draft.take();
}

Edit setFitted(const Board& board, PartId id, bool fitted) {
  Edit edit;
  if (const Part* there = board.parts.find(id)) {
    Part part = *there;
    part.fitted = fromUser(fitted);
    edit.put(std::move(part));
  }
  return edit;
}

Edit setGone(const Lookup& lookup, PinId pin, bool gone) {
  Edit edit;
  for (const PadId id : lookup.padsOf(pin)) {
    Pad pad = *lookup.board().pads.find(id);
    pad.gone = fromUser(gone);
    edit.put(std::move(pad));
  }
  return edit;
}

} // namespace netmend
