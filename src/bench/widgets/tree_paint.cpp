#include "tree_paint.h"

#include <algorithm>
#include <cmath>

#include "netmend/drawing/pin_strip.h"

namespace netmend {

namespace {

/// One tree on one painter.
class TreePainter {
public:
  TreePainter(QPainter& painter, const LineTree& tree, const TreeLayout& layout, const TreeMetrics& metrics,
              const PictureColors& colors)
      : painter_(painter), tree_(tree), layout_(layout), metrics_(metrics), colors_(colors) {}

  void paint(const std::optional<TreeSelection>& selection, const QRectF& shown) {
    for (std::size_t i = 0; i < tree_.nodes.size(); ++i) {
      paintUpright(i, shown);
      if (i > 0 && near(shown, layout_.places[i].branchHit)) paintBranch(i);
    }
    if (selection) paintSelection(*selection);
    for (std::size_t i = 0; i < tree_.nodes.size(); ++i)
      if (near(shown, layout_.places[i].nodeHit)) paintNode(i);
  }

private:
  [[nodiscard]] bool near(const QRectF& shown, const QRectF& box) const {
    const double more = metrics_.line * 2;
    return shown.adjusted(-more, -more, more, more).intersects(box);
  }

  void paintUpright(std::size_t i, const QRectF& shown) {
    const auto& children = tree_.nodes[i].children;
    if (children.size() < 2) return;
    const double x = layout_.places[i].at.x();
    if (x < shown.left() - metrics_.line || x > shown.right() + metrics_.line) return;
    painter_.setPen(QPen(colors_.ink, metrics_.line * 0.1));
    painter_.drawLine(QPointF(x, layout_.places[children.front()].at.y()),
                      QPointF(x, layout_.places[children.back()].at.y()));
  }

  void paintBranch(std::size_t i) {
    const NodePlace& place = layout_.places[i];
    const TreeBranch& branch = tree_.nodes[i].branch;
    const bool suspect = branch.suspicion >= leastShownSuspicion;
    const double thin = metrics_.line * 0.1;
    if (suspect) {
      painter_.setPen(QPen(colors_.suspect, thin * (2.0 + 3.0 * std::sqrt(branch.suspicion)), Qt::SolidLine,
                           Qt::FlatCap));
      // Short of the nodes, whose shapes have to be told.
      const QPointF gap(metrics_.line * 0.6, 0);
      if (place.at.x() - place.start.x() > 3 * gap.x()) painter_.drawLine(place.start + gap, place.at - gap);
    }
    QPen pen(colors_.ink, thin);
    if (branch.unknownWay) {
      pen.setStyle(Qt::CustomDashLine);
      pen.setDashPattern({4.0, 3.0});
    }
    painter_.setPen(pen);
    painter_.drawLine(place.start, place.at);
    const QPointF middle = (place.start + place.at) / 2;
    if (!branch.part.isEmpty()) paintPart(middle, branch.part);
    if (suspect) {
      // The same mark as in the map; beside a part's box, not on it.
      const QPointF mark = branch.part.isEmpty() ? middle : place.start + (place.at - place.start) * 0.12;
      paintMark(painter_, MarkShape::cross, mark, metrics_.line * (branch.suspicion >= 0.05 ? 0.7 : 0.45),
                colors_);
      painter_.setFont(boldIf(branch.suspicion >= 0.05));
      painter_.setPen(colors_.ink);
      painter_.drawText(place.text, Qt::AlignLeft | Qt::AlignVCenter, fitted(branchText(branch), place.text));
    }
  }

  void paintPart(QPointF middle, const QString& name) {
    painter_.setFont(boldIf(false));
    const double width = QFontMetricsF(painter_.font()).horizontalAdvance(name) + metrics_.letter * 1.5;
    const QRectF box(middle.x() - width / 2, middle.y() - metrics_.line * 0.62, width, metrics_.line * 1.24);
    painter_.setPen(QPen(colors_.body, metrics_.line * 0.08));
    painter_.setBrush(colors_.paper);
    painter_.drawRect(box);
    painter_.setPen(colors_.ink);
    painter_.drawText(box, Qt::AlignCenter, name);
  }

