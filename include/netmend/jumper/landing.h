#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "netmend/board/lookup.h"
#include "netmend/jumper/free_area.h"
#include "netmend/jumper/landing_kind.h"
#include "netmend/jumper/price.h"
#include "netmend/netgraph/copper_graph.h"
#include "netmend/probing/reading.h"

namespace netmend {

/// What one term of a score counts.
enum class TermKind {
  length,         ///< of the wire
  bends,          ///< `count` of them
  landing,        ///< of its kind
  underMask,      ///< mask has to be scraped off first
  smallPart,      ///< a terminal `length` wide: lifts easily
  farSideUnknown, ///< may be a coupling capacitor
  marginOpened,   ///< of `keepOuts`
  tightPassage,   ///< `length` to spare beyond the margins
  softZone        ///< `length` inside the first of `keepOuts`, for its `reason`
};

/// One line of a score: what was counted, and what it adds.
struct ScoreTerm {
  TermKind kind = TermKind::length;
  Price price;
  Length length{};
  std::size_t count = 0;
  LandingKind landing = LandingKind::partTerminal;
  std::string point{}; ///< of a landing: its handle
  std::vector<KeepOutName> keepOuts{};
  std::string reason{}; ///< of a zone's rule
  friend bool operator==(const ScoreTerm&, const ScoreTerm&) = default;
};

/// What to mind at a landing.
enum class LandingNote {
  viaMaskUnknown, ///< whether mask covers this via is not known
  scrapeTrack,
  smallPart, ///< fix the wire close to the joint before anything pulls on it
  farSideUnknown,
  bypass,          ///< take the capacitor's live side
  couplingAllowed, ///< taken as right; only this end
  legOnly,         ///< the joint between leg and pad is part of the break
  marginOpened     ///< of its opening's keep-outs
};

/// A place where a wire can be soldered to one fragment, from one side.
struct Landing {
  LandingKind kind = LandingKind::partTerminal;
  std::string point; ///< its handle, which a reading taken here carries: "C12.1", "via 17 top"
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
  std::vector<LandingNote> notes;

  [[nodiscard]] Price price() const;
  [[nodiscard]] bool has(LandingNote note) const;
  [[nodiscard]] bool scraped() const {
    return kind == LandingKind::outerTrack || kind == LandingKind::tentedVia;
  }
};

/// A place that could have been a landing, and why it is none.
struct ExcludedLanding {
  enum class Why {
    couplingCapacitor,
    placeUnknown,
    underLid,
    underPart,
    coveredByLid,  ///< of `cover`
    coveredByPart, ///< `cover`
    keptOut,       ///< inside `keepOuts`, or walled in by them; none of them: off the board
  };
  std::string point; ///< as of a landing
  CopperObject object;
  Point at;
  int layer = -1;
  Why why = Why::keptOut;
  std::string cover{}; ///< reference of the part that lies over it
  std::vector<KeepOutName> keepOuts{};
  friend bool operator==(const ExcludedLanding&, const ExcludedLanding&) = default;
};

/// What a reading taken at a landing is taken at.
[[nodiscard]] ProbePoint probePointOf(const Landing& landing);

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
  std::vector<Landing> landings; ///< cheapest first, then by handle
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

} // namespace netmend
