#include "netmend/sketch/sketch.h"

#include <algorithm>

#include "netmend/board/shape.h"

namespace netmend {

namespace {

bool wantsOutline(const Wanted& wanted) {
  return std::holds_alternative<ShieldWanted>(wanted) || std::holds_alternative<BodyWanted>(wanted) ||
         std::holds_alternative<ZoneWanted>(wanted) || std::holds_alternative<AreaWanted>(wanted);
}

bool wantsClicks(const Wanted& wanted) {
  return wantsOutline(wanted) || std::holds_alternative<ArrayWanted>(wanted) ||
         std::holds_alternative<TwoTerminalsWanted>(wanted) ||
         std::holds_alternative<TestPadsWanted>(wanted) || std::holds_alternative<CopyWanted>(wanted);
}

SketchAnswer joinedAnswer(Joined joined, SketchAct act = SketchAct::joined) {
  SketchAnswer answer = SketchAnswer::of(act, std::move(joined.edit));
  answer.swallowed = std::move(joined.swallowed);
  answer.groundToSupply = joined.groundToSupply;
  return answer;
}

Result<SketchAnswer> edited(SketchAct act, Result<Edit> edit) {
  if (!edit) return failure(edit.error());
  return SketchAnswer::of(act, std::move(*edit));
}

NetId netOfPin(const Board& board, PinId id) {
  const Pin* pin = board.pins.find(id);
  return pin != nullptr && pin->net.known() ? pin->net.value : NetId();
}

} // namespace

void Sketch::dropClicks() {
  clicks_.clear();
  proposal_.reset();
  otherWay_ = false;
}

void Sketch::letGo() {
  dropClicks();
  part_ = {};
  series_.clear();
  netDone();
}

void Sketch::netDone() {
  if (group_.size() > 1) {
    before_ = std::move(last_);
    last_ = std::move(group_);
  }
  group_.clear();
  net_ = {};
  from_.reset();
  cornered_ = false;
  inside_ = false;
  skipped_.clear();
  between_.clear();
}

void Sketch::settle(const Lookup& lookup) {
  const Board& board = lookup.board();
  const auto gone = [&](PinId pin) { return board.pins.find(pin) == nullptr; };
  for (auto* pins : {&group_, &before_, &last_, &skipped_})
    std::erase_if(*pins, gone);
  std::erase_if(series_, [&](const auto& pins) { return std::any_of(pins.begin(), pins.end(), gone); });
  std::erase_if(between_, [&](TrackId track) { return board.tracks.find(track) == nullptr; });
  if (net_ && board.nets.find(net_) == nullptr) net_ = {};
  if (part_ && board.parts.find(part_) == nullptr) part_ = {};
  if (group_.empty() && !net_) from_.reset();
  // Where the copper is gone that led here, it goes on from the pin before it.
  const auto isCopper = [&](Side side) { return copperAt(board, *from_, side, Length(1'000)).isLine(); };
  if (!cornered_ || !from_ || isCopper(Side::top) || isCopper(Side::bottom)) return;
  if (group_.empty())
    netDone();
  else
    takePin(lookup, group_.back());
}

NetId Sketch::net(const Board& board) const {
  for (const PinId pin : group_)
    if (const NetId net = netOfPin(board, pin)) return net;
  return board.nets.find(net_) != nullptr ? net_ : NetId();
}

void Sketch::setTrackWidth(Length width) {
  width_ = std::clamp(width, Length(20'000), Length(20'000'000));
}

Result<SketchAnswer> Sketch::type(const Lookup& lookup, std::string_view text) {
  settle(lookup);
  line_ = readLine(text, lookup.board(), *sizes_, netInHand());
  dropClicks(); // they were for the line before
  if (const auto* name = std::get_if<NetWanted>(&line_.wanted); name != nullptr && netInHand()) {
    const NetId net = this->net(lookup.board());
    auto named = net ? nameNet(lookup, net, name->name) : nameNet(lookup, group_.front(), name->name);
    line_ = {};
    netDone();
    return joinedAnswer(std::move(named), SketchAct::named);
  }
  if (const auto* role = std::get_if<RoleWanted>(&line_.wanted)) {
    const NetId net = this->net(lookup.board());
    const NetRole wanted = role->role;
    line_ = {};
    if (!net) return SketchAnswer{};
    netDone();
    return SketchAnswer::of(SketchAct::roleSet, setRole(lookup.board(), net, wanted));
  }
  if (const auto* track = std::get_if<TrackWanted>(&line_.wanted)) {
    setTrackWidth(track->width);
    return SketchAnswer{};
  }
  letGo();
  return SketchAnswer{};
}

Result<SketchAnswer> Sketch::click(const Lookup& lookup, const SketchClick& click) {
  settle(lookup);
  series_.clear();
  const bool begun = !clicks_.empty();
  if (begun) return clickPart(lookup, click);
  // An outline may begin anywhere but on a pin; all else only where no line is drawn. Areas and zones are
  // ground to draw on.
  const bool bare = !click.pin && !copperAt(lookup.board(), click.at, click.side, click.reach).isLine();
  if (wantsClicks(line_.wanted) && !netInHand() && !click.pin) {
    const bool anywhere = wantsOutline(line_.wanted) || std::holds_alternative<CopyWanted>(line_.wanted) ||
                          std::holds_alternative<ArrayWanted>(line_.wanted);
    // A shield is looked through: what is drawn is under it.
    const Part* part = lookup.board().parts.find(click.part);
    const bool under = part == nullptr || part->kind.valueOr(PartKind::other) == PartKind::shield;
    if (anywhere || (bare && under)) return clickPart(lookup, click);
  }
  return clickNet(lookup, click);
}

Result<SketchAnswer> Sketch::clickPart(const Lookup& lookup, const SketchClick& click) {
  if (clicks_.empty()) clickSide_ = click.side;
  if (std::holds_alternative<ArrayWanted>(line_.wanted)) return clickArray(click);
  if (std::holds_alternative<TwoTerminalsWanted>(line_.wanted)) return clickTwoTerminals(lookup, click);
  if (const auto* pads = std::get_if<TestPadsWanted>(&line_.wanted)) {
    std::string name;
    for (unsigned long n = pads->from.value_or(1); name.empty(); ++n)
      if (lookup.pinsLabelled(pads->letters + std::to_string(n)).empty())
        name = pads->letters + std::to_string(n);
    return edited(SketchAct::testPadPut, putTestPad(lookup, name, click.at, pads->diameter, click.side));
  }
  if (const auto* copy = std::get_if<CopyWanted>(&line_.wanted)) {
    Fact<Point> at;
    for (const PinId pin : lookup.pinsOf(copy->parts.front()))
      if (!at.known()) at = positionOf(lookup, pin);
    const Part* first = lookup.board().parts.find(copy->parts.front());
    if (!at.known() && first != nullptr) at = first->position;
    return edited(
        SketchAct::partsCopied,
        copyParts(lookup, {copy->parts, at.known() ? click.at - at.value : Point{}, copy->mirrored}));
  }
  return clickOutline(lookup, click);
}

Result<void> Sketch::propose() {
  const auto& wanted = std::get<ArrayWanted>(line_.wanted);
  PinClicks clicks{clicks_[0], clicks_[1], {}, clickSide_, otherWay_};
  if (clicks_.size() > 2) clicks.rowEnd = clicks_[2];
  auto placed = placeArray(wanted.array, clicks);
  if (!placed) return failure(placed.error());
  proposal_ = std::move(*placed);
  return {};
}

Result<SketchAnswer> Sketch::clickArray(const SketchClick& click) {
  if (clicks_.size() > 2) clicks_.pop_back(); // the end of the row once more
  clicks_.push_back(click.at);
  const bool single = std::get<ArrayWanted>(line_.wanted).array.pins == 1;
  if (single && clicks_.size() == 1) clicks_.push_back(click.at + Point{Length(1'000'000), {}});
  if (clicks_.size() < 2) return SketchAnswer{};
  if (auto proposed = propose(); !proposed) {
    clicks_.pop_back();
    return failure(proposed.error());
  }
  return SketchAnswer{};
}

Result<SketchAnswer> Sketch::clickTwoTerminals(const Lookup& lookup, const SketchClick& click) {
  const auto wanted = std::get<TwoTerminalsWanted>(line_.wanted);
  clicks_.push_back(click.at);
  const std::size_t needed = wanted.count > 1 ? 3 : 2;
  if (clicks_.size() < needed) return SketchAnswer{};
  const auto clicks = std::exchange(clicks_, {});
  const ChipSize* named = sizes_->find(wanted.size);
  const ChipSize& size = named != nullptr ? *named : sizes_->nearest(distance(clicks[0], clicks[1]));
  Board after = lookup.board();
  SketchAnswer answer{wanted.count > 1 ? SketchAct::partsPut : SketchAct::partPut, {}, {}, false};
  auto number = wanted.from;
  for (std::size_t i = 0; i < wanted.count; ++i) {
    const auto steps = static_cast<std::int64_t>(wanted.count - 1);
    const auto step = [&](Length whole) {
      return steps > 0 ? Length(whole.nm * static_cast<std::int64_t>(i) / steps) : Length();
    };
    const Point by =
        wanted.count > 1 ? Point{step((clicks[2] - clicks[0]).x), step((clicks[2] - clicks[0]).y)} : Point{};
    const std::string reference = nextReference(after, wanted.letters, number);
    auto put = putTwoTerminal(after, {reference, wanted.kind, wanted.value}, size, named == nullptr,
                              {clicks[0] + by, clicks[1] + by, clickSide_});
    if (!put) return failure(put.error());
    if (auto done = apply(after, put->edit); !done) return failure(done.error());
    part_ = put->part;
    if (number) number = *number + 1;
    for (AnyChange& change : put->edit.changes)
      answer.edit.changes.push_back(std::move(change));
  }
  // The next one goes on from here.
  std::get<TwoTerminalsWanted>(line_.wanted).from = number;
  return answer;
}

Result<SketchAnswer> Sketch::clickOutline(const Lookup& lookup, const SketchClick& click) {
  if (const auto* zone = std::get_if<ZoneWanted>(&line_.wanted);
      zone != nullptr && clicks_.empty() && click.part) {
    part_ = click.part;
    return edited(SketchAct::zonePut, zoneFromPart(lookup, click.part, zone->kind));
  }
  const bool closes = clicks_.size() > 2 && distance(click.at, clicks_.front()) <= click.reach + click.reach;
  if (!closes) {
    clicks_.push_back(click.at);
    return SketchAnswer{};
  }
  const Ring outline = std::exchange(clicks_, {});
  const auto placed = [&](Result<PartPut> put) -> Result<SketchAnswer> {
    if (!put) return failure(put.error());
    part_ = put->part;
    line_ = {};
    return SketchAnswer::of(SketchAct::partPut, std::move(put->edit));
  };
  if (const auto* shield = std::get_if<ShieldWanted>(&line_.wanted))
    return placed(putShield(lookup.board(), shield->reference, {outline, shield->lid, clickSide_}));
  if (const auto* body = std::get_if<BodyWanted>(&line_.wanted))
    return placed(putBody(lookup.board(), body->label, outline, clickSide_));
  if (const auto* zone = std::get_if<ZoneWanted>(&line_.wanted))
    return edited(SketchAct::zonePut, putZone(lookup.board(), zone->kind, zone->name, outline, clickSide_));
  return edited(SketchAct::areaDrawn, putArea(lookup.board(), outline, clickSide_, net(lookup.board())));
}

void Sketch::takePin(const Lookup& lookup, PinId pin) {
  if (std::find(group_.begin(), group_.end(), pin) == group_.end()) group_.push_back(pin);
  const auto at = positionOf(lookup, pin);
  from_ = at.known() ? std::optional(at.value) : std::nullopt;
  cornered_ = false;
  inside_ = false;
}

/// Copper from where the net in hand is to the click, or along `way`; and what the click is on joins it.
SketchAnswer Sketch::drawTo(const Lookup& lookup, const SketchClick& click, Ring way) {
  const Board& board = lookup.board();
  const CopperAt there = click.pin ? CopperAt{} : copperAt(board, click.at, click.side, click.reach);
  std::vector<PinId> pins;
  if (!group_.empty()) pins.push_back(group_.front());
  if (click.pin) pins.push_back(click.pin);
  Joined joined = joinAll(lookup, pins, {net_, netmend::netOf(board, there)}, Origin::user);
  const NetId net = joined.net;
  SketchAnswer answer = joinedAnswer(std::move(joined));
  if (net && !netmend::netOf(board, there)) {
    answer.edit = giveNet(board, there, net, std::move(answer.edit));
    answer.act = SketchAct::joined;
  }
  const Point from = way.front();
  const Point to = way.back();
  if (inside_ && !(from == to)) {
    answer.act = SketchAct::insideRun;
    // It goes in and comes out through vias, where no pad does.
    if (cornered_ && !copperAt(board, from, click.side, Length(1)).via)
      answer.edit = putVia(board, from, usualVia, net, std::move(answer.edit));
    if (!click.pin && !there.isLine()) answer.edit = putVia(board, to, usualVia, net, std::move(answer.edit));
    answer.edit = putUnknownRun(board, from, to, net, std::move(answer.edit));
  } else if (!inside_) {
    answer.act = SketchAct::trackDrawn;
    answer.edit = putTrack(board, {std::move(way), width_, click.side, net}, std::move(answer.edit));
  }
  net_ = net;
  if (answer.edit.changes.empty()) answer.act = SketchAct::nothing;
  return answer;
}

Result<SketchAnswer> Sketch::clickNet(const Lookup& lookup, const SketchClick& click) {
  const Board& board = lookup.board();
  const CopperAt there = click.pin ? CopperAt{} : copperAt(board, click.at, click.side, click.reach);
  between_.clear();
  bend_ = Bend::straight;
  if (!netInHand()) {
    part_ = {};
    if (click.pin) {
      takePin(lookup, click.pin);
      if (const auto* name = std::get_if<NetWanted>(&line_.wanted)) {
        auto named = nameNet(lookup, click.pin, name->name);
        line_ = {};
        return joinedAnswer(std::move(named), SketchAct::named);
      }
    } else if (there.isLine()) {
      net_ = netmend::netOf(board, there);
      from_ = placeOn(board, there, click.at);
      cornered_ = true;
    } else {
      part_ = click.part;
    }
    return SketchAnswer{};
  }
  if (click.pin && !cornered_ && !inside_ && !group_.empty()) {
    const bool another = std::find(group_.begin(), group_.end(), click.pin) == group_.end();
    auto joined = another ? joinPins(lookup, {group_.front(), click.pin}, Origin::user) : Joined{};
    takePin(lookup, click.pin);
    return joinedAnswer(std::move(joined));
  }
  if (!from_) return SketchAnswer{};
  const Point to =
      click.pin ? positionOf(lookup, click.pin).valueOr(click.at) : placeOn(board, there, click.at);
  SketchAnswer answer = drawTo(lookup, click, {*from_, to});
  if (click.pin) {
    takePin(lookup, click.pin);
  } else {
    from_ = to;
    cornered_ = true;
    inside_ = false;
  }
  return answer;
}

Result<SketchAnswer> Sketch::stroke(const Lookup& lookup, const SketchClick& from, const Ring& way,
                                    const SketchClick& to) {
  settle(lookup);
  if (!from.pin || way.size() < 2) return SketchAnswer{};
  const bool same = std::find(group_.begin(), group_.end(), from.pin) != group_.end();
  if (!same) netDone();
  part_ = {};
  takePin(lookup, from.pin);
  Ring drawn = way;
  drawn.front() = positionOf(lookup, from.pin).valueOr(way.front());
  const CopperAt there = to.pin ? CopperAt{} : copperAt(lookup.board(), to.at, to.side, to.reach);
  const Point end =
      to.pin ? positionOf(lookup, to.pin).valueOr(way.back()) : placeOn(lookup.board(), there, way.back());
  drawn.back() = end;
  SketchAnswer answer = drawTo(lookup, to, std::move(drawn));
  if (to.pin) {
    takePin(lookup, to.pin);
  } else {
    from_ = end;
    cornered_ = true;
  }
  return answer;
}

} // namespace netmend
