#include "proof_table.h"

#include <algorithm>

#include <QEvent>
#include <QHeaderView>
#include <QPainter>
#include <QStyledItemDelegate>

#include "bench/widgets/face_style.h"
#include "bench/widgets/letters.h"
#include "netmend/drawing/pin_strip.h"
#include "netmend/drawing/shown.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/words/place.h"
#include "netmend/words/verdict.h"

namespace netmend {

namespace {

QIcon markIcon(MarkShape shape, int size, PictureTheme theme) {
  QPixmap pixmap(size, size);
  pixmap.fill(Qt::transparent);
  QPainter painter(&pixmap);
  painter.setRenderHint(QPainter::Antialiasing);
  paintMark(painter, shape, QPointF(size / 2.0, size / 2.0), size * 0.8, pictureColors(theme));
  return QIcon(pixmap);
}

constexpr int proofRow = 38; // pixels at 100 %
constexpr int betweenColumns = 10;

/// Figures of neighbouring columns must not run together.
class Roomy : public QStyledItemDelegate {
public:
  using QStyledItemDelegate::QStyledItemDelegate;
  [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    QSize size = QStyledItemDelegate::sizeHint(option, index);
    if (index.column() > 0 && !index.data(Qt::DisplayRole).toString().isEmpty())
      size.rwidth() += scaled(betweenColumns);
    return size;
  }
};

/// "J4.8, neighbour", "the wire, end to end".
QString nameInTable(const ProofPoint& point, const PlaceNames* places) {
  if (point.why == ProofWhy::endToEnd) return ProofTable::tr("the wire, end to end");
  const QString name = besidePicture(nameOf(point, places));
  return point.why == ProofWhy::neighbour ? ProofTable::tr("%1, neighbour").arg(name) : name;
}

} // namespace

QString valueOf(const std::optional<JobReading>& entry) {
  return entry ? QString::fromStdString(readingText(entry->reading.value, entry->reading.mode))
               : QStringLiteral("–");
}

ProofTable::ProofTable(QWidget* parent) : QTreeWidget(parent) {
  setObjectName(QStringLiteral("proofTable"));
  setAccessibleName(tr("Points to measure again"));
  setRootIsDecorated(false);
  setFrameShape(QFrame::NoFrame);
  // The due row is tinted; a further mark of what was chosen would only compete with it.
  setSelectionMode(QAbstractItemView::NoSelection);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setColumnCount(columnsInAll);
  setItemDelegate(new Roomy(this));
  setHeaderLabels({tr("Point"), tr("Before"), QString(), tr("Must be"), tr("Now"), QString()});
  for (const int column : {beforeColumn, mustColumn, nowColumn})
    headerItem()->setTextAlignment(column, Qt::AlignRight | Qt::AlignVCenter);
  header()->setSectionsClickable(false);
  setLetters(*header(), Letters::small);
  layOnCard(*this);
  // Names of places may be long: they take the room that values and verdicts leave, in as many lines as they
  // need.
  header()->setSectionResizeMode(QHeaderView::ResizeToContents);
  header()->setSectionResizeMode(0, QHeaderView::Stretch);
  header()->setStretchLastSection(false);
  setWordWrap(true);
  QObject::connect(header(), &QHeaderView::sectionResized, this, [this](int section) {
    if (section == 0) fitRows();
  });
  QObject::connect(this, &QTreeWidget::itemActivated, this, [this](QTreeWidgetItem* item) {
    if (onPoint) onPoint(static_cast<std::size_t>(indexOfTopLevelItem(item)));
  });
}

void ProofTable::setPoints(const std::vector<ProofPoint>& points, const std::vector<std::size_t>& skipped,
                           std::optional<std::size_t> due, PictureTheme theme, const PlaceNames* places) {
  clear();
  const FaceColors& colors = faceColors(theme);
  const int size = scaled(24); // smaller, a mark is little but its edge
  setIconSize(QSize(size, size));
  QFont bold = font();
  bold.setBold(true);
  for (std::size_t i = 0; i < points.size(); ++i) {
    const ProofPoint& point = points[i];
    const bool left = std::find(skipped.begin(), skipped.end(), i) != skipped.end();
    const QString name = nameInTable(point, places);
    const bool isDue = due == i;
    const QString verdict = point.now ? shown(nameOf(*point.now)) : left ? tr("skipped") : QString();
    auto* item =
        new QTreeWidgetItem(this, {name, valueOf(point.before), QString(), shown(whatIsExpected(point)),
                                   isDue && !point.now ? tr("due") : valueOf(point.now), verdict});
    if (point.before)
      item->setIcon(beforeMarkColumn, markIcon(markForVerdict(point.before->kind()), size, theme));
    if (point.now) item->setIcon(verdictColumn, markIcon(markForVerdict(point.now->kind()), size, theme));
    for (const int column : {beforeColumn, mustColumn, nowColumn})
      item->setTextAlignment(column, Qt::AlignRight | Qt::AlignVCenter);
    item->setFont(nowColumn, bold);
    for (int column = 0; isDue && column < columnsInAll; ++column) {
      item->setBackground(column, colors.accentTint);
      item->setFont(column, bold);
    }
    item->setToolTip(0, name);
    item->setToolTip(mustColumn, shown(whereItIsFrom(point.expectedBy, point.asAt)));
    if (isDue) setCurrentItem(item);
  }
  fitRows();
}

void ProofTable::drawRow(QPainter* painter, const QStyleOptionViewItem& option,
                         const QModelIndex& index) const {
  QTreeWidget::drawRow(painter, option, index);
  painter->setPen(faceColors(faceTheme()).line);
  painter->drawLine(option.rect.bottomLeft(), option.rect.bottomRight());
}

void layOnCard(QAbstractItemView& list) {
  list.setFrameShape(QFrame::NoFrame);
  QPalette seeThrough = list.palette();
  seeThrough.setColor(QPalette::Base, Qt::transparent);
  list.setPalette(seeThrough);
}

void ProofTable::fitRows() {
  constexpr int aroundText = 4; // pixels
  const QRect room(0, 0, std::max(1, header()->sectionSize(0) - 2 * aroundText), 10'000);
  for (int row = 0; row < topLevelItemCount(); ++row) {
    QTreeWidgetItem* item = topLevelItem(row);
    const QRect text = fontMetrics().boundingRect(room, Qt::TextWordWrap, item->text(0));
    item->setSizeHint(0, QSize(0, std::max(text.height() + aroundText, scaled(proofRow))));
  }
}

void ProofTable::changeEvent(QEvent* event) {
  QTreeWidget::changeEvent(event);
  // Marks are drawn anew with the next reading; until then they keep their place.
  if (event->type() == QEvent::FontChange) setIconSize(QSize(scaled(24), scaled(24)));
}

} // namespace netmend
