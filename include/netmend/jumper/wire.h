#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "netmend/base/error.h"
#include "netmend/base/geometry.h"
#include "netmend/base/quantity.h"
#include "netmend/board/board.h"

namespace netmend {

/// Diameter of bare wire by American Wire Gauge, -3 (0000) to 56: 0.127 mm * 92^((36 - n) / 39) (ASTM B258).
[[nodiscard]] Length awgDiameter(int gauge);
/// Resistance of a copper wire: resistivity of IEC 60028 (see netgraph/resistance.h) over its section.
[[nodiscard]] Ohms wireResistance(Length diameter, Length length, Celsius temperature = Celsius(20));
/// Current that melts a copper wire in air: 80 A * (d / mm)^1.5 (W. H. Preece, 1884). An upper stop only.
[[nodiscard]] Amperes fusingCurrent(Length diameter);
/// Current that warms a wire in still air at `ambient` by `rise` in the long run, from I²R = h*pi*D*rise with
/// h of a horizontal cylinder (Churchill and Chu, Int. J. Heat Mass Transfer 18, 1975). Radiation and what
/// the board takes away are left out, on the safe side.
[[nodiscard]] Amperes heatingCurrent(Length copper, Length outer, Celsius rise, Celsius ambient);

struct Wire {
  std::string name; ///< "enamelled copper 0.10 mm", "AWG 30"
  Length copper;    ///< diameter
  Length outer;     ///< over the enamel or insulation, at most
  std::string insulation;
  std::string stripping;
  std::string source;
};

struct RoleCurrent {
  NetRole role = NetRole::signal;
  Amperes current;             ///< where nothing is known of the copper
  std::optional<Amperes> most; ///< such a net is taken to carry no more, whatever its copper would
  Volts mostDrop;
  std::string warning; ///< empty: none
  std::string source;
};

/// What a bench has in its drawer, and by which rules one is taken.
struct WireTable {
  std::vector<Wire> wires;        ///< thinnest first
  std::vector<RoleCurrent> roles; ///< defaults where a net says nothing; one for each NetRole
  Celsius mostRise;
  Celsius copperRise; ///< of the board's own copper, when it is asked what it carries
  Length signalUpTo;  ///< a net of unknown role without wider tracks is taken for a signal
  Celsius ambient;
  double fusingShare = 0.5;  ///< the current must stay under this share of the fusing current
  Length thinnestByChoice;   ///< thinner wire is taken only where the landing is too narrow
  double slack = 0.1;        ///< share of the way added to the cut length
  Length endAllowance;       ///< added for each end
  Length endTack;            ///< from each landing to the first spot of mask: strain relief
  Length tackSpacing;        ///< between spots of cured mask that hold the wire
  double landingShare = 1.0; ///< the wire's copper may be this share of the landing's width

  [[nodiscard]] const RoleCurrent& of(NetRole role) const;
};

/// Reads data/wires.json. Fails naming file and JSON pointer.
[[nodiscard]] Result<WireTable> loadWireTable(const std::filesystem::path& path);

struct WireRequest {
  Length length;
  Fact<Amperes> current; ///< unknown: the role's default
  NetRole role = NetRole::signal;
  Fact<Length> landingWidth; ///< of the narrower landing
  std::string currentFrom{}; ///< in words; empty: as the net is rated, or the role's default
};

struct WireChoice {
  Wire wire;
  bool suffices = true;    ///< false: no wire of the table does, this is the thickest; `warnings` say so
  Fact<Amperes> current;   ///< guessed: from the copper, or the role's default
  std::string currentFrom; ///< "1.2 mm track carries 3.7 A (IPC-2221, 20 K): taken as 3.7 A"
  Ohms resistance;         ///< of the real length at 20 °C
  Volts drop;
  Volts mostDrop;
  Amperes heating; ///< what it may carry for the allowed rise
  Amperes fusing;
  Length cutLength;
  std::vector<std::string> reasons; ///< why this one, and why not a thinner one
  std::vector<std::string> warnings;
};

/// The thinnest wire of the table that carries the current within drop, heating and the share of the fusing
/// current. When none does, the thickest with a warning that says by which limit; a wire wider than the
/// landing is taken with a warning. Fails for an empty table and a current that is no number.
[[nodiscard]] Result<WireChoice> chooseWire(const WireTable& table, const WireRequest& request);

} // namespace netmend
