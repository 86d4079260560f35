#include "tree_paint.h"

#include <algorithm>
#include <cmath>

#include "face_style.h"
#include "netmend/drawing/pin_strip.h"
#include "suspect_list.h"

namespace netmend {

namespace {

/// One tree on one painter.
class TreePainter {
public:
  TreePainter(QPainter& painter, const LineTree& tree, const TreeLayout& layout, const TreeMetrics& metrics,
              const PictureColors& colors)
      : painter_(painter), tree_(tree), layout_(layout), metrics_(metrics), colors_(colors),
        base_(painter.font()) {}

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
    painter_.setPen(QPen(face_.ink, metrics_.line * 0.1));
    painter_.drawLine(QPointF(x, layout_.places[children.front()].at.y()),
                      QPointF(x, layout_.places[children.back()].at.y()));
  }

  void paintBranch(std::size_t i) {
    const NodePlace& place = layout_.places[i];
    const TreeBranch& branch = tree_.nodes[i].branch;
    const double thin = metrics_.line * 0.12;
    if (branch.suspicion >= leastShownSuspicion) {
      QColor band = face_.oddFill;
      band.setAlphaF(0.45F);
      const double width = metrics_.line * std::clamp(0.2 + 2.4 * branch.suspicion, 0.2, 1.0);
      painter_.setPen(QPen(band, width, Qt::SolidLine, Qt::FlatCap));
      painter_.drawLine(place.start, place.at);
    }
    QPen pen(face_.net, thin);
    if (branch.unknownWay) {
      pen.setStyle(Qt::CustomDashLine);
      pen.setDashPattern({3.5, 2.5});
    }
    painter_.setPen(pen);
    painter_.drawLine(place.start, place.at);
    const QPointF middle = (place.start + place.at) / 2;
    if (!branch.part.isEmpty())
      paintPart(middle, branch);
    else
      paintLetters(middle, branch.letters);
    const QString text = branchText(branch);
    if (text.isEmpty() || place.text.isEmpty()) return;
    painter_.setFont(smaller());
    painter_.setPen(face_.quiet);
    painter_.drawText(place.text, Qt::AlignHCenter | Qt::AlignVCenter, fitted(text, place.text));
  }

  /// The same plates as in list and map, side by side round `middle`.
  void paintLetters(QPointF middle, const QString& letters) {
    const double side = metrics_.line * 1.1;
    double x = middle.x() - lettersWidth(letters, metrics_) / 2 + metrics_.line * 0.05;
    for (const QChar letter : letters) {
      paintLetter(painter_, QRectF(x, middle.y() - side / 2, side, side), letter, metrics_.line * 0.75);
      x += metrics_.line * 1.2;
    }
  }

  void paintPart(QPointF middle, const TreeBranch& branch) {
    painter_.setFont(boldIf(false));
    const double words = QFontMetricsF(painter_.font()).horizontalAdvance(branch.part);
    const double plates = lettersWidth(branch.letters, metrics_);
    const double width = words + plates + metrics_.letter * 1.5;
    const QRectF box(middle.x() - width / 2, middle.y() - metrics_.line * 0.68, width, metrics_.line * 1.36);
    painter_.setPen(QPen(face_.net, metrics_.line * 0.09));
    painter_.setBrush(face_.card);
    painter_.drawRect(box);
    painter_.setPen(face_.ink);
    painter_.drawText(box.adjusted(plates + metrics_.letter * 0.75, 0, 0, 0),
                      Qt::AlignLeft | Qt::AlignVCenter, branch.part);
    paintLetters(QPointF(box.left() + plates / 2 + metrics_.line * 0.1, middle.y()), branch.letters);
  }

