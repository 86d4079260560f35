#include "wrap_layout.h"

#include <algorithm>

#include <QStyle>
#include <QWidget>

namespace netmend {

namespace {

bool grows(const QLayoutItem& item) {
  return (item.expandingDirections() & Qt::Horizontal) != 0;
}

/// What an item takes at least of a line: its wish, unless it can do with less and grows anyway.
int wishOf(const QLayoutItem& item, int room) {
  const int wish = grows(item) ? item.minimumSize().width() : item.sizeHint().width();
  return std::clamp(wish, std::min(item.minimumSize().width(), room), room);
}

/// One line: its items, and how wide they are without what is left.
struct RowLine {
  QList<QLayoutItem*> items;
  int width = 0;
  int height = 0;
};

void place(const RowLine& line, const QRect& rect, int gap) {
  const auto growing = std::count_if(line.items.begin(), line.items.end(),
                                     [](const QLayoutItem* item) { return grows(*item); });
  int left = std::max(0, rect.width() - line.width);
  auto still = static_cast<int>(growing);
  int x = rect.left();
  for (QLayoutItem* item : line.items) {
    int width = wishOf(*item, rect.width());
    if (grows(*item)) {
      const int more = std::min(left / still, std::max(0, item->maximumSize().width() - width));
      width += more;
      left -= more;
      --still;
    }
    const int height = std::min(line.height, item->maximumSize().height());
    item->setGeometry(QRect(x, rect.top() + (line.height - height) / 2, width, height));
    x += width + gap;
  }
}

} // namespace

WrapLayout::~WrapLayout() {
  qDeleteAll(items_);
}

QLayoutItem* WrapLayout::takeAt(int index) {
  return index >= 0 && index < items_.size() ? items_.takeAt(index) : nullptr;
}

int WrapLayout::gap() const {
  if (spacing() >= 0) return spacing();
  const QWidget* parent = parentWidget();
  return parent != nullptr ? parent->style()->pixelMetric(QStyle::PM_LayoutHorizontalSpacing, nullptr, parent)
                           : 6;
}

int WrapLayout::heightForWidth(int width) const {
  return arrange(QRect(0, 0, width, 0), true);
}

QSize WrapLayout::sizeHint() const {
  QSize out(0, 0);
  for (const QLayoutItem* item : items_) {
    if (item->isEmpty()) continue;
    out.rwidth() += item->sizeHint().width() + gap();
    out.setHeight(std::max(out.height(), item->sizeHint().height()));
  }
  const QMargins margins = contentsMargins();
  return out + QSize(margins.left() + margins.right() - gap(), margins.top() + margins.bottom());
}

QSize WrapLayout::minimumSize() const {
  QSize out(0, 0);
  for (const QLayoutItem* item : items_)
    if (!item->isEmpty()) out = out.expandedTo(item->minimumSize());
  const QMargins margins = contentsMargins();
  return out + QSize(margins.left() + margins.right(), margins.top() + margins.bottom());
}

void WrapLayout::setGeometry(const QRect& rect) {
  QLayout::setGeometry(rect);
  arrange(rect, false);
}

int WrapLayout::arrange(const QRect& rect, bool measureOnly) const {
  const QMargins margins = contentsMargins();
  const QRect inner = rect.marginsRemoved(margins);
  int y = inner.top();
  RowLine line;
  const auto finish = [&] {
    if (line.items.isEmpty()) return;
    if (!measureOnly) place(line, QRect(inner.left(), y, inner.width(), line.height), gap());
    y += line.height + gap();
    line = {};
  };
  for (QLayoutItem* item : items_) {
    if (item->isEmpty()) continue;
    const int width = wishOf(*item, inner.width());
    if (!line.items.isEmpty() && line.width + gap() + width > inner.width()) finish();
    line.width += (line.items.isEmpty() ? 0 : gap()) + width;
    line.height = std::max(line.height, item->sizeHint().height());
    line.items.append(item);
  }
  finish();
  return std::max(0, y - gap() - inner.top()) + margins.top() + margins.bottom();
}

} // namespace netmend
