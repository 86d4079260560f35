#include "simulation/fault.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace netmend::simulation {

namespace {

double weightOf(const BoardLine& line, const Bond& bond, const FaultShares& shares) {
  switch (bond.kind) {
  case Bond::Kind::contact:
    return 0.0;
  case Bond::Kind::joint: {
    const auto pin = std::find_if(line.pins.begin(), line.pins.end(),
                                  [&](const LinePin& p) { return p.pin.value == bond.object; });
    return pin != line.pins.end() && pin->kind == PartKind::connector ? shares.connectorJoint
                                                                      : shares.solderJoint;
  }
  case Bond::Kind::track:
    return shares.trackPerMm * std::max(bond.mm, 0.01);
  case Bond::Kind::barrel: {
    const auto barrels =
        std::count_if(line.copper.bonds.begin(), line.copper.bonds.end(), [&](const Bond& other) {
          return other.kind == Bond::Kind::barrel && other.object == bond.object;
        });
    return shares.via / static_cast<double>(barrels);
  }
  case Bond::Kind::part:
    return shares.part;
  }
  return 0.0;
}

/// A pin with a junction behind it, chosen evenly; nothing when there is none.
std::optional<std::size_t> junctionPin(const Design& design, Random& random) {
  std::vector<std::size_t> pins;
  for (std::size_t i = 0; i < design.behind.size(); ++i)
    if (design.behind[i].kind == Behind::Kind::junction) pins.push_back(i);
  if (pins.empty()) return std::nullopt;
  return pins[std::uniform_int_distribution<std::size_t>(0, pins.size() - 1)(random)];
}

Fault outsideFault(const BoardLine& line, const Design& design, Random& random) {
  Fault fault;
  const auto pin = junctionPin(design, random);
  const int which = std::uniform_int_distribution<int>(0, 4)(random);
  fault.pin = pin.value_or(0);
  fault.spot = std::uniform_int_distribution<std::size_t>(0, line.copper.spots.size() - 1)(random);
  fault.ohms = std::pow(10.0, between(random, 2.5, 4.0));
  fault.volts = between(random, 0.08, 0.3) * (chance(random, 0.5) ? 1.0 : -1.0);
  fault.family = static_cast<FaultFamily>(static_cast<int>(FaultFamily::foreignCell) + which);
  return fault;
}

void addBehind(Circuit& circuit, std::size_t node, std::size_t ground, const Behind& behind, double celsius) {
  if (behind.kind == Behind::Kind::junction)
    circuit.diodes.push_back({node, ground, lawAt(behind.junction, celsius)});
  if (behind.kind == Behind::Kind::resistance) circuit.resistors.push_back({node, ground, behind.ohms});
}

void addPins(LineCircuit& out, const BoardLine& line, const Design& specimen, const Fault& fault,
             double celsius) {
  // The lost ground of a chip is another junction's anode.
  const PartId chip = fault.family == FaultFamily::otherChip || fault.family == FaultFamily::lostGround
                          ? line.pins[fault.pin].part
                          : PartId{};
  std::size_t floating = 0;
  if (fault.family == FaultFamily::lostGround) {
    floating = out.circuit.nodes++;
    addBehind(out.circuit, floating, 0, {Behind::Kind::junction, {0.55, 1.2, 10.0}, 0.0}, celsius);
  }
  for (std::size_t i = 0; i < line.pins.size(); ++i) {
    if (fault.family == FaultFamily::deadPin && fault.pin == i) continue;
    Behind behind = specimen.behind[i];
    const bool onChip = chip && line.pins[i].part == chip;
    if (onChip && fault.family == FaultFamily::otherChip)
      behind.junction.drop = std::clamp(behind.junction.drop + fault.volts, 0.2, 0.9);
    addBehind(out.circuit, out.nodeOf[line.pins[i].spot], onChip ? floating : 0, behind, celsius);
  }
}

void addExits(LineCircuit& out, const BoardLine& line, const Design& specimen, double celsius) {
  std::map<NetId, std::size_t> nodes;
  for (std::size_t i = 0; i < line.exits.size(); ++i) {
    const LineExit& exit = line.exits[i];
    std::size_t other = 0;
    if (exit.to != LineExit::To::ground) {
      const auto [found, fresh] = nodes.emplace(exit.net, out.circuit.nodes);
      other = found->second;
      if (fresh) ++out.circuit.nodes;
      if (fresh && exit.to == LineExit::To::supply)
        out.circuit.resistors.push_back({other, 0, specimen.rail.at(exit.net)});
      if (fresh && exit.to == LineExit::To::signal)
        addBehind(out.circuit, other, 0, specimen.far.at(exit.net), celsius);
    }
    out.circuit.resistors.push_back({out.nodeOf[exit.spot], other, specimen.exitOhms[i]});
  }
}

void addTrouble(LineCircuit& out, const Fault& fault, double celsius, std::size_t reading) {
  const std::size_t node = out.nodeOf[fault.spot];
  if (fault.family == FaultFamily::shortToGround) out.circuit.resistors.push_back({node, 0, fault.ohms});
  if (fault.family == FaultFamily::foreignCell)
    out.circuit.cells.push_back({node, 0, fault.volts, fault.ohms});
  if (fault.family == FaultFamily::charge)
    out.circuit.cells.push_back(
        {node, 0, 2.0 * std::abs(fault.volts) * std::exp(-0.3 * static_cast<double>(reading)), 300.0});
  if (fault.family != FaultFamily::doubleJunction) return;
  const std::size_t middle = out.circuit.nodes++;
  const JunctionLaw law = lawAt({0.15 + std::abs(fault.volts) / 2, 1.05, 5.0, 0.69}, celsius);
  out.circuit.diodes.push_back({node, middle, law});
  out.circuit.diodes.push_back({middle, 0, law});
}

} // namespace

