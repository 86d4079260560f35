#include "job_cards.h"

#include <QEvent>
#include <QPainter>
#include <QStyledItemDelegate>

#include "bench/widgets/face_style.h"
#include "bench/widgets/letters.h"
#include "netmend/drawing/face.h"

namespace netmend {

namespace {

constexpr int allStations = 7;
enum CardRole {
  jobRole = Qt::UserRole,
  numberRole,
  deviceRole,
  symptomRole,
  dateRole,
  stateRole,
  hereRole,
  openRole
};

/// Seven boxes: done filled, here half, later empty.
void paintTicks(QPainter& painter, QPoint at, int here, const FaceColors& colors, const QColor& ink) {
  const int width = scaled(13);
  const int height = scaled(9);
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing, false);
  for (int i = 0; i < allStations; ++i) {
    const QRect tick(at.x() + i * (width + scaled(2)), at.y(), width, height);
    painter.fillRect(tick, colors.card);
    QRect filled = tick;
    if (i == here) filled.setWidth(width / 2);
    if (i <= here) painter.fillRect(filled, ink);
    painter.setPen(ink);
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(tick.adjusted(0, 0, -1, -1));
  }
  painter.restore();
}

class CardPainter : public QStyledItemDelegate {
public:
  using QStyledItemDelegate::QStyledItemDelegate;

  [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem&, const QModelIndex&) const override {
    return {scaled(160), scaled(98)};
  }

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const FaceColors& colors = faceColors(faceTheme());
    const bool open = index.data(openRole).toBool();
    const bool hasKeys = option.state.testFlag(QStyle::State_HasFocus);
    const int gap = scaled(face::grid);
    QRect card = option.rect.adjusted(0, 0, 0, -gap);
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const double width = (open || hasKeys ? colors.edge : colors.hair) * faceScale();
    painter->setPen(QPen(hasKeys ? colors.accent : open ? colors.ink : colors.line, width));
    painter->setBrush(colors.card);
    painter->drawRoundedRect(QRectF(card).adjusted(width / 2, width / 2, -width / 2, -width / 2),
                             scaled(face::round), scaled(face::round));
    card.adjust(gap * 2, gap, -gap * 2, -gap);
    const QFont small = lettersFont(Letters::small);
    const QFont bold = lettersFont(Letters::reading, true);
    const QFont reading = lettersFont(Letters::reading);
    const int line = QFontMetrics(reading).height() + scaled(2);
    painter->setFont(small);
    painter->setPen(colors.quiet);
    const QString date = index.data(dateRole).toString();
    painter->drawText(QRect(card.left(), card.top(), card.width(), line), Qt::AlignRight | Qt::AlignVCenter,
                      date);
    painter->setFont(bold);
    painter->setPen(colors.ink);
    const int room = card.width() - QFontMetrics(small).horizontalAdvance(date) - gap;
    painter->drawText(QRect(card.left(), card.top(), room, line), Qt::AlignVCenter,
                      QFontMetrics(bold).elidedText(index.data(numberRole).toString() + QStringLiteral("  ") +
                                                        index.data(deviceRole).toString(),
                                                    Qt::ElideRight, room));
    painter->setFont(reading);
    painter->setPen(colors.quiet);
    painter->drawText(
        QRect(card.left(), card.top() + line, card.width(), line), Qt::AlignVCenter,
        QFontMetrics(reading).elidedText(index.data(symptomRole).toString(), Qt::ElideRight, card.width()));
    const QRect last(card.left(), card.top() + 2 * line, card.width(), line);
    paintTicks(*painter, {last.left(), last.center().y() - scaled(3)}, index.data(hereRole).toInt(), colors,
               open ? colors.accent : colors.ink);
    painter->setFont(small);
    painter->setPen(colors.ink);
    painter->drawText(last.adjusted(allStations * scaled(15) + gap, 0, 0, 0), Qt::AlignVCenter,
                      index.data(stateRole).toString());
    painter->restore();
  }
};

} // namespace

JobCards::JobCards(QWidget* parent) : QListWidget(parent) {
  setItemDelegate(new CardPainter(this));
  setFrameShape(QFrame::NoFrame);
  viewport()->setAutoFillBackground(false);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
}

void JobCards::setCards(const std::vector<JobCard>& cards) {
  const int before = currentRow();
  clear();
  for (const JobCard& card : cards) {
    auto* item = new QListWidgetItem(card.text, this);
    item->setData(jobRole, QVariant::fromValue<qulonglong>(card.id.value));
    item->setData(numberRole, card.number);
    item->setData(deviceRole, card.device);
    item->setData(symptomRole, card.symptom);
    item->setData(dateRole, card.date);
    item->setData(stateRole, card.state);
    item->setData(hereRole, card.here);
    item->setData(openRole, card.open);
    if (card.open) setCurrentItem(item);
  }
  if (currentRow() < 0 && before >= 0 && before < count() && hasFocus()) setCurrentRow(before);
}

JobId JobCards::chosen() const {
  const QListWidgetItem* item = currentItem();
  return item != nullptr ? JobId(item->data(jobRole).toULongLong()) : JobId();
}

void JobCards::changeEvent(QEvent* event) {
  QListWidget::changeEvent(event);
  if (event->type() == QEvent::FontChange) scheduleDelayedItemsLayout();
}

} // namespace netmend
