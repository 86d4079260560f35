#include <algorithm>
#include <limits>

#include "netmend/sketch/sketch.h"

namespace netmend {

Result<SketchAnswer> Sketch::key(const Lookup& lookup, SketchKey key, const SketchClick& pointer) {
  settle(lookup);
  switch (key) {
  case SketchKey::take:
    if (proposal_) return takeProposal(lookup);
    if (!series_.empty()) return takeSeries(lookup);
    return SketchAnswer{};
  case SketchKey::refuse:
    if (!series_.empty()) {
      series_.clear();
    } else if (!clicks_.empty()) {
      dropClicks();
    } else {
      letGo();
    }
    return SketchAnswer{};
  case SketchKey::next:
    netDone();
    part_ = {};
    return SketchAnswer{};
  case SketchKey::skip:
    if (const PinId pin = ringed(lookup)) skipped_.push_back(pin);
    return SketchAnswer{};
  case SketchKey::otherWay:
    if (proposal_) {
      otherWay_ = !otherWay_;
      if (auto proposed = propose(); !proposed) return failure(proposed.error());
      return SketchAnswer{};
    }
    return copperBetween(lookup, true);
  case SketchKey::copper:
    return copperBetween(lookup, false);
  case SketchKey::via:
    return viaAt(lookup, pointer);
  case SketchKey::inside:
    if (from_) inside_ = !inside_;
    return SketchAnswer{};
  case SketchKey::zone: {
    const Part* part = lookup.board().parts.find(part_);
    if (part == nullptr) return SketchAnswer{};
    const PartZoneRule* rule = part->kind.known() ? zones_->of(part->kind.value) : nullptr;
    auto edit = zoneFromPart(lookup, part_, rule != nullptr ? rule->zone : ZoneKind::tallPart);
    if (!edit) return failure(edit.error());
    return SketchAnswer::of(SketchAct::zonePut, std::move(*edit));
  }
  case SketchKey::series:
    if (group_.size() > 1) netDone();
    series_ = seriesAfter(lookup, before_, last_);
    return SketchAnswer{};
  case SketchKey::gone:
    return setGoneInHand(lookup);
  case SketchKey::remove:
    return removeInHand(lookup, pointer);
  }
  return SketchAnswer{};
}

Result<SketchAnswer> Sketch::takeProposal(const Lookup& lookup) {
  const auto wanted = std::get<ArrayWanted>(line_.wanted);
  auto put = putArray(lookup, wanted.label, wanted.array, *proposal_, clickSide_);
  if (!put) return failure(put.error());
  letGo();
  line_ = {};
  part_ = put->part;
  return SketchAnswer::of(SketchAct::partPut, std::move(put->edit));
}

SketchAnswer Sketch::takeSeries(const Lookup& lookup) {
  Board after = lookup.board();
  Edit edit;
  for (const auto& pins : series_) {
    const Lookup now(after);
    Joined joined = joinPins(now, pins, Origin::user);
    if (!apply(after, joined.edit)) break;
    for (AnyChange& change : joined.edit.changes)
      edit.changes.push_back(std::move(change));
    before_ = std::exchange(last_, pins);
  }
  series_.clear();
  return SketchAnswer::of(SketchAct::seriesJoined, std::move(edit));
}

/// Copper along the straight or bent way between the last two pins of the group; asked again, another way.
SketchAnswer Sketch::copperBetween(const Lookup& lookup, bool another) {
  const Board& board = lookup.board();
  if (group_.size() < 2 || cornered_) return {};
  const auto a = positionOf(lookup, group_[group_.size() - 2]);
  const auto b = positionOf(lookup, group_.back());
  if (!a.known() || !b.known()) return {};
  if (!between_.empty() && !another) return {};
  Edit edit;
  if (!between_.empty()) {
    bend_ = bend_ == Bend::straight    ? Bend::slantLast
            : bend_ == Bend::slantLast ? Bend::slantFirst
                                       : Bend::straight;
    for (const TrackId track : between_)
      edit.remove<Track>(track);
  } else {
    bend_ = Bend::straight;
  }
  const Pad* pad =
      lookup.padsOf(group_.back()).empty() ? nullptr : board.pads.find(lookup.padsOf(group_.back()).front());
  const Side side =
      pad != nullptr && pad->reach.known() && pad->reach.value == PadReach::bottom ? Side::bottom : Side::top;
  edit = putTrack(board, {bentWay(a.value, b.value, bend_), width_, side, net(board)}, std::move(edit));
  between_.clear();
  for (const AnyChange& change : edit.changes)
    if (const auto* track = std::get_if<Change<Track>>(&change); track != nullptr && track->after)
      between_.push_back(track->id);
  return SketchAnswer::of(SketchAct::trackDrawn, std::move(edit));
}

SketchAnswer Sketch::viaAt(const Lookup& lookup, const SketchClick& pointer) {
  const Board& board = lookup.board();
  const CopperAt there = copperAt(board, pointer.at, pointer.side, Length());
  const Point at = there.via ? placeOn(board, there, pointer.at) : pointer.at;
  SketchAnswer answer;
  if (from_ && !(*from_ == at)) answer = drawTo(lookup, {at, pointer.side, {}, {}, Length()}, {*from_, at});
  // One is enough: it may be there, or end what ran inside.
  const bool isThere =
      there.via || std::any_of(answer.edit.changes.begin(), answer.edit.changes.end(),
                               [](const AnyChange& c) { return std::holds_alternative<Change<Via>>(c); });
  if (!isThere) answer.edit = putVia(board, at, usualVia, net_ ? net_ : net(board), std::move(answer.edit));
  if (!answer.edit.changes.empty()) answer.act = SketchAct::viaPut;
  if (!from_) return answer;
  from_ = at;
  cornered_ = true;
  inside_ = false;
  return answer;
}

SketchAnswer Sketch::setGoneInHand(const Lookup& lookup) {
  const Board& board = lookup.board();
  if (const Part* part = board.parts.find(part_))
    return SketchAnswer::of(SketchAct::goneSet, setFitted(board, part_, !part->fitted.valueOr(true)));
  if (group_.empty()) return {};
  const PinId pin = group_.back();
  bool gone = false;
  for (const PadId id : lookup.padsOf(pin))
    gone = gone || board.pads.find(id)->gone.valueOr(false);
  return SketchAnswer::of(SketchAct::goneSet, setGone(lookup, pin, !gone));
}

Result<SketchAnswer> Sketch::removeInHand(const Lookup& lookup, const SketchClick& pointer) {
  const Board& board = lookup.board();
  if (board.parts.find(part_) != nullptr) {
    const PartId part = std::exchange(part_, PartId());
    return SketchAnswer::of(SketchAct::removed, removePart(lookup, part));
  }
  if (!group_.empty() && !cornered_) {
    const PinId pin = group_.back();
    group_.pop_back();
    if (group_.empty())
      netDone();
    else
      takePin(lookup, group_.back());
    return SketchAnswer::of(SketchAct::separated, separatePin(lookup, pin));
  }
  const CopperAt there = copperAt(board, pointer.at, pointer.side, pointer.reach);
  netDone();
  return SketchAnswer::of(SketchAct::removed, removeCopper(there));
}

Result<SketchAnswer> Sketch::beep(const Lookup& lookup) {
  settle(lookup);
  const PinId pin = ringed(lookup);
  if (!pin || group_.empty()) return SketchAnswer{};
  Joined joined = joinPins(lookup, {group_.front(), pin}, Origin::measured);
  // Found from the held lead: that one stays where it is.
  group_.push_back(pin);
  return SketchAnswer{SketchAct::joined, std::move(joined.edit), std::move(joined.swallowed),
                      joined.groundToSupply};
}

PinId Sketch::ringed(const Lookup& lookup) const {
  const Board& board = lookup.board();
  if (group_.empty() || board.pins.find(group_.front()) == nullptr) return {};
  const auto from = positionOf(lookup, group_.back());
  PinId nearest;
  Length least(std::numeric_limits<std::int64_t>::max());
  for (const Pin& pin : board.pins) {
    if (pin.net.known() || std::find(group_.begin(), group_.end(), pin.id) != group_.end() ||
        std::find(skipped_.begin(), skipped_.end(), pin.id) != skipped_.end())
      continue;
    const auto at = positionOf(lookup, pin.id);
    const Length away = at.known() && from.known() ? distance(at.value, from.value)
                                                   : Length(std::numeric_limits<std::int64_t>::max() - 1);
    if (away >= least) continue;
    least = away;
    nearest = pin.id;
  }
  return nearest;
}

SketchDue Sketch::due(const Lookup& lookup) const {
  using What = SketchDue::What;
  const Board& board = lookup.board();
  if (!series_.empty()) return {What::takeSeries, {}, {}, series_.size()};
  if (netInHand()) {
    const Net* net = board.nets.find(this->net(board));
    return {inside_ ? What::insideEnd : What::joinPin, net != nullptr ? net->name : std::string(),
            group_.empty() ? std::string() : pinLabel(board, group_.back()), group_.size()};
  }
  if (const auto* array = std::get_if<ArrayWanted>(&line_.wanted)) {
    if (proposal_) return {What::takeArray, array->label.reference, {}, array->array.pins};
    return {clicks_.empty() ? What::firstPin : What::oppositePin, array->label.reference,
            clicks_.empty() ? firstPin(array->array) : oppositePin(array->array), array->array.pins};
  }
  if (const auto* two = std::get_if<TwoTerminalsWanted>(&line_.wanted)) {
    const std::string name = nextReference(board, two->letters, two->from);
    const What what = clicks_.empty()       ? What::firstEnd
                      : clicks_.size() == 1 ? What::secondEnd
                                            : What::lastFirstEnd;
    return {what, name, {}, two->count};
  }
  if (const auto* pads = std::get_if<TestPadsWanted>(&line_.wanted))
    return {What::testPad, pads->letters, {}, 0};
  if (std::holds_alternative<CopyWanted>(line_.wanted)) return {What::copyPlace, {}, {}, 0};
  if (std::holds_alternative<ZoneWanted>(line_.wanted) && clicks_.empty())
    return {What::zonePlace, {}, {}, 0};
  const bool outline = std::holds_alternative<ShieldWanted>(line_.wanted) ||
                       std::holds_alternative<BodyWanted>(line_.wanted) ||
                       std::holds_alternative<ZoneWanted>(line_.wanted) ||
                       std::holds_alternative<AreaWanted>(line_.wanted);
  if (outline) return {clicks_.size() > 2 ? What::closeCorner : What::corner, {}, {}, clicks_.size()};
  if (const Part* part = board.parts.find(part_)) return {What::part, part->reference, {}, 0};
  return {What::type, {}, {}, 0};
}

} // namespace netmend
