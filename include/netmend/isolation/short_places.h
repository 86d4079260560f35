#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "netmend/isolation/isolation.h"
#include "netmend/isolation/short_priors.h"
#include "netmend/netgraph/board_graph.h"

/// Where is a line shorted to ground? From milliohms to ground, or the drop under an injected current, read
/// at several of its points, and from what was seen. Formulas: docs/methods/isolation_shorts.md.
namespace netmend {

enum class ShortKind {
  part,       ///< inside a part
  bridge,     ///< from a pin to its neighbour on ground
  nearGround, ///< where copper of the line lies beside copper of ground
  noneOfThese
};

/// A place of the line's copper that may be shorted.
struct ShortPlace {
  ShortKind kind = ShortKind::part;
  PartId part;         ///< `part` only
  PinId pin;           ///< on the line: of the part or bridge
  PinId neighbour;     ///< on ground, `bridge` only
  CopperObject object; ///< the line's copper, `nearGround` only
  std::optional<Point> at;
  int layer = -1;            ///< dense; -1: does not apply, or unknown
  std::optional<Length> gap; ///< to ground
  double prior = 0.0;
  double probability = 0.0;
};

/// Places that are mended alike: of one part, one pair of pins, one piece of copper.
struct ShortSuspect {
  ShortKind kind = ShortKind::part;
  std::vector<std::size_t> places; ///< likeliest first; of `noneOfThese` one without a place
  double prior = 0.0;
  double probability = 0.0;
};

/// What was seen of the short, and where.
struct ShortSign {
  enum class Kind { warm, damaged };
  Kind kind = Kind::warm;
  PartId part; ///< or
  std::optional<Point> at;
  friend bool operator==(const ShortSign&, const ShortSign&) = default;
};

/// Why a reading was not used.
enum class ShortAsideWhy {
  mode,      ///< neither milliohms nor drop under current
  overLimit, ///< OL
  negative,
  rising,         ///< not settled yet
  notOnLine,      ///< its point
  notToGround,    ///< its other lead
  currentUnknown, ///< of a drop: how much, or where it goes in
  tooMuch         ///< more than a short has
};
struct ShortAside {
  Reading reading;
  ShortAsideWhy why = ShortAsideWhy::mode;
};

struct ShortObservation {
  Reading reading;
  std::size_t point = 0; ///< index into `points`
};

/// Everything a search starts from. It keeps no reference to any of it.
struct ShortInput {
  const Lookup& lookup;
  const BoardGraph& graph;
  const Line& line;
  ShortPriors priors;
  ProbeEfforts efforts;
  MeterProfile meter;
  PinId injectedAt{}; ///< where the current of drops goes in; the other lead is on ground
};

struct ShortModel; ///< the line as the search sees it; does not change

struct ShortSearch {
  std::vector<ShortPlace> places;
  std::vector<ShortSuspect> suspects; ///< likeliest first
  std::vector<ProbePlace> points;     ///< where a reading can be taken, reachable or not
  std::vector<ShortObservation> observations;
  std::vector<ShortAside> setAside;
  std::vector<ShortSign> signs;
  Ohms resistance; ///< of the short itself, of the likeliest suspect
  std::shared_ptr<const ShortModel> model;

  /// Milliohms say that the line is short.
  [[nodiscard]] bool saysShort() const;
};

/// Weighs all readings. Of none, the suspects stand by their priors and signs. Cost: one factorisation of the
/// line's copper and a solution for each place and point; then for each place and reading a fit of few
/// unknowns.
[[nodiscard]] ShortSearch findShort(const ShortInput& input, const std::vector<Reading>& readings,
                                    const std::vector<ShortSign>& signs = {});

/// The point whose temperature was read, where it stands out: the warmest reading, at least `leastRise` above
/// the coolest, or above the board's own temperature where that was noted.
[[nodiscard]] std::optional<ShortSign> warmestOf(const Lookup& lookup, const std::vector<Reading>& readings,
                                                 const ShortPriors& priors);

struct ShortProbe {
  std::size_t point = 0;
  ReadingMode mode = ReadingMode::milliohms; ///< or drop under current, where the meter has no milliohms
  Seconds effort;
  double bits = 0.0;      ///< expected fall of entropy over suspects
  double bestGuess = 0.0; ///< expected probability of the best suspect afterwards
};
struct NextShortProbe {
  bool stop = false; ///< no point is worth its time
  double openBits = 0.0;
  std::vector<ShortProbe> ranked; ///< best first, by bits per second
};
/// Over all reachable points that were not read. `unreachable`: labels of points that turned out not to be.
[[nodiscard]] NextShortProbe nextShortProbe(const ShortSearch& search,
                                            const std::vector<std::string>& unreachable = {});

/// Volts against the short along a piece of copper.
struct DropPiece {
  std::vector<Point> way; ///< two points; of a mesh's node one
  int layer = -1;
  Volts from;
  Volts to;
};
/// What would be read of the line's copper with `current` going in at a point and out at a place, resistances
/// at their medians. Empty for a place that is none of these.
struct DropPattern {
  std::vector<DropPiece> pieces;
  Volts most; ///< where the current goes in
  std::optional<Point> into;
  std::optional<Point> out; ///< the short
};
[[nodiscard]] DropPattern dropPattern(const ShortSearch& search, std::size_t place, std::size_t intoPoint,
                                      Amperes current);

} // namespace netmend