std::string wordFor(FaultFamily family) {
  static const char* const words[faultFamilies] = {"sound",           "open",         "dead pin",
                                                   "short to ground", "foreign cell", "other chip",
                                                   "lost ground",     "charge",       "two junctions"};
  return words[static_cast<std::size_t>(family)];
}

bool outside(FaultFamily family) {
  return family >= FaultFamily::foreignCell;
}

std::vector<WeighedFault> allFaults(const BoardLine& line, const Design& design, const FaultShares& shares) {
  std::vector<WeighedFault> out;
  for (const std::size_t bond : line.parting) {
    const Bond& broken = line.copper.bonds[bond];
    Fault fault;
    fault.family = FaultFamily::open;
    const double middle = 0.5 * (line.copper.spots[broken.a].along + line.copper.spots[broken.b].along);
    fault.crack = Crack{bond, middle};
    out.push_back({fault, weightOf(line, broken, shares)});
  }
  for (std::size_t pin = 0; pin < line.pins.size(); ++pin) {
    if (design.behind[pin].kind != Behind::Kind::junction) continue;
    Fault fault;
    fault.family = FaultFamily::deadPin;
    fault.pin = pin;
    out.push_back({fault, shares.deadPin});
  }
  std::vector<std::size_t> pads;
  for (std::size_t spot = 0; spot < line.copper.spots.size(); ++spot)
    if (line.copper.spots[spot].kind == Spot::Kind::pad) pads.push_back(spot);
  for (const std::size_t spot : pads) {
    Fault fault;
    fault.family = FaultFamily::shortToGround;
    fault.spot = spot;
    fault.ohms = 1.0;
    out.push_back({fault, shares.shortToGround / static_cast<double>(pads.size())});
  }
  return out;
}

std::string kindOf(const BoardLine& line, const Fault& fault) {
  if (!fault.crack) return wordFor(fault.family);
  static const char* const kinds[] = {"open contact", "open joint", "open track", "open via", "open part"};
  return kinds[static_cast<std::size_t>(line.copper.bonds[fault.crack->bond].kind)];
}

