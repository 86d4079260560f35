#include "tree_layout.h"

#include <algorithm>
#include <vector>

#include <QCoreApplication>

namespace netmend {

namespace {

constexpr double tallRow = 2.7; ///< lines: one above the branch, one below
constexpr double lowRow = 1.7;
constexpr double mostStretch = 3.0;
constexpr double leastBranch = 3.5; ///< letters
constexpr double mostText = 9.0;    ///< letters of a branch's text that make it longer
constexpr double smallShare = 0.8;  ///< of a letter's width, in that text
constexpr double worthShare = 0.05; ///< a pin's suspicion is said from here on

class TreePlacer {
public:
  TreePlacer(const LineTree& tree, const TreeMetrics& metrics) : tree_(tree), metrics_(metrics) {
    layout_.places.resize(tree.nodes.size());
    for (std::size_t i = 0; i < tree.nodes.size(); ++i)
      lengths_.push_back(lengthOf(i));
  }

  TreeLayout place(double width) {
    if (tree_.nodes.empty()) return std::move(layout_);
    placeRows();
    placeColumns(1.0);
    // What stretches is branches; labels at the right end keep their length.
    const double branches = deepest_ - layout_.places[0].at.x();
    const double spare = width - layout_.size.width();
    if (branches > 0 && spare > 0) placeColumns(std::min(mostStretch, 1.0 + spare / branches));
    placeBoxes();
    return std::move(layout_);
  }

private:
  [[nodiscard]] double margin() const { return 1.5 * metrics_.letter; }
  [[nodiscard]] double widthOf(const QString& text) const {
    return static_cast<double>(text.size()) * metrics_.letter;
  }
  /// Small letters; of a long text as much as is worth a longer branch.
  [[nodiscard]] double textWidth(const TreeBranch& branch) const {
    return std::min(smallShare * widthOf(branchText(branch)), mostText * metrics_.letter);
  }
  [[nodiscard]] bool leaf(std::size_t i) const { return tree_.nodes[i].children.empty(); }

  [[nodiscard]] double lengthOf(std::size_t i) const {
    if (i == 0) return 0.0;
    const TreeNode& node = tree_.nodes[i];
    double letters = leastBranch * metrics_.letter;
    letters = std::max(letters, textWidth(node.branch) + 2 * metrics_.letter);
    letters = std::max(letters, lettersWidth(node.branch.letters, metrics_) + 3 * metrics_.letter);
    // Label and text stand right and left of the part's box.
    if (!node.branch.part.isEmpty()) {
      const double beside = leaf(i) ? 0.0 : widthOf(nodeText(node));
      const double plates = lettersWidth(node.branch.letters, metrics_);
      letters = std::max(letters, widthOf(node.branch.part) + plates + 2 * (beside + 2.5 * metrics_.letter));
    }
    if (!leaf(i)) letters = std::max(letters, widthOf(nodeText(node)) + 2 * metrics_.letter);
    return letters;
  }

  [[nodiscard]] double rowOf(std::size_t i) const {
    const TreeNode& node = tree_.nodes[i];
    // A row is shared with all ancestors that have no other child: their labels stand above the branch.
    const bool alone = i == 0 || tree_.nodes[node.parent].children.size() == 1;
    const bool tall = alone || node.probe || !node.branch.letters.isEmpty() ||
                      !branchText(node.branch).isEmpty() || !node.branch.part.isEmpty();
    return (tall ? tallRow : lowRow) * metrics_.line;
  }

  void placeRows() {
    double y = metrics_.line * 0.3;
    std::vector<std::size_t> waiting{0};
    while (!waiting.empty()) {
      const std::size_t i = waiting.back();
      waiting.pop_back();
      const auto& children = tree_.nodes[i].children;
      waiting.insert(waiting.end(), children.rbegin(), children.rend());
      if (!children.empty()) continue;
      const double row = rowOf(i);
      layout_.places[i].at.setY(y + row / 2);
      y += row;
    }
    for (std::size_t i = tree_.nodes.size(); i-- > 0;) {
      const auto& children = tree_.nodes[i].children;
      if (children.empty()) continue;
      layout_.places[i].at.setY(
          (layout_.places[children.front()].at.y() + layout_.places[children.back()].at.y()) / 2);
    }
    layout_.size.setHeight(y + metrics_.line * 0.3);
  }

