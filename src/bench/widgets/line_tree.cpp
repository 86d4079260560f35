#include "line_tree.h"

#include <algorithm>
#include <cmath>

#include <QAccessible>
#include <QKeyEvent>
#include <QPainter>
#include <QScrollBar>
#include <QWheelEvent>

#include "face_style.h"
#include "letters.h"
#include "netmend/drawing/pin_strip.h"
#include "tree_paint.h"

namespace netmend {

namespace {

constexpr double zoomStep = 1.2;
constexpr double leastZoom = 0.4;
constexpr double mostZoom = 4.0;

/// Labels hold capitals, digits and dots: a little wider than the average of running text.
TreeMetrics metricsOf(const QFont& font) {
  QFont bold = font;
  bold.setBold(true);
  const QFontMetricsF metrics(bold);
  return {metrics.horizontalAdvance(QStringLiteral("J12.34 mm 0.5")) / 13.0 * 1.06, metrics.height()};
}

} // namespace

LineTreeView::LineTreeView(QWidget* parent) : QAbstractScrollArea(parent) {
  setAccessibleName(tr("Line tree"));
  setObjectName(QStringLiteral("lineTree"));
  setFocusPolicy(Qt::StrongFocus);
  setFrameShape(QFrame::NoFrame);
  setLetters(*this, Letters::reading);
  viewport()->setAutoFillBackground(false);
  setHorizontalScrollBarPolicy(
      Qt::ScrollBarAlwaysOff); // it fits its width; enlarged it follows the selection
  setMinimumHeight(40);
}

QFont LineTreeView::letters() const {
  QFont font = lettersFont(Letters::reading);
  font.setPixelSize(std::max(4, static_cast<int>(std::floor(font.pixelSize() * zoom_ * fit_))));
  return font;
}

void LineTreeView::setTree(LineTree tree) {
  tree_ = std::move(tree);
  if (selection_ && tree_.find(selection_->key) == nullptr) selection_.reset();
  arrange();
}

/// Smaller letters where it is too wide; enlarged on request it may be wider again.
void LineTreeView::arrange() {
  fit_ = 1.0;
  layout_ = layoutLineTree(tree_, metricsOf(letters()), viewport()->width());
  for (int i = 0; i < 4 && layout_.size.width() > viewport()->width() * std::max(1.0, zoom_); ++i) {
    fit_ *= 0.98 * viewport()->width() * std::max(1.0, zoom_) / layout_.size.width();
    layout_ = layoutLineTree(tree_, metricsOf(letters()), viewport()->width());
  }
  const QSize page = viewport()->size();
  verticalScrollBar()->setRange(
      0, std::max(0, static_cast<int>(std::ceil(layout_.size.height())) - page.height()));
  verticalScrollBar()->setPageStep(page.height());
  verticalScrollBar()->setSingleStep(static_cast<int>(fontMetrics().height()));
  horizontalScrollBar()->setRange(
      0, std::max(0, static_cast<int>(std::ceil(layout_.size.width())) - page.width()));
  horizontalScrollBar()->setPageStep(page.width());
  horizontalScrollBar()->setSingleStep(fontMetrics().height());
  setAccessibleDescription(selectedText());
  viewport()->update();
}

QPointF LineTreeView::offset() const {
  // A tree lower than its room stands in the middle of it.
  const double spare = viewport()->height() - layout_.size.height();
  return {-static_cast<double>(horizontalScrollBar()->value()),
          spare > 0 ? spare / 2 : -static_cast<double>(verticalScrollBar()->value())};
}

void LineTreeView::paintEvent(QPaintEvent*) {
  QPainter painter(viewport());
  painter.setRenderHint(QPainter::Antialiasing);
  const PictureColors colors = pictureColors(faceTheme());
  painter.fillRect(viewport()->rect(), faceColors(faceTheme()).card);
  if (tree_.nodes.empty()) return;
  const QPointF shift = offset();
  painter.translate(shift);
  painter.setFont(letters());
  paintLineTree(painter, tree_, layout_, selection_, QRectF(viewport()->rect()).translated(-shift),
                metricsOf(letters()), colors);
  painter.resetTransform();
  if (hasFocus()) {
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(colors.due, 3));
    painter.drawRect(QRectF(viewport()->rect()).adjusted(1.5, 1.5, -1.5, -1.5));
  }
}

void LineTreeView::resizeEvent(QResizeEvent* event) {
  QAbstractScrollArea::resizeEvent(event);
  arrange();
}

void LineTreeView::changeEvent(QEvent* event) {
  QAbstractScrollArea::changeEvent(event);
  if (event->type() == QEvent::FontChange || event->type() == QEvent::ApplicationFontChange) arrange();
}

void LineTreeView::focusInEvent(QFocusEvent* event) {
  QAbstractScrollArea::focusInEvent(event);
  viewport()->update();
}

void LineTreeView::focusOutEvent(QFocusEvent* event) {
  QAbstractScrollArea::focusOutEvent(event);
  viewport()->update();
}

std::optional<std::size_t> LineTreeView::selectedIndex() const {
  if (!selection_) return std::nullopt;
  const TreeNode* node = tree_.find(selection_->key);
  if (node == nullptr) return std::nullopt;
  return static_cast<std::size_t>(node - tree_.nodes.data());
}

const TreeNode* LineTreeView::selectedNode() const {
  return selection_ ? tree_.find(selection_->key) : nullptr;
}

void LineTreeView::select(std::optional<TreeSelection> selection) {
  if (selection && tree_.find(selection->key) == nullptr) selection.reset();
  if (selection == selection_) return;
  selection_ = selection;
  setAccessibleDescription(selectedText());
  QAccessibleEvent told(this, QAccessible::DescriptionChanged);
  QAccessible::updateAccessibility(&told);
  showSelected();
  viewport()->update();
}