Fault drawFault(const BoardLine& line, const Design& design, const FaultShares& shares, Random& random,
                Seeding seeding) {
  const double which = between(random, 0.0, 1.0);
  Fault strange = outsideFault(line, design, random);
  auto all = allFaults(line, design, shares);
  if (seeding == Seeding::evenly) {
    std::map<std::string, double> ofKind{{wordFor(FaultFamily::sound), 1.0}};
    all.push_back({{}, 1.0});
    for (const auto& one : all)
      ofKind[kindOf(line, one.fault)] += one.weight;
    ofKind[wordFor(FaultFamily::sound)] = 1.0;
    for (auto& one : all)
      one.weight /= std::max(1e-12, ofKind[kindOf(line, one.fault)]);
  }
  std::vector<double> weights;
  for (const auto& one : all)
    weights.push_back(one.weight);
  Fault fault = all[std::discrete_distribution<std::size_t>(weights.begin(), weights.end())(random)].fault;
  const double where = between(random, 0.05, 0.95);
  fault.ohms *= std::pow(10.0, normal(random, shortDecades));
  if (fault.crack) {
    const Bond& bond = line.copper.bonds[fault.crack->bond];
    const double from = line.copper.spots[bond.a].along, to = line.copper.spots[bond.b].along;
    fault.crack->along = from + where * (to - from);
  }
  if (seeding == Seeding::evenly) return fault;
  if (seeding == Seeding::outside || which < outsideShare) return strange;
  if (which < outsideShare + (1.0 - outsideShare) * shares.sound) return {};
  return fault;
}

std::string wordsFor(const Board& board, const Spot& spot) {
  static const char* const kinds[] = {"leg ", "pad of ", "track ", "via ", "area "};
  const auto kind = kinds[static_cast<std::size_t>(spot.kind)];
  if (spot.pin) return kind + pinLabel(board, spot.pin);
  return fmt::format("{}{} at {:.2f},{:.2f} layer {}", kind, spot.object, spot.at.x.mm(), spot.at.y.mm(),
                     spot.layer);
}

std::string wordsFor(const Board& board, const BoardLine& line, const Fault& fault) {
  std::string out = wordFor(fault.family);
  if (fault.crack) {
    static const char* const kinds[] = {"contact", "joint", "track", "via", "part"};
    const Bond& bond = line.copper.bonds[fault.crack->bond];
    out +=
        fmt::format(": {} between {} and {}", kinds[static_cast<std::size_t>(bond.kind)],
                    wordsFor(board, line.copper.spots[bond.a]), wordsFor(board, line.copper.spots[bond.b]));
    if (bond.kind == Bond::Kind::track) out += fmt::format(", at {:.2f} mm", fault.crack->along);
  } else if (fault.family == FaultFamily::deadPin || fault.family == FaultFamily::otherChip ||
             fault.family == FaultFamily::lostGround) {
    out += ": " + pinLabel(board, line.pins[fault.pin].pin);
  } else if (fault.family != FaultFamily::sound) {
    out += fmt::format(": {}, {:.3g} ohm, {:.3f} V", wordsFor(board, line.copper.spots[fault.spot]),
                       fault.ohms, fault.volts);
  }
  return out;
}

LineCircuit circuitOf(const BoardLine& line, const Design& specimen, const Fault& fault, double celsius,
                      std::size_t reading) {
  LineCircuit out;
  std::vector<std::size_t> without;
  for (std::size_t i = 0; i < line.copper.bonds.size(); ++i)
    if (line.copper.bonds[i].kind == Bond::Kind::part || (fault.crack && fault.crack->bond == i))
      without.push_back(i);
  const auto label = pieces(line.copper, without);
  std::vector<std::size_t> node(label.size(), 0);
  for (std::size_t spot = 0; spot < label.size(); ++spot) {
    if (label[spot] == spot) node[spot] = out.circuit.nodes++;
    out.nodeOf.push_back(node[label[spot]]); // the lowest spot of a piece comes first
  }
  for (const std::size_t i : without) {
    const Bond& bond = line.copper.bonds[i];
    if (fault.crack && fault.crack->bond == i) continue;
    out.circuit.resistors.push_back({out.nodeOf[bond.a], out.nodeOf[bond.b], bond.ohms});
  }
  addPins(out, line, specimen, fault, celsius);
  addExits(out, line, specimen, celsius);
  addTrouble(out, fault, celsius, reading);
  return out;
}

} // namespace netmend::simulation
