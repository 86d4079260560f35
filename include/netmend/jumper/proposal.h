#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "netmend/jumper/landing.h"
#include "netmend/jumper/shortest_way.h"
#include "netmend/jumper/wire.h"

namespace netmend {

/// Copper that a wire runs over: a pin's, or a via.
struct CrossedCopper {
  CopperObject object;
  Point at;
};

/// Everything about jumpers that a user may edit.
struct JumperData {
  ZoneRules zones;
  LandingPrices landings;
  WireTable wires;
};

/// Reads zones.json, landings.json and wires.json in `folder`.
[[nodiscard]] Result<JumperData> loadJumperData(const std::filesystem::path& folder);

struct JumperRequest {
  const CopperGraph* graph = nullptr; ///< of a line or a net
  std::vector<std::size_t> cut;       ///< indices of the edges that are broken
  NetId net;                          ///< the line's first net: rated current and role
  std::vector<PartId> couplingAllowed;
  std::vector<ZoneOverride> overrides;
  std::size_t most = 3;    ///< proposals wanted
  Fact<Amperes> current{}; ///< what the wire has to carry; unknown: see `currentFor`
};

/// Why a way is not straight.
struct Detour {
  bool straight = true;          ///< it is
  Length straightLength;         ///< between its landings
  std::vector<KeepOutName> near; ///< what stands there; none: the rounded corner of a margin
};

/// What sets a proposal apart from those before it.
struct Difference {
  bool best = false;          ///< by its score
  std::optional<Side> side{}; ///< another side of the board
  bool from = false;          ///< another landing there …
  bool to = false;            ///< … and here
  bool wayRound = false;      ///< the same landings, another way
  [[nodiscard]] bool any() const { return best || side || from || to || wayRound; }
};

/// What to mind about a proposal as a whole.
struct ProposalNote {
  enum class Kind {
    guessedBodies,  ///< passes `keepOuts`, whose shapes are only guessed
    outlineGuessed, ///< the board's outline is not known
    zoneSetAside,   ///< the first of `keepOuts`, for `reason`
    overHoles,      ///< no way keeps clear of `keepOuts`
    overBareCopper  ///< of other nets, `copper`
  };
  Kind kind = Kind::outlineGuessed;
  std::vector<KeepOutName> keepOuts{};
  std::vector<CrossedCopper> copper{};
  std::string reason{}; ///< as somebody wrote it
};

/// One way to bridge a break.
struct JumperProposal {
  Landing from;
  Landing to;
  Side side = Side::top;
  std::vector<Point> way; ///< from landing to landing, both included
  Length length;
  Fact<Length>
      leastClearance; ///< between the wire's edge and the nearest keep-out proper; unknown: none near
  KeepOutName clearanceTo;
  std::vector<Point> tackPoints; ///< spots of mask that hold the wire: at bends and by spacing
  WireChoice wire;
  std::vector<ScoreTerm> terms; ///< their prices add up to `total`
  Price total;
  Detour detour;
  Difference difference;
  std::vector<ProposalNote> notes; ///< beside those of its landings
};

/// Why there are no more proposals.
enum class WhyFewer {
  asManyAsWanted,
  nothingDiffersEnough,
  noLanding,      ///< neither side of the break has one
  oneSideWithout, ///< a landing
  notOnOneSide,   ///< of the board: each end has landings, but on different sides
  closed          ///< by what `closedBy` names
};

struct JumperProposals {
  std::vector<JumperProposal> proposals; ///< best first
  WhyFewer whyFewer = WhyFewer::asManyAsWanted;
  std::vector<KeepOutName> closedBy;
  std::vector<ExcludedLanding> excluded;
  bool onlyJoints = false;     ///< the break is in a solder joint: resolder it first
  bool outlineGuessed = false; ///< the board's outline is not known: a box round everything drawn was used
};

/// The fragments that a cut leaves, of which the two to be joined are those with terminals at its ends.
struct BreakEnds {
  Fragments fragments;
  std::size_t a = 0;
  std::size_t b = 0;
  std::optional<Point> at;         ///< middle of the broken stretch
  Fragments copper;                ///< what hangs together without passing a sound part, the break closed
  std::vector<std::size_t> broken; ///< the labels of `copper` that the break is in, ascending

  /// Whether the break is in the copper of this node: a wire to any other would go past a sound part.
  [[nodiscard]] bool onBrokenCopper(NodeIndex node) const {
    return std::binary_search(broken.begin(), broken.end(), copper.ofNode[node]);
  }
};

/// Fails when the cut opens nothing, or leaves more or less than two pieces with terminals at its ends.
[[nodiscard]] Result<BreakEnds> breakEnds(const CopperGraph& graph, const std::vector<std::size_t>& cut);

/// Whether a wire between these landings joins what the break has parted: one lies on copper of one side,
/// the other on copper of the other, each by object and layer, and no sound part is bridged as well.
[[nodiscard]] bool joinsBreak(const CopperGraph& graph, const BreakEnds& ends, const Landing& from,
                              const Landing& to);

/// Best landing pairs and ways over both sides, best first, up to `most` that differ in a landing or in the
/// way round something. No proposal is no error: `whyFewer` then says why.
/// The same input gives the same output.
[[nodiscard]] Result<JumperProposals> proposeJumpers(const Lookup& lookup, const JumperRequest& request,
                                                     const JumperData& data);

} // namespace netmend
