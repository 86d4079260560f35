#include "netmend/jumper/wire.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <numbers>

#include "netmend/netgraph/resistance.h"

namespace netmend {
namespace {

double metres(Length length) {
  return static_cast<double>(length.nm) * 1e-9;
}

/// What a wire would have to bear and what it may.
struct Load {
  Ohms resistance;
  Volts drop;
  Amperes heating;
  Amperes fusing;
  std::optional<WireLimit> refused{}; ///< why it will not do
};

Load loadOf(const WireTable& table, const Wire& wire, Length length, Amperes current, Volts mostDrop) {
  Load load;
  load.resistance = wireResistance(wire.copper, length);
  load.drop = current * load.resistance;
  load.heating = heatingCurrent(wire.copper, wire.outer, table.mostRise, table.ambient);
  load.fusing = fusingCurrent(wire.copper);
  if (current.value > load.fusing.value * table.fusingShare)
    load.refused = WireLimit{WireLimit::Why::fusing, load.fusing, load.drop};
  else if (current > load.heating)
    load.refused = WireLimit{WireLimit::Why::heating, load.heating, load.drop};
  else if (load.drop > mostDrop)
    load.refused = WireLimit{WireLimit::Why::drop, {}, load.drop};
  return load;
}

bool fits(const WireTable& table, const Wire& wire, const Fact<Length>& landing) {
  return !landing.known() || wire.copper.mm() <= table.landingShare * landing.value.mm();
}

/// Why this wire, and what speaks against it.
void explain(WireChoice& choice, const WireTable& table, const WireRequest& request, const Load& load,
             const std::optional<RefusedWire>& thinner) {
  choice.length = request.length;
  choice.landingWidth = request.landingWidth;
  choice.mostRise = table.mostRise;
  choice.fusingShare = table.fusingShare;
  choice.thinnestByChoice = table.thinnestByChoice;
  if (choice.tooThin)
    choice.tooThin = load.refused;
  else
    choice.thinner = thinner;
  choice.thinForLanding = choice.wire.copper < table.thinnestByChoice;
  choice.wideForLanding = !fits(table, choice.wire, request.landingWidth);
  choice.roleWarning = table.of(request.role).warning;
}

} // namespace

Ohms wireResistance(Length diameter, Length length, Celsius temperature) {
  const double d = metres(diameter);
  const double at = 1.0 + copperTemperatureCoefficient * (temperature.value - 20.0);
  return Ohms(copperResistivity * at * metres(length) / (std::numbers::pi * d * d / 4.0));
}

Amperes fusingCurrent(Length diameter) {
  return Amperes(80.0 * std::pow(diameter.mm(), 1.5));
}

Amperes heatingCurrent(Length copper, Length outer, Kelvins rise, Celsius ambient) {
  // Air at about 50 °C and 1 bar (common handbook values, from memory); they change little from 20 to 100 °C.
  constexpr double conductivity = 0.0278, viscosity = 1.82e-5, diffusivity = 2.57e-5, prandtl = 0.71;
  constexpr double gravity = 9.80665;
  const double film = ambient.value + 0.5 * rise.value + 273.15;
  const double d = metres(outer);
  const double rayleigh = gravity * rise.value * d * d * d / (film * viscosity * diffusivity);
  const double prandtlTerm = std::pow(1.0 + std::pow(0.559 / prandtl, 9.0 / 16.0), 8.0 / 27.0);
  const double nusselt = std::pow(0.60 + 0.387 * std::pow(rayleigh, 1.0 / 6.0) / prandtlTerm, 2.0);
  const double watts = nusselt * conductivity * std::numbers::pi * rise.value; // h*pi*D*rise with h = Nu*k/D
  const double ohms =
      wireResistance(copper, Length(1'000'000'000), Celsius(ambient.value + rise.value)).value;
  return Amperes(std::sqrt(watts / ohms));
}

const RoleCurrent& WireTable::of(NetRole role) const {
  const auto found =
      std::find_if(roles.begin(), roles.end(), [&](const RoleCurrent& r) { return r.role == role; });
  static const RoleCurrent none{};
  return found != roles.end() ? *found : none;
}

Result<WireChoice> chooseWire(const WireTable& table, const WireRequest& request) {
  if (table.wires.empty()) return failure({pattern("core", "the wire table is empty")});
  const RoleCurrent& role = table.of(request.role);
  WireChoice choice;
  choice.current = request.current.known() ? request.current : guessed(role.current);
  const auto otherwise = choice.current.certain() ? CurrentBasis::Why::rated : CurrentBasis::Why::roleDefault;
  choice.basis = request.basis.value_or(CurrentBasis{otherwise});
  choice.mostDrop = role.mostDrop;
  const Amperes current = choice.current.value;
  if (!(current.value >= 0) || !std::isfinite(current.value))
    return failure(
        {.message = pattern("core", "the current of the line is no number a wire could be chosen for"),
         .found = asItIs(fmt::format("{} A", current.value))});

  // Handy wire first, from the thinnest up; thinner than handy, from the thickest down, only for narrow
  // landings; and if none fits the landing, the thinnest that bears the current.
  const Wire* taken = nullptr;
  const Wire* tooWide = nullptr;
  std::optional<RefusedWire> refused;
  const auto consider = [&](const Wire& wire) {
    const Load load = loadOf(table, wire, request.length, current, role.mostDrop);
    if (load.refused) {
      refused = RefusedWire{wire, *load.refused};
      return;
    }
    if (fits(table, wire, request.landingWidth))
      taken = &wire;
    else if (!tooWide)
      tooWide = &wire;
  };
  for (const Wire& wire : table.wires)
    if (!taken && wire.copper >= table.thinnestByChoice) consider(wire);
  const auto refusedThinner = refused;
  for (auto wire = table.wires.rbegin(); wire != table.wires.rend() && !taken; ++wire)
    if (wire->copper < table.thinnestByChoice) consider(*wire);
  if (taken == nullptr && tooWide == nullptr) {
    choice.tooThin = WireLimit{};
    const Wire& thickest = table.wires.back();
    (fits(table, thickest, request.landingWidth) ? taken : tooWide) = &thickest;
  }
  choice.wire = taken ? *taken : *tooWide;
  const Load load = loadOf(table, choice.wire, request.length, current, role.mostDrop);
  choice.resistance = load.resistance;
  choice.drop = load.drop;
  choice.heating = load.heating;
  choice.fusing = load.fusing;
  choice.cutLength = Length::fromMm(request.length.mm() * (1.0 + table.slack)) + table.endAllowance * 2;

  explain(choice, table, request, load, refusedThinner);
  return choice;
}

} // namespace netmend
