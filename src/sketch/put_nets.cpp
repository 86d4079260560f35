#include "netmend/sketch/put_nets.h"

#include <algorithm>
#include <map>

#include "draft.h"
#include "netmend/netgraph/net_role.h"
#include "netmend/sketch/put_parts.h"

namespace netmend {

namespace {

NetId netOf(const Board& board, PinId id) {
  const Pin* pin = board.pins.find(id);
  return pin != nullptr && pin->net.known() ? pin->net.value : NetId();
}

/// Joins nets and pins into one net, `into` or a new one.
class Joiner {
public:
  Joiner(const Lookup& lookup, Origin origin) : lookup_(lookup), draft_(lookup.board()), origin_(origin) {}

  void into(NetId net) { out_.net = net; }
  void add(PinId pin) { pins_.push_back(pin); }
  void swallow(NetId net) {
    if (net && net != out_.net && std::find(nets_.begin(), nets_.end(), net) == nets_.end())
      nets_.push_back(net);
  }
  void name(std::string name) { name_ = std::move(name); }

  Joined join() {
    const Board& board = lookup_.board();
    Net net;
    if (const Net* there = board.nets.find(out_.net)) {
      net = *there;
    } else {
      net.id = out_.net = draft_.newId<NetId>();
      net.origin = Origin::user;
    }
    noteRole(net);
    for (const NetId gone : nets_)
      take(*board.nets.find(gone), net);
    out_.groundToSupply = ground_ && supply_;
    if (!name_.empty()) net.name = name_;
    for (const PinId id : pins_)
      putPin(id, origin_);
    if (const Net* there = board.nets.find(net.id); there == nullptr || !(*there == net)) draft_.put(net);
    out_.edit = draft_.take();
    return std::move(out_);
  }

private:
  void putPin(PinId id, Origin origin) {
    Pin pin = *lookup_.board().pins.find(id);
    // What was measured is not made a mere word of somebody's.
    const bool known = pin.net.known() && pin.net.value == out_.net;
    if (known && (pin.net.certain() || origin == Origin::guessed) && origin != Origin::measured) return;
    if (pin.net == Fact<NetId>{out_.net, origin}) return;
    pin.net = {out_.net, origin};
    draft_.put(std::move(pin));
  }

  void noteRole(const Net& net) {
    const NetRole role = roleOf(net).valueOr(NetRole::signal);
    ground_ = ground_ || role == NetRole::ground;
    supply_ = supply_ || role == NetRole::supply;
  }

  /// Everything of a net is of the other one from now on.
  void take(const Net& gone, Net& net) {
    const Board& board = lookup_.board();
    noteRole(gone);
    // A role that only the lost name told is kept, where the name that stays tells none.
    if (!net.role.known()) net.role = gone.role.known() || roleOf(net).known() ? gone.role : roleOf(gone);
    if (net.name.empty())
      net.name = gone.name;
    else if (!gone.name.empty() && gone.name != net.name)
      out_.swallowed.push_back(gone.name);
    if (!net.ratedVoltage.known()) net.ratedVoltage = gone.ratedVoltage;
    if (!net.ratedCurrent.known()) net.ratedCurrent = gone.ratedCurrent;
    for (const PinId id : lookup_.pinsOf(gone.id))
      if (std::find(pins_.begin(), pins_.end(), id) == pins_.end())
        putPin(id, board.pins.find(id)->net.origin);
    const auto rename = [&](const auto& table) {
      for (const auto& object : table) {
        if (!object.net.known() || object.net.value != gone.id) continue;
        auto renamed = object;
        renamed.net.value = out_.net;
        draft_.put(std::move(renamed));
      }
    };
    rename(board.tracks);
    rename(board.vias);
    rename(board.areas);
    draft_.remove<Net>(gone.id);
  }