  void placeColumns(double stretch) {
    // The source's label stands left of it.
    layout_.places[0].at.setX(2 * margin() + widthOf(nodeText(tree_.nodes[0])));
    deepest_ = layout_.places[0].at.x();
    double right = deepest_;
    for (std::size_t i = 1; i < tree_.nodes.size(); ++i) {
      const double x = layout_.places[tree_.nodes[i].parent].at.x() + lengths_[i] * stretch;
      layout_.places[i].at.setX(x);
      deepest_ = std::max(deepest_, x);
      right = std::max(right, leaf(i) ? x + margin() + widthOf(nodeText(tree_.nodes[i])) : x);
    }
    layout_.size.setWidth(right + margin());
  }

  void placeBoxes() {
    const double line = metrics_.line;
    for (std::size_t i = 0; i < tree_.nodes.size(); ++i) {
      NodePlace& place = layout_.places[i];
      const TreeNode& node = tree_.nodes[i];
      const double words = widthOf(nodeText(node));
      if (i == 0)
        place.label = {place.at.x() - margin() - words, place.at.y() - line * 0.55, words, line * 1.1};
      else if (leaf(i))
        place.label = {place.at.x() + margin(), place.at.y() - line * 0.55, words, line * 1.1};
      else
        place.label = {place.at.x() - metrics_.letter * 0.5 - words, place.at.y() - line * 1.35, words,
                       line * 1.1};
      if (words <= 0.0) place.label = {};
      const QPointF half(metrics_.letter, line * 0.6);
      place.nodeHit = QRectF(place.at - half, place.at + half).united(place.label);
      if (i == 0) continue;
      place.start = {layout_.places[node.parent].at.x(), place.at.y()};
      const double text = widthOf(branchText(node.branch));
      const double room = place.at.x() - place.start.x() - metrics_.letter;
      // What does not fit is left out: the selected branch says it in full.
      if (text > 0.0 && room >= smallShare * text)
        place.text = {place.start.x() + metrics_.letter * 0.5, place.at.y() + line * 0.45, room, line * 0.85};
      place.branchHit = QRectF(place.start.x() + metrics_.letter * 0.5, place.at.y() - line * 0.45,
                               place.at.x() - place.start.x() - metrics_.letter * 1.5, line * 0.9);
      if (!place.text.isEmpty()) place.branchHit = place.branchHit.united(place.text);
    }
  }

  const LineTree& tree_;
  TreeMetrics metrics_;
  TreeLayout layout_;
  std::vector<double> lengths_; ///< of each branch
  double deepest_ = 0.0;
};

} // namespace

TreeLayout layoutLineTree(const LineTree& tree, const TreeMetrics& metrics, double width) {
  return TreePlacer(tree, metrics).place(width);
}

double lettersWidth(const QString& letters, const TreeMetrics& metrics) {
  return static_cast<double>(letters.size()) * metrics.line * 1.2;
}

QString suspicionText(double suspicion) {
  if (suspicion < leastShownSuspicion) return {};
  if (suspicion > 0.995) return QStringLiteral("> 99 %"); // nothing is certain
  if (suspicion < 0.095) return QStringLiteral("%1 %").arg(suspicion * 100.0, 0, 'f', 1);
  return QStringLiteral("%1 %").arg(suspicion * 100.0, 0, 'f', 0);
}

QString branchText(const TreeBranch& branch) {
  const QString share = suspicionText(branch.suspicion);
  if (share.isEmpty()) return {};
  if (!branch.letters.isEmpty()) return branch.text; // its share stands in the list
  return branch.text.isEmpty() ? share : share + QStringLiteral("  ") + branch.text;
}

QString nodeText(const TreeNode& node) {
  QStringList words;
  if (!node.label.isEmpty()) words << node.label;
  if (!node.value.isEmpty()) words << node.value;
  const QString share = suspicionText(node.suspicion);
  if (!share.isEmpty() && node.letters.isEmpty() && node.suspicion >= worthShare)
    words << (node.kind == TreeNodeKind::pin
                  ? QCoreApplication::translate("netmend::LineTree", "dead pin %1").arg(share)
                  : share);
  return words.join(QStringLiteral("  "));
}

} // namespace netmend
