#include "proof_table.h"

#include <algorithm>

#include <QHeaderView>
#include <QPainter>

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

} // namespace

QString valueOf(const std::optional<JobReading>& entry) {
  return entry ? QString::fromStdString(readingText(entry->reading.value, entry->reading.mode))
               : QStringLiteral("–");
}

ProofTable::ProofTable(QWidget* parent) : QTreeWidget(parent) {
  setObjectName(QStringLiteral("proofTable"));
  setAccessibleName(tr("Points to measure again"));
  setRootIsDecorated(false);
  setColumnCount(5);
  setHeaderLabels({tr("Point"), tr("Before"), tr("Must be"), tr("Now"), tr("Verdict")});
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
  const int size = fontMetrics().height();
  for (std::size_t i = 0; i < points.size(); ++i) {
    const ProofPoint& point = points[i];
    const bool left = std::find(skipped.begin(), skipped.end(), i) != skipped.end();
    const QString name = besidePicture(nameOf(point, places));
    const QString verdict = point.now ? shown(nameOf(*point.now)) : left ? tr("skipped") : QString();
    auto* item = new QTreeWidgetItem(
        this, {name, valueOf(point.before), shown(whatIsExpected(point)), valueOf(point.now), verdict});
    if (point.before) item->setIcon(1, markIcon(markForVerdict(point.before->kind()), size, theme));
    if (point.now) item->setIcon(4, markIcon(markForVerdict(point.now->kind()), size, theme));
    item->setToolTip(0, name);
    item->setToolTip(2, shown(whereItIsFrom(point.expectedBy, point.asAt)));
    if (due == i) setCurrentItem(item);
  }
  fitRows();
}

void ProofTable::fitRows() {
  constexpr int aroundText = 4; // pixels
  const QRect room(0, 0, std::max(1, header()->sectionSize(0) - 2 * aroundText), 10'000);
  for (int row = 0; row < topLevelItemCount(); ++row) {
    QTreeWidgetItem* item = topLevelItem(row);
    const QRect text = fontMetrics().boundingRect(room, Qt::TextWordWrap, item->text(0));
    item->setSizeHint(0, QSize(0, text.height() + aroundText));
  }
}

} // namespace netmend
