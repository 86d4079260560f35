#pragma once

#include <optional>
#include <set>
#include <vector>

#include <QString>

#include "netmend/casework/fault_case.h"
#include "netmend/drawing/overlay.h"

/// A line as a tree from its source to its loads, with what the readings leave of the suspects on it. Plain
/// values: line_tree.h paints them.
namespace netmend {

/// One thing on a branch that can break by itself, or a part that the line goes through.
struct TreePiece {
  std::size_t edge = 0; ///< `CopperEdge::index` in the line's graph
  EdgeKind kind = EdgeKind::track;
  double suspicion = 0.0; ///< sum over the classes of probability × the place's share
};

/// The way from a node's parent to the node. Plain joints between its pieces are not shown.
struct TreeBranch {
  std::vector<TreePiece> pieces; ///< from the source outwards; none where more than one way leads there
  double suspicion = 0.0;        ///< of all pieces together
  QString text;                  ///< "joint + 12.3 mm + 2 vias"
  QString part;                  ///< reference of the part that it goes through
  bool unknownWay = false;       ///< nobody has seen how it runs
  QString letters{};             ///< of the suspects that are on it
};

enum class TreeNodeKind {
  pin,
  copper,     ///< a place that was read, or is to be probed, and is no pin
  fork,       ///< where the line parts
  unknownWay, ///< these belong together, nobody has seen how
  folded      ///< several pins, not shown one by one
};

struct TreeNode {
  std::size_t key =
      0; ///< the same for the same copper whatever is folded, for as long as the line is the same
  TreeNodeKind kind = TreeNodeKind::fork;
  QString label;                 ///< "U3.12", "pad of J4.9", "12 more pins"
  QString value;                 ///< of its last reading
  std::optional<MarkShape> mark; ///< verdict of its last reading
  PinId pin;
  std::optional<Point> at;
  double suspicion = 0.0; ///< of the pin itself, or of everything inside where it is folded
  QString letters{};      ///< of the suspects that it is itself
  bool probe = false;     ///< one lead of the next probe
  std::size_t parent = 0; ///< index; the source's is its own
  std::vector<std::size_t> children;
  TreeBranch branch;         ///< what leads here; empty for the source
  std::vector<PinId> inside; ///< folded only
};

struct LineTree {
  std::vector<TreeNode> nodes; ///< parents before their children; the first is the source
  bool again = false;          ///< the next probe was read before
  double elsewhere = 0.0;      ///< suspicion of what has no place on the tree: sound, short, none of these

  [[nodiscard]] const TreeNode* find(std::size_t key) const;
};

/// The last reading of a place, as it is shown.
struct PlaceReading {
  PinId pin;
  std::string label; ///< of `ProbePlace`, where it is no pin
  MarkShape shape = MarkShape::hollow;
  QString value;
};

struct TreeWishes {
  PinId source;                       ///< not on the line: the best terminal, a connector's before others
  std::vector<PlaceReading> readings; ///< of one place the last counts
  std::optional<std::size_t> probe;   ///< places of the next probe, indices into `Isolation::places`
  std::optional<std::size_t> probeOther;
  bool again = false;               ///< was read before
  std::vector<std::string> letters; ///< parallel to `Suspects::ranked`; empty: it has none
  std::set<std::size_t> unfolded;   ///< keys of folded nodes whose pins are wanted
  std::size_t foldAbove = 24;       ///< lines of no more pins than that are shown whole
};

/// Copper that more than one way leads to hangs together whatever single thing breaks: it is one node, so
/// that the rest is a tree whose branches are the graph's bridges (Tarjan). Copper that leads to no pin is
/// left out. On large lines neighbouring subtrees without suspicion, reading and probe are folded into one
/// node. Time O(nodes + edges + places). An empty line gives an empty tree.
[[nodiscard]] LineTree lineTree(const Board& board, const FaultCase& fault, const TreeWishes& wishes = {});

} // namespace netmend
