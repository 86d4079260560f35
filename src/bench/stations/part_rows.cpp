#include "part_rows.h"

#include <algorithm>

#include <QEvent>
#include <QPainter>

#include "bench/widgets/face_style.h"
#include "bench/widgets/letters.h"
#include "netmend/drawing/face.h"

namespace netmend {

namespace {

enum Role { idRole = Qt::UserRole, nameRole, pinsRole, whatRole, connectorRole, walksRole, alsoRole };

class RowPainter : public QStyledItemDelegate {
public:
  using QStyledItemDelegate::QStyledItemDelegate;

  [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem&, const QModelIndex& index) const override {
    return {scaled(200), scaled(index.data(connectorRole).toBool() ? 40 : 33)};
  }

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const FaceColors& colors = faceColors(faceTheme());
    const bool chosen = option.state.testFlag(QStyle::State_Selected);
    const bool connector = index.data(connectorRole).toBool();
    const QRect row = option.rect;
    const int gap = scaled(face::grid);
    painter->save();
    painter->fillRect(row, chosen ? colors.accent : colors.card);
    painter->setPen(colors.line);
    painter->drawLine(row.bottomLeft(), row.bottomRight());
    const QColor ink = chosen ? colors.onAccent : colors.ink;
    painter->setPen(ink);
    QRect left = row.adjusted(gap * 3 / 2, 0, -gap * 3 / 2, 0);
    const QFont name = lettersFont(connector ? Letters::metre : Letters::reading, connector);
    const QFontMetrics metrics(name);
    const int nameRoom = std::max(scaled(56), metrics.horizontalAdvance(nameOf(metrics, index)));
    painter->setFont(name);
    painter->drawText(QRect(left.left(), left.top(), nameRoom, left.height()), Qt::AlignVCenter,
                      nameOf(metrics, index));
    const QFont count = lettersFont(connector ? Letters::metre : Letters::reading);
    painter->setFont(count);
    const int countRoom = scaled(44);
    painter->drawText(QRect(left.left() + nameRoom, left.top(), countRoom, left.height()),
                      Qt::AlignVCenter | Qt::AlignRight, index.data(pinsRole).toString());
    left.setLeft(left.left() + nameRoom + countRoom + gap * 3 / 2);
    const QFont small = lettersFont(Letters::small);
    if (const QString text = index.data(walksRole).toString(); !text.isEmpty()) {
      painter->setFont(small);
      painter->drawText(left, Qt::AlignVCenter | Qt::AlignRight, text);
      left.setRight(left.right() - QFontMetrics(small).horizontalAdvance(text) - gap);
    }
    const QFont reading = lettersFont(Letters::reading);
    painter->setFont(reading);
    painter->drawText(
        left, Qt::AlignVCenter,
        QFontMetrics(reading).elidedText(index.data(whatRole).toString(), Qt::ElideRight, left.width()));
    painter->restore();
  }

private:
  [[nodiscard]] static QString nameOf(const QFontMetrics& metrics, const QModelIndex& index) {
    return metrics.elidedText(index.data(nameRole).toString(), Qt::ElideRight, scaled(110));
  }
};

} // namespace

PartRows::PartRows(QWidget* parent) : QListWidget(parent) {
  setItemDelegate(new RowPainter(this));
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
}

void PartRows::setRows(const std::vector<PartRow>& rows, PartId current) {
  const QSignalBlocker quiet(this);
  clear();
  for (const PartRow& row : rows) {
    auto* item = new QListWidgetItem(row.text, this);
    item->setData(idRole, static_cast<qulonglong>(row.id.value));
    item->setData(nameRole, row.name);
    item->setData(pinsRole, row.pins);
    item->setData(whatRole, row.what);
    item->setData(connectorRole, row.connector);
    item->setData(walksRole, row.walks);
    item->setData(alsoRole, row.also);
  }
  choose(current);
  if (currentRow() < 0 && count() > 0) setCurrentRow(0);
}

PartId PartRows::chosen() const {
  const QListWidgetItem* item = currentItem();
  return item != nullptr ? PartId(item->data(idRole).toULongLong()) : PartId();
}

QString PartRows::chosenName() const {
  return currentItem() != nullptr ? currentItem()->data(nameRole).toString() : QString();
}

void PartRows::choose(PartId id) {
  for (int i = 0; i < count(); ++i)
    if (item(i)->data(idRole).toULongLong() == id.value) setCurrentRow(i);
}

void PartRows::filter(const QString& words) {
  const QString wanted = words.trimmed().toLower();
  int first = -1;
  for (int i = 0; i < count(); ++i) {
    const bool fits = wanted.isEmpty() || item(i)->text().toLower().contains(wanted) ||
                      item(i)->data(alsoRole).toString().contains(wanted);
    item(i)->setHidden(!fits);
    if (fits && first < 0) first = i;
  }
  if (first >= 0 && (currentRow() < 0 || item(currentRow())->isHidden())) setCurrentRow(first);
}

void PartRows::changeEvent(QEvent* event) {
  QListWidget::changeEvent(event);
  if (event->type() == QEvent::FontChange) scheduleDelayedItemsLayout();
}

} // namespace netmend