  const Lookup& lookup_;
  Draft draft_;
  Origin origin_;
  std::vector<PinId> pins_;
  std::vector<NetId> nets_;
  std::string name_;
  bool ground_ = false;
  bool supply_ = false;
  Joined out_;
};

bool anythingOf(const Lookup& lookup, NetId net, PinId but) {
  const auto& pins = lookup.pinsOf(net);
  if (std::any_of(pins.begin(), pins.end(), [&](PinId pin) { return pin != but; })) return true;
  const auto inTable = [&](const auto& table) {
    return std::any_of(table.begin(), table.end(),
                       [&](const auto& object) { return object.net.known() && object.net.value == net; });
  };
  const Board& board = lookup.board();
  return inTable(board.tracks) || inTable(board.vias) || inTable(board.areas);
}

Joined named(const Lookup& lookup, Joiner& joiner, const std::string& name) {
  joiner.name(name);
  if (!name.empty())
    for (const NetId other : lookup.netsNamed(name))
      joiner.swallow(other);
  return joiner.join();
}

/// A pin's label in its steps: letters and number of the part, letters and number of the pin.
struct LabelSteps {
  ReferenceParts part;
  ReferenceParts pin;
};

LabelSteps stepsOf(const Board& board, PinId id) {
  const Pin& pin = *board.pins.find(id);
  const Part* part = board.parts.find(pin.part);
  return {partsOfReference(part != nullptr ? part->reference : std::string()), partsOfReference(pin.name)};
}

/// How far it is from one to the other; nothing where more than numbers differ.
std::optional<long> stepBetween(const ReferenceParts& a, const ReferenceParts& b) {
  if (a.letters != b.letters || a.number.has_value() != b.number.has_value()) return std::nullopt;
  return a.number ? static_cast<long>(*b.number) - static_cast<long>(*a.number) : 0;
}

std::optional<std::string> stepped(const ReferenceParts& from, long by) {
  if (!from.number) return from.letters;
  const long number = static_cast<long>(*from.number) + by;
  if (number < 0) return std::nullopt;
  return from.letters + std::to_string(number);
}

struct PinStep {
  LabelSteps last;
  long part = 0;
  long pin = 0;
};

PinId pinAfter(const Lookup& lookup, const PinStep& step, long times) {
  const auto part = stepped(step.last.part, times * step.part);
  const auto pin = stepped(step.last.pin, times * step.pin);
  if (!part || !pin) return {};
  const auto found = lookup.pinsLabelled(part->empty() ? *pin : *part + "." + *pin);
  return found.size() == 1 ? found.front() : PinId();
}

constexpr std::string_view blanks = " \t,;";

std::string_view trimmed(std::string_view text) {
  const auto first = text.find_first_not_of(" \t\r,;\"");
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t\r,;\"") - first + 1);
}

} // namespace

Joined joinPins(const Lookup& lookup, const std::vector<PinId>& pins, Origin origin) {
  std::vector<PinId> there;
  for (const PinId pin : pins)
    if (lookup.board().pins.find(pin) != nullptr && std::find(there.begin(), there.end(), pin) == there.end())
      there.push_back(pin);
  return there.size() < 2 ? Joined{} : joinAll(lookup, there, {}, origin);
}

Joined joinAll(const Lookup& lookup, const std::vector<PinId>& pins, const std::vector<NetId>& nets,
               Origin origin) {
  const Board& board = lookup.board();
  std::vector<NetId> all;
  all.reserve(pins.size() + nets.size());
  for (const PinId pin : pins)
    all.push_back(netOf(board, pin));
  all.insert(all.end(), nets.begin(), nets.end());
  std::erase_if(all, [&](NetId net) { return board.nets.find(net) == nullptr; });
  Joiner joiner(lookup, origin);
  bool any = !all.empty();
  if (any) joiner.into(all.front());
  for (const PinId pin : pins) {
    if (board.pins.find(pin) == nullptr) continue;
    joiner.add(pin);
    any = true;
  }
  for (const NetId net : all)
    joiner.swallow(net);
  return any ? joiner.join() : Joined{};
}

Edit separatePin(const Lookup& lookup, PinId id) {
  Edit edit;
  const Pin* there = lookup.board().pins.find(id);
  if (there == nullptr || !there->net.known()) return edit;
  Pin pin = *there;
  pin.net = {};
  edit.put(std::move(pin));
  const NetId net = there->net.value;
  if (net && !anythingOf(lookup, net, id)) edit.remove<Net>(net);
  return edit;
}

Joined nameNet(const Lookup& lookup, NetId net, const std::string& name) {
  if (lookup.board().nets.find(net) == nullptr) return {};
  Joiner joiner(lookup, Origin::user);
  joiner.into(net);
  return named(lookup, joiner, name);
}

