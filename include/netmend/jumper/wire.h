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

/// Resistance of a copper wire: resistivity of IEC 60028 (see netgraph/resistance.h) over its section.
[[nodiscard]] Ohms wireResistance(Length diameter, Length length, Celsius temperature = Celsius(20));
/// Current that melts a copper wire in air: 80 A * (d / mm)^1.5 (W. H. Preece, 1884). An upper stop only.
[[nodiscard]] Amperes fusingCurrent(Length diameter);
/// Current that warms a wire in still air at `ambient` by `rise` in the long run, from I²R = h*pi*D*rise with
/// h of a horizontal cylinder (Churchill and Chu, Int. J. Heat Mass Transfer 18, 1975). Radiation and what
/// the board takes away are left out, on the safe side.
[[nodiscard]] Amperes heatingCurrent(Length copper, Length outer, Kelvins rise, Celsius ambient);

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
  Kelvins mostRise;
  Kelvins copperRise; ///< of the board's own copper, when it is asked what it carries
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

/// The copper that limits what can flow through a break.
struct CopperLimit {
  enum class Piece { track, innerTrack, via, platedHole, pad, together };
  Amperes current;
  Piece piece = Piece::track;
  Length size{};     ///< width of a track or pad, diameter of a hole
  std::string pin{}; ///< of a plated hole or pad: its label
};

/// Where the current that a wire has to carry is taken from.
struct CurrentBasis {
  enum class Why {
    asked,
    rated,          ///< as the net is
    copper,         ///< what its copper carries
    cappedByRole,   ///< … which is more than a net of this role is taken to carry
    cappedAsSignal, ///< … the same, of a net of unknown role whose copper is narrow
    roleDefault     ///< nothing is known of its copper
  };
  Why why = Why::roleDefault;
  std::optional<CopperLimit> limit{}; ///< where copper was looked at
  Kelvins rise{};                     ///< that it may take
};

struct WireRequest {
  Length length;
  Fact<Amperes> current; ///< unknown: the role's default
  NetRole role = NetRole::signal;
  Fact<Length> landingWidth;           ///< of the narrower landing
  std::optional<CurrentBasis> basis{}; ///< none: as the net is rated, or the role's default
};

/// A limit that a wire would go beyond.
struct WireLimit {
  enum class Why { fusing, heating, drop };
  Why why = Why::fusing;
  Amperes most{}; ///< fusing current, or what warms it by the allowed rise
  Volts drop{};
};
struct RefusedWire {
  Wire wire;
  WireLimit limit;
};

struct WireChoice {
  Wire wire;
  Fact<Amperes> current; ///< guessed: from the copper, or the role's default
  CurrentBasis basis;
  Length length;
  std::optional<WireLimit>
      tooThin; ///< no wire of the table suffices: this is the thickest, and fails by this
  std::optional<RefusedWire> thinner; ///< the next thinner one, and why it will not do
  Fact<Length> landingWidth;
  bool thinForLanding = false; ///< thinner than one would choose, because a landing is narrow
  bool wideForLanding = false; ///< wider than the narrower landing bears
  Length thinnestByChoice;     ///< of the table
  double fusingShare = 0.5;    ///< of the table
  Kelvins mostRise;            ///< of the table
  std::string roleWarning;     ///< of the table; empty: none
  Ohms resistance;             ///< of the real length at 20 °C
  Volts drop;
  Volts mostDrop;
  Amperes heating; ///< what it may carry for the allowed rise
  Amperes fusing;
  Length cutLength;

  [[nodiscard]] bool suffices() const { return !tooThin; }
  [[nodiscard]] bool warned() const { return tooThin || wideForLanding || !roleWarning.empty(); }
};

/// The thinnest wire of the table that carries the current within drop, heating and the share of the fusing
/// current. When none does, the thickest, which says by which limit it fails; a wire wider than the landing
/// is taken where no other is left. Fails for an empty table and a current that is no number.
[[nodiscard]] Result<WireChoice> chooseWire(const WireTable& table, const WireRequest& request);

} // namespace netmend
