#include "netmend/isolation/terminations.h"

#include <algorithm>

#include "netmend/board/value.h"
#include "netmend/netgraph/net_role.h"

namespace netmend {

namespace {

bool isRail(const Board& board, const Pin& pin, NetRole role) {
  const Net* net = pin.net.known() ? board.nets.find(pin.net.value) : nullptr;
  if (!net) return false;
  const auto found = roleOf(*net);
  return found.known() && found.value == role;
}

bool onLine(const Line& line, const Pin& pin) {
  return pin.net.known() && std::find(line.nets.begin(), line.nets.end(), pin.net.value) != line.nets.end();
}

/// A resistor that the line ends at: what its other end is on decides.
void throughResistor(const Lookup& lookup, const Line& line, const Part& part, const FaultPriors& priors,
                     PinTermination& result) {
  const Board& board = lookup.board();
  const auto& pins = lookup.pinsOf(part.id);
  if (pins.size() != 2) return;
  const Pin* other = board.pins.find(pins[0] == result.pin ? pins[1] : pins[0]);
  if (!other || onLine(line, *other)) return;
  const auto value = part.value.known() ? parsePartValue(part.value.value) : std::nullopt;
  if (!value || (value->unit != ValueUnit::none && value->unit != ValueUnit::ohm)) return;
  const bool ground = isRail(board, *other, NetRole::ground);
  const bool supply = isRail(board, *other, NetRole::supply);
  if (!ground && !supply) return;
  const Ohms resistance(value->magnitude);
  if (!(resistance.value > 0.0) || resistance > priors.mostPullUp) return;
  result.shares = {0.0, 0.97, 0.03};
  result.resistance = supply ? resistance + priors.railOhms : resistance;
  result.throughRail = supply;
}

TerminationShares ofKind(const Fact<PartKind>& kind, const FaultPriors& priors) {
  if (!kind.known()) return priors.unknownPart;
  const auto it = priors.terminations.find(kind.value);
  return it == priors.terminations.end() ? priors.otherPart : it->second;
}

TerminationShares asSaid(Termination said) {
  switch (said) {
  case Termination::junction:
    return {1.0, 0.0, 0.0};
  case Termination::resistive:
    return {0.0, 1.0, 0.0};
  case Termination::none:
    break;
  }
  return {0.0, 0.0, 1.0};
}

PinTermination terminationOf(const Lookup& lookup, const Line& line, const Pin& pin,
                             const FaultPriors& priors) {
  PinTermination result;
  result.pin = pin.id;
  result.resistance = Ohms(10e3); // a resistive pin of which nobody knows how much
  const Part* part = lookup.board().parts.find(pin.part);
  if (!part) return result; // a free point of the board
  result.shares = ofKind(part->kind, priors);
  if (part->fitted.known() && !part->fitted.value) {
    result.shares = {};
    result.origin = part->fitted.origin;
    return result;
  }
  if (part->kind.known() && part->kind.value == PartKind::resistor)
    throughResistor(lookup, line, *part, priors, result);
  if (pin.termination.certain()) {
    result.shares = asSaid(pin.termination.value);
    result.origin = pin.termination.origin;
  } else if (pin.termination.known()) {
    // A guess of the board's author counts for as much as the general one.
    const auto said = asSaid(pin.termination.value);
    result.shares = {0.5 * (said.junction + result.shares.junction),
                     0.5 * (said.resistive + result.shares.resistive),
                     0.5 * (said.none + result.shares.none)};
  }
  return result;
}

} // namespace

double PinTermination::confidence() const {
  return std::max({shares.junction, shares.resistive, shares.none});
}

std::vector<PinTermination> terminationsOf(const Lookup& lookup, const Line& line,
                                           const FaultPriors& priors) {
  std::vector<PinTermination> result;
  for (const NodeIndex node : line.terminals()) {
    const auto* id = std::get_if<PinId>(&line.graph[node].object);
    const Pin* pin = id ? lookup.board().pins.find(*id) : nullptr;
    if (pin)
      result.push_back(terminationOf(lookup, line, *pin, priors));
    else
      result.emplace_back();
  }
  return result;
}

} // namespace netmend