Joined nameNet(const Lookup& lookup, PinId pin, const std::string& name) {
  if (lookup.board().pins.find(pin) == nullptr) return {};
  if (const NetId net = netOf(lookup.board(), pin)) return nameNet(lookup, net, name);
  Joiner joiner(lookup, Origin::user);
  joiner.add(pin);
  if (const auto others = lookup.netsNamed(name); !name.empty() && !others.empty())
    joiner.into(others.front());
  return named(lookup, joiner, name);
}

Edit setRole(const Board& board, NetId id, NetRole role) {
  Edit edit;
  if (const Net* there = board.nets.find(id)) {
    Net net = *there;
    net.role = fromUser(role);
    if (!(net == *there)) edit.put(std::move(net));
  }
  return edit;
}

PinNames readPinNames(const Lookup& lookup, PartId part, std::string_view text) {
  PinNames out;
  bool first = true;
  while (!text.empty()) {
    const auto end = text.find('\n');
    const std::string_view line = trimmed(text.substr(0, end));
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
    if (line.empty()) continue;
    const auto gap = line.find_first_of(blanks);
    const std::string pin(trimmed(line.substr(0, gap)));
    const std::string net(gap == std::string_view::npos ? std::string_view() : trimmed(line.substr(gap)));
    std::vector<PinId> pins;
    for (const PinId id : lookup.pinsOf(part))
      if (lookup.board().pins.find(id)->name == pin) pins.push_back(id);
    if (pins.empty()) pins = lookup.pinsLabelled(pin);
    const bool headings = std::exchange(first, false) && pins.size() != 1 &&
                          pin.find_first_of("0123456789") == std::string::npos;
    if (pins.size() != 1) {
      if (!headings) out.unknown.emplace_back(line);
    } else if (!net.empty()) {
      out.named.emplace_back(pins.front(), net == "-" || net == "NC" ? std::string() : net);
    }
  }
  return out;
}

Edit putPinNames(const Lookup& lookup, const PinNames& names) {
  const Board& board = lookup.board();
  Draft draft(board);
  std::map<std::string, NetId> made;
  for (const auto& [id, name] : names.named) {
    const Pin* there = board.pins.find(id);
    if (there == nullptr) continue;
    Pin pin = *there;
    NetId net;
    if (!name.empty()) {
      const auto nets = lookup.netsNamed(name);
      if (!nets.empty()) {
        net = nets.front();
      } else if (const auto known = made.find(name); known != made.end()) {
        net = known->second;
      } else {
        Net fresh;
        fresh.id = net = draft.newId<NetId>();
        fresh.name = name;
        fresh.origin = Origin::user;
        made.emplace(name, net);
        draft.put(std::move(fresh));
      }
    }
    pin.net = fromUser(net);
    draft.put(std::move(pin));
  }
  return draft.take();
}

std::vector<std::vector<PinId>> seriesAfter(const Lookup& lookup, const std::vector<PinId>& before,
                                            const std::vector<PinId>& last) {
  const Board& board = lookup.board();
  if (before.size() != last.size() || last.size() < 2) return {};
  std::vector<PinStep> steps;
  bool moves = false;
  for (std::size_t i = 0; i < last.size(); ++i) {
    if (board.pins.find(before[i]) == nullptr || board.pins.find(last[i]) == nullptr) return {};
    const LabelSteps a = stepsOf(board, before[i]);
    const LabelSteps b = stepsOf(board, last[i]);
    const auto part = stepBetween(a.part, b.part);
    const auto pin = stepBetween(a.pin, b.pin);
    if (!part || !pin) return {};
    moves = moves || *part != 0 || *pin != 0;
    steps.push_back({b, *part, *pin});
  }
  std::vector<std::vector<PinId>> out;
  for (long times = 1; moves; ++times) {
    std::vector<PinId> group;
    for (const PinStep& step : steps) {
      const PinId pin = pinAfter(lookup, step, times);
      const bool standing = step.part == 0 && step.pin == 0; // the same pin in all of them
      if (!pin || (!standing && board.pins.find(pin)->net.known())) return out;
      group.push_back(pin);
    }
    out.push_back(std::move(group));
  }
  return out;
}

} // namespace netmend
