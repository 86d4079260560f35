#pragma once

#include <optional>
#include <string>
#include <vector>

#include "netmend/board/lookup.h"
#include "netmend/netgraph/board_graph.h"

namespace netmend {

struct LineOptions {
  bool throughSupplies = false; ///< a line goes on through supply nets only on request; through ground never
  Ohms mostSeriesResistance{1000.0}; ///< parts above this end a line
};

/// Why a line does not go on at a pin although a part joins it to another.
enum class LineEndReason {
  ground,            ///< the other side is ground
  supply,            ///< the other side is a supply, or the net asked for is one
  resistanceTooHigh, ///< above `mostSeriesResistance`
  resistanceUnknown, ///< a resistor of unknown value: entering it may carry the line on
  notFitted          ///< the part is not on the board
};

/// A place where the line could have gone on: `pin` is on the line, `part` is what it meets there.
struct LineEnd {
  PinId pin;
  PartId part;
  LineEndReason reason;
  friend bool operator==(const LineEnd&, const LineEnd&) = default;
};

/// A net and what it continues into through parts. `EdgeKind::part` edges join terminals; they carry the
/// PartId and the part's resistance, unknown where nobody gave it (the value of an inductor or a ferrite is
/// none).
struct Line {
  std::vector<NetId> nets; ///< the first is the one asked for; empty when the line has no net
  CopperGraph graph;
  std::vector<LineEnd> ends; ///< where it stops at a part, in the order they were met
  [[nodiscard]] std::vector<NodeIndex> terminals() const;
};

/// The line of a net, by breadth-first search over nets. Ground is a line of its own and never entered from
/// another net, so it is copied only when asked for. A supply asked for goes on only with `throughSupplies`.
/// An unknown id gives an empty line.
[[nodiscard]] Line lineOf(const Lookup& lookup, const BoardGraph& graph, NetId net,
                          const LineOptions& options = {});
[[nodiscard]] Line lineOf(const Board& board, const BoardGraph& graph, NetId net,
                          const LineOptions& options = {});

/// The line of a pin. Without a net it is the copper found at the pin; without copper, the bare terminal.
[[nodiscard]] Line lineOf(const Lookup& lookup, const BoardGraph& graph, PinId pin,
                          const LineOptions& options = {});

} // namespace netmend
