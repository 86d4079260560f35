#pragma once

#include <vector>

#include <QPointF>
#include <QRectF>
#include <QSizeF>

#include "suspect_tree.h"

namespace netmend {

/// Below this share a suspicion is not worth a word in the picture.
inline constexpr double leastShownSuspicion = 0.005;

/// Sizes of the letters that the tree will be painted with, in picture units.
struct TreeMetrics {
  double letter = 7.0; ///< width of an average letter
  double line = 16.0;  ///< height of a line of text
};

/// Where one node and the branch that leads to it are.
struct NodePlace {
  QPointF at;
  QRectF label;  ///< right of a leaf, above the branch otherwise; empty: none
  QPointF start; ///< of its branch, on the parent's upright
  QRectF text;   ///< of the branch, below it; empty: none
  QRectF nodeHit;
  QRectF branchHit;
};

struct TreeLayout {
  std::vector<NodePlace> places; ///< parallel to the tree's nodes
  QSizeF size;
};

/// Source at the left, loads at the right, a row for each leaf, parents in the middle of their children; no
/// two labels meet. Branches are as long as their texts want; where that leaves `width` unused they grow with
/// it. O(nodes).
[[nodiscard]] TreeLayout layoutLineTree(const LineTree& tree, const TreeMetrics& metrics, double width);

/// How much room a row of suspects' letters takes on a branch.
[[nodiscard]] double lettersWidth(const QString& letters, const TreeMetrics& metrics);
/// "47 %", "3.1 %", "> 99 %"; empty where it is not worth a word.
[[nodiscard]] QString suspicionText(double suspicion);
/// What is written at a branch.
[[nodiscard]] QString branchText(const TreeBranch& branch);
/// What is written at a node: label, value, and a pin's own suspicion.
[[nodiscard]] QString nodeText(const TreeNode& node);

} // namespace netmend