  void paintSelection(const TreeSelection& selection) {
    for (std::size_t i = 0; i < tree_.nodes.size(); ++i) {
      if (tree_.nodes[i].key != selection.key) continue;
      const QRectF box = selection.branch ? layout_.places[i].branchHit : layout_.places[i].nodeHit;
      painter_.setBrush(Qt::NoBrush);
      painter_.setPen(QPen(colors_.ink, metrics_.line * 0.13));
      painter_.drawRoundedRect(box.adjusted(-3, -2, 3, 2), 4, 4);
      painter_.setPen(QPen(colors_.lit, metrics_.line * 0.13));
      painter_.drawRoundedRect(box.adjusted(-5, -4, 5, 4), 5, 5);
    }
  }

  void paintNode(std::size_t i) {
    const TreeNode& node = tree_.nodes[i];
    const NodePlace& place = layout_.places[i];
    const double size = metrics_.line * 0.85;
    if (node.mark) {
      paintMark(painter_, *node.mark, place.at, size, colors_);
    } else {
      paintPlain(node, place.at, size);
    }
    if (node.probe) { // round whatever stands there
      painter_.setBrush(Qt::NoBrush);
      painter_.setPen(QPen(colors_.lit, metrics_.line * 0.16));
      painter_.drawEllipse(place.at, size * 0.78, size * 0.78);
    }
    if (place.label.isEmpty()) return;
    painter_.setFont(boldIf(node.probe || node.suspicion >= 0.05));
    painter_.setPen(colors_.ink);
    const bool right = node.children.empty() && i > 0;
    const QRectF box = right ? place.label.adjusted(0, 0, metrics_.letter * 12, 0)
                             : place.label.adjusted(-metrics_.letter * 1.0, 0, 0, 0);
    painter_.drawText(box, static_cast<int>((right ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter),
                      right ? nodeText(node) : fitted(nodeText(node), box));
  }

  void paintPlain(const TreeNode& node, QPointF at, double size) {
    painter_.setPen(QPen(colors_.ink, metrics_.line * 0.09));
    switch (node.kind) {
    case TreeNodeKind::pin:
      painter_.setBrush(colors_.paper);
      painter_.drawRect(QRectF(at.x() - size * 0.28, at.y() - size * 0.28, size * 0.56, size * 0.56));
      break;
    case TreeNodeKind::unknownWay:
      painter_.setBrush(colors_.paper);
      painter_.drawEllipse(at, size * 0.55, size * 0.55);
      painter_.setFont(boldIf(true));
      painter_.drawText(QRectF(at.x() - size, at.y() - size, size * 2, size * 2), Qt::AlignCenter,
                        QStringLiteral("?"));
      break;
    case TreeNodeKind::folded:
      painter_.setBrush(colors_.paper);
      for (const double shift : {0.3, 0.0})
        painter_.drawRect(QRectF(at.x() - size * (0.35 - shift), at.y() - size * (0.35 + shift * 0.6),
                                 size * 0.7, size * 0.7));
      painter_.drawLine(at - QPointF(size * 0.2, 0), at + QPointF(size * 0.2, 0));
      painter_.drawLine(at - QPointF(0, size * 0.2), at + QPointF(0, size * 0.2));
      break;
    case TreeNodeKind::copper:
    case TreeNodeKind::fork:
      painter_.setBrush(colors_.ink);
      painter_.drawEllipse(at, size * 0.18, size * 0.18);
      break;
    }
  }

  [[nodiscard]] QFont boldIf(bool bold) const {
    QFont font = painter_.font();
    font.setBold(bold);
    return font;
  }

  [[nodiscard]] QString fitted(const QString& text, const QRectF& box) const {
    return QFontMetricsF(painter_.font()).elidedText(text, Qt::ElideRight, box.width() + 1);
  }

  QPainter& painter_;
  const LineTree& tree_;
  const TreeLayout& layout_;
  TreeMetrics metrics_;
  const PictureColors& colors_;
};

} // namespace

void paintLineTree(QPainter& painter, const LineTree& tree, const TreeLayout& layout,
                   const std::optional<TreeSelection>& selection, const QRectF& shown,
                   const TreeMetrics& metrics, const PictureColors& colors) {
  TreePainter(painter, tree, layout, metrics, colors).paint(selection, shown);
}

} // namespace netmend
