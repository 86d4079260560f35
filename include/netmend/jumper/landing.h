#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "netmend/board/lookup.h"
#include "netmend/jumper/free_area.h"
#include "netmend/jumper/price.h"
#include "netmend/netgraph/copper_graph.h"

namespace netmend {

enum class LandingKind { testPad, partTerminal, via, tentedVia, outerTrack, connectorPin };

/// Name of the score term of a terminal so small that it lifts easily.
inline constexpr std::string_view smallPartTerm = "small part";

/// A place where a wire can be soldered to one fragment, from one side.
struct Landing {
  LandingKind kind = LandingKind::partTerminal;
  std::string label;   ///< "C12.1 (part terminal)", "via at (12.10, 8.00) mm"
  std::string point{}; ///< what a reading taken here carries: "C12.1", "via at (12.10, 8.00) mm"
  Point at;
  Side side = Side::top;
  CopperObject object;          ///< PinId, ViaId or TrackId
  CopperObject copper;          ///< what the solder is on: PadId, PinId for a bare leg, ViaId or TrackId
  int layer = -1;               ///< dense, of `copper`
  std::size_t edge = 0;         ///< of the track: which piece of it
  PartId part;                  ///< whose terminal it is; none otherwise
  Fact<Length> width;           ///< of the copper there: what a wire has to fit on
  Opening opening;              ///< how the wire gets away from it
  std::vector<ScoreTerm> terms; ///< what makes up its price
  std::vector<std::string> notes;

  [[nodiscard]] Price price() const;
  [[nodiscard]] bool scraped() const {
    return kind == LandingKind::outerTrack || kind == LandingKind::tentedVia;
  }
};

struct ExcludedLanding {
  std::string label;
  std::string reason;
};

struct LandingRule {
  LandingKind kind = LandingKind::partTerminal;
  Price price;
  std::string source;
};

struct LandingPrices {
  std::vector<LandingRule> kinds; ///< one for each LandingKind
  Price underMask;                ///< mask has to be scraped off first
  Price smallPart;                ///< terminal narrower than `smallWidth`: lifts, needs strain relief
  Length smallWidth;
  Price unknownFarSide; ///< a capacitor whose other side is not known: may be a coupling capacitor
  Price opened;         ///< inside a margin, opened locally
  Price perBend;
  Price tight; ///< a way that has less than `tightBelow` to spare beside a keep-out's margin
  Length tightBelow;

  [[nodiscard]] Price of(LandingKind kind) const;
};

/// Reads data/landings.json. Fails naming file and JSON pointer.
[[nodiscard]] Result<LandingPrices> loadLandingPrices(const std::filesystem::path& path);

struct LandingOptions {
  std::vector<PartId> couplingAllowed; ///< coupling capacitors that the user says are right
  std::optional<Point> near;           ///< the break: tracks are scraped where they are nearest to it
  std::vector<std::size_t> cut{};      ///< broken edges: no landing themselves
  std::vector<bool> on{};              ///< by node: whether it may carry a landing; empty: all may
};

struct LandingList {
  std::vector<Landing> landings; ///< cheapest first, then by label
  std::vector<ExcludedLanding> excluded;
};

/// Landings on the nodes that carry `fragment`, on the free area's side: a via's ring and a pad's face belong
/// to the fragment that their own layer is of. Left out, with the reason: under a
/// lid or part, inside a keep-out, under it with no way out, coupling capacitors, parts not fitted.
[[nodiscard]] LandingList landingsOf(const Lookup& lookup, const CopperGraph& graph,
                                     const Fragments& fragments, std::size_t fragment, const FreeArea& area,
                                     const LandingPrices& prices, const LandingOptions& options = {});

/// The fragments that the landing's copper is of, ascending, by object and layer.
[[nodiscard]] std::vector<std::size_t> fragmentsAt(const CopperGraph& graph, const Fragments& fragments,
                                                   const Landing& landing);

[[nodiscard]] std::string_view nameOf(LandingKind kind);

} // namespace netmend