  void paintSelection(const TreeSelection& selection) {
    for (std::size_t i = 0; i < tree_.nodes.size(); ++i) {
      if (tree_.nodes[i].key != selection.key) continue;
      const QRectF box = selection.branch ? layout_.places[i].branchHit : layout_.places[i].nodeHit;
      painter_.setBrush(Qt::NoBrush);
      painter_.setPen(QPen(face_.accent, metrics_.line * 0.13));
      painter_.drawRoundedRect(box.adjusted(-4, -3, 4, 3), 4, 4);
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
    if (node.probe) { // round whatever stands there; twice where it was read before
      painter_.setBrush(Qt::NoBrush);
      painter_.setPen(QPen(face_.accent, metrics_.line * 0.2));
      painter_.drawEllipse(place.at, size * 0.72, size * 0.72);
      if (tree_.again) painter_.drawEllipse(place.at, size * 1.12, size * 1.12);
    }
    if (place.label.isEmpty()) return;
    painter_.setFont(boldIf(node.probe || node.suspicion >= 0.05 || node.mark));
    const bool right = node.children.empty() && i > 0;
    const QString text = right ? nodeText(node) : fitted(nodeText(node), labelBox(place, right));
    painter_.save();
    // Clear of the letters on the branch and of the rings.
    if (node.probe) painter_.translate(right ? metrics_.letter : 0.0, right ? 0.0 : -metrics_.line * 0.5);
    const auto flags = static_cast<int>((right ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter);
    if (node.probe) paintPlate(i, text, flags);
    painter_.setPen(node.probe ? face_.onAccent : face_.ink);
    painter_.drawText(labelBox(place, right), flags, text);
    painter_.restore();
    if (!node.letters.isEmpty()) {
      const double words = QFontMetricsF(painter_.font()).horizontalAdvance(text);
      const double half = lettersWidth(node.letters, metrics_) / 2;
      paintLetters(right ? QPointF(place.label.left() + words + metrics_.letter + half, place.at.y())
                         : QPointF(place.label.center().x(), place.at.y() + metrics_.line),
                   node.letters);
    }
  }

  [[nodiscard]] QRectF labelBox(const NodePlace& place, bool right) const {
    return right ? place.label.adjusted(0, 0, metrics_.letter * 12, 0)
                 : place.label.adjusted(-metrics_.letter * 1.0, 0, 0, 0);
  }

  /// Under the due place's name, as on the map.
  void paintPlate(std::size_t i, const QString& text, int flags) {
    const NodePlace& place = layout_.places[i];
    const bool right = (flags & Qt::AlignLeft) != 0;
    const double words = QFontMetricsF(painter_.font()).horizontalAdvance(text);
    const double more = metrics_.letter * 0.6;
    const QRectF box = labelBox(place, right);
    painter_.setPen(Qt::NoPen);
    painter_.setBrush(face_.accent);
    const double left = right ? box.left() - more : box.right() - words - more;
    painter_.drawRoundedRect(
        QRectF(left, box.top() - metrics_.line * 0.1, words + 2 * more, box.height() + metrics_.line * 0.2),
        3, 3);
  }

  void paintPlain(const TreeNode& node, QPointF at, double size) {
    painter_.setPen(QPen(face_.ink, metrics_.line * 0.09));
    switch (node.kind) {
    case TreeNodeKind::pin:
      painter_.setBrush(face_.card);
      painter_.drawRect(QRectF(at.x() - size * 0.28, at.y() - size * 0.28, size * 0.56, size * 0.56));
      break;
    case TreeNodeKind::unknownWay:
      painter_.setBrush(face_.card);
      painter_.drawEllipse(at, size * 0.55, size * 0.55);
      painter_.setFont(boldIf(true));
      painter_.drawText(QRectF(at.x() - size, at.y() - size, size * 2, size * 2), Qt::AlignCenter,
                        QStringLiteral("?"));
      break;
    case TreeNodeKind::folded:
      painter_.setBrush(face_.card);
      for (const double shift : {0.3, 0.0})
        painter_.drawRect(QRectF(at.x() - size * (0.35 - shift), at.y() - size * (0.35 + shift * 0.6),
                                 size * 0.7, size * 0.7));
      painter_.drawLine(at - QPointF(size * 0.2, 0), at + QPointF(size * 0.2, 0));
      painter_.drawLine(at - QPointF(0, size * 0.2), at + QPointF(0, size * 0.2));
      break;
    case TreeNodeKind::copper:
    case TreeNodeKind::fork:
      painter_.setBrush(face_.ink);
      painter_.drawEllipse(at, size * 0.18, size * 0.18);
      break;
    }
  }

  [[nodiscard]] QFont smaller() const {
    QFont font = base_;
    font.setPixelSize(
        std::max(6, static_cast<int>(base_.pixelSize() * face::smallLetters / face::textLetters)));
    return font;
  }

  [[nodiscard]] QFont boldIf(bool bold) const {
    QFont font = base_;
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
  const FaceColors& face_ = faceColors(faceTheme());
  QFont base_;
};

} // namespace

void paintLineTree(QPainter& painter, const LineTree& tree, const TreeLayout& layout,
                   const std::optional<TreeSelection>& selection, const QRectF& shown,
                   const TreeMetrics& metrics, const PictureColors& colors) {
  TreePainter(painter, tree, layout, metrics, colors).paint(selection, shown);
}

} // namespace netmend