QString LineTreeView::selectedText() const {
  const auto index = selectedIndex();
  if (!index) {
    const auto pins = std::count_if(tree_.nodes.begin(), tree_.nodes.end(),
                                    [](const TreeNode& node) { return node.kind == TreeNodeKind::pin; });
    return tree_.nodes.empty() ? QString() : tr("Arrows go along the line; pins shown: %1").arg(pins);
  }
  const TreeNode& node = tree_.nodes[*index];
  QString name = node.label.isEmpty()                              ? tr("fork")
                 : node.kind == TreeNodeKind::folded && selection_ ? node.label + tr(", Enter shows them")
                                                                   : nodeText(node);
  if (!selection_->branch) return name;
  const QString share = suspicionText(node.branch.suspicion);
  QString way = node.branch.text;
  if (!node.branch.part.isEmpty())
    way = way.isEmpty() ? tr("through %1").arg(node.branch.part)
                        : tr("through %1, %2").arg(node.branch.part, way);
  const TreeNode& from = tree_.nodes[node.parent];
  return tr("from %1 to %2: %3; open here: %4")
      .arg(from.label.isEmpty() ? tr("fork") : from.label, node.label.isEmpty() ? tr("fork") : node.label,
           way.isEmpty() ? tr("copper") : way, share.isEmpty() ? tr("below half a per cent") : share);
}

void LineTreeView::showSelected() {
  const auto index = selectedIndex();
  if (!index) return;
  const NodePlace& place = layout_.places[*index];
  const QRectF box = (selection_->branch ? place.branchHit : place.nodeHit).adjusted(-12, -12, 12, 12);
  const auto reveal = [](QScrollBar* bar, double low, double high) {
    if (low < bar->value())
      bar->setValue(static_cast<int>(std::floor(low)));
    else if (high > bar->value() + bar->pageStep())
      bar->setValue(static_cast<int>(std::ceil(high)) - bar->pageStep());
  };
  reveal(verticalScrollBar(), box.top(), box.bottom());
  reveal(horizontalScrollBar(), box.left(), box.right());
}

std::optional<TreeSelection> LineTreeView::at(QPointF place) const {
  const QPointF here = place - offset();
  for (std::size_t i = 0; i < tree_.nodes.size(); ++i)
    if (layout_.places[i].nodeHit.contains(here)) return TreeSelection{tree_.nodes[i].key, false};
  for (std::size_t i = 1; i < tree_.nodes.size(); ++i)
    if (layout_.places[i].branchHit.contains(here)) return TreeSelection{tree_.nodes[i].key, true};
  return std::nullopt;
}

void LineTreeView::mousePressEvent(QMouseEvent* event) {
  const auto found = at(event->position());
  select(found);
  if (onSelected) onSelected();
  if (found && !found->branch) unfoldSelected();
}

void LineTreeView::unfoldSelected() {
  const TreeNode* node = selectedNode();
  if (node != nullptr && node->kind == TreeNodeKind::folded && onUnfold) onUnfold(node->key);
}

void LineTreeView::choose(std::size_t node, bool branch) {
  select(TreeSelection{tree_.nodes[node].key, branch && node != 0});
  if (onSelected) onSelected();
}

/// Along the line node and branch take turns; up and down go to the nearest of the same kind.
void LineTreeView::step(int columns, int rows) {
  const auto index = selectedIndex();
  if (!index) {
    choose(0, false);
    return;
  }
  const TreeNode& node = tree_.nodes[*index];
  const bool branch = selection_->branch;
  if (columns > 0) {
    if (branch) return choose(*index, false);
    if (!node.children.empty()) choose(node.children[node.children.size() / 2], true);
    return;
  }
  if (columns < 0) {
    if (branch) return choose(node.parent, false);
    if (*index != 0) choose(*index, true);
    return;
  }
  const QPointF here = layout_.places[*index].at;
  std::optional<std::size_t> best;
  double nearest = 0.0;
  for (std::size_t i = branch ? 1 : 0; i < tree_.nodes.size(); ++i) {
    const QPointF way = layout_.places[i].at - here;
    if (way.y() * rows <= 0.5) continue;
    const double far = std::abs(way.y()) * 2.0 + std::abs(way.x());
    if (!best || far < nearest) {
      best = i;
      nearest = far;
    }
  }
  if (best) choose(*best, branch);
}

void LineTreeView::zoom(double factor) {
  zoom_ = std::clamp(zoom_ * factor, leastZoom, mostZoom);
  arrange();
  showSelected();
}

bool LineTreeView::key(int key) {
  if (tree_.nodes.empty()) return false;
  switch (key) {
  case Qt::Key_Left:
    step(-1, 0);
    return true;
  case Qt::Key_Right:
    step(1, 0);
    return true;
  case Qt::Key_Up:
    step(0, -1);
    return true;
  case Qt::Key_Down:
    step(0, 1);
    return true;
  case Qt::Key_Home:
    choose(0, false);
    return true;
  case Qt::Key_Plus:
    zoom(zoomStep);
    return true;
  case Qt::Key_Minus:
    zoom(1.0 / zoomStep);
    return true;
  default:
    return false;
  }
}

void LineTreeView::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
    unfoldSelected();
    return;
  }
  if (event->key() == Qt::Key_0) {
    zoom(1.0 / zoom_);
    return;
  }
  if (!key(event->key())) QAbstractScrollArea::keyPressEvent(event);
}

void LineTreeView::wheelEvent(QWheelEvent* event) {
  if ((event->modifiers() & Qt::ControlModifier) == 0) {
    QAbstractScrollArea::wheelEvent(event);
    return;
  }
  zoom(std::pow(zoomStep, event->angleDelta().y() / 120.0));
}

} // namespace netmend
