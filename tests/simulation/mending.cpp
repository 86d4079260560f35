#include "simulation/mending.h"

#include <algorithm>

namespace netmend::simulation {

Mending newPart(const BoardLine& line, const Lookup& lookup, PartId part) {
  Mending out{Mending::Kind::newPart, {}, part};
  for (const Bond& bond : line.copper.bonds) {
    const bool itself = bond.kind == Bond::Kind::part && bond.object == part.value;
    const Pin* pin = bond.kind == Bond::Kind::joint ? lookup.board().pins.find(PinId(bond.object)) : nullptr;
    if (itself || (pin && pin->part == part)) out.joins.emplace_back(bond.a, bond.b);
  }
  return out;
}

Mending wireBetween(const BoardLine& line, std::size_t a, std::size_t b) {
  Mending out{Mending::Kind::wire, {{a, b}}, {}};
  for (const std::size_t end : {a, b}) {
    const PinId pin = line.copper.spots[end].pin;
    for (const Bond& bond : line.copper.bonds)
      if (pin && bond.kind == Bond::Kind::joint && bond.object == pin.value)
        out.joins.emplace_back(bond.a, bond.b);
  }
  return out;
}

Mending mendingFor(const BoardLine& line, const Lookup& lookup, const Fault& fault) {
  if (fault.family == FaultFamily::shortToGround) return {Mending::Kind::clearShort, {}, {}};
  if (fault.family == FaultFamily::deadPin || fault.family == FaultFamily::otherChip)
    return newPart(line, lookup, line.pins[fault.pin].part);
  if (!fault.crack) return {};
  const Bond& bond = line.copper.bonds[fault.crack->bond];
  if (bond.kind == Bond::Kind::part) return newPart(line, lookup, PartId(bond.object));
  return wireBetween(line, bond.a, bond.b);
}

bool restores(const BoardLine& line, const Fault& fault, const Mending& mending) {
  if (fault.family == FaultFamily::sound || mending.kind == Mending::Kind::nothing)
    return fault.family == FaultFamily::sound && mending.kind == Mending::Kind::nothing;
  if (fault.family == FaultFamily::shortToGround) return mending.kind == Mending::Kind::clearShort;
  if (fault.family == FaultFamily::deadPin || fault.family == FaultFamily::otherChip)
    return mending.kind == Mending::Kind::newPart && mending.part == line.pins[fault.pin].part;
  if (fault.family != FaultFamily::open) return false;
  // Past a part that is to stay in the line a wire mends nothing: a new part does.
  const bool inPart = line.copper.bonds[fault.crack->bond].kind == Bond::Kind::part;
  if (inPart && mending.kind != Mending::Kind::newPart) return false;
  Copper mended = line.copper;
  for (const auto& [a, b] : mending.joins)
    mended.bonds.push_back({Bond::Kind::contact, a, b, 0, 0.0, 0.0});
  const auto label = pieces(mended, {fault.crack->bond});
  return std::all_of(line.pins.begin(), line.pins.end(),
                     [&](const LinePin& pin) { return label[pin.spot] == label[line.pins.front().spot]; });
}

} // namespace netmend::simulation
