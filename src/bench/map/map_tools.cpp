#include "map_tools.h"

#include <algorithm>

#include <QAbstractItemView>
#include <QCompleter>
#include <QKeyEvent>
#include <QPainter>
#include <QStandardItemModel>
#include <QStyledItemDelegate>

namespace netmend {

namespace {

constexpr std::size_t mostHits = 30;

QString kindWord(MapHitKind kind) {
  switch (kind) {
  case MapHitKind::part:
    return QCoreApplication::translate("netmend::MapSearch", "part");
  case MapHitKind::pin:
    return QCoreApplication::translate("netmend::MapSearch", "pin");
  case MapHitKind::net:
    return QCoreApplication::translate("netmend::MapSearch", "net");
  }
  return {};
}

QString lineOf(const MapHit& hit) {
  QString text = kindWord(hit.kind) + QLatin1Char(' ') + QString::fromStdString(hit.name);
  if (!hit.detail.empty()) text += QStringLiteral("    ") + QString::fromStdString(hit.detail);
  return text;
}

QString showWord(LayerShow show) {
  switch (show) {
  case LayerShow::whole:
    return QCoreApplication::translate("netmend::MapLayers", "shown");
  case LayerShow::dimmed:
    return QCoreApplication::translate("netmend::MapLayers", "dimmed");
  case LayerShow::hidden:
    return QCoreApplication::translate("netmend::MapLayers", "hidden");
  }
  return {};
}

/// Roles of an item of the list of layers.
constexpr int idRole = Qt::UserRole;
constexpr int nameRole = Qt::UserRole + 1;
constexpr int showRole = Qt::UserRole + 2;

/// Told apart without colour: filled, outlined, dotted.
class ChipPainter : public QStyledItemDelegate {
public:
  ChipPainter(const CopperMap& map, QObject* parent) : QStyledItemDelegate(parent), map_(&map) {}

  [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const QFontMetrics& metrics = option.fontMetrics;
    return {metrics.horizontalAdvance(nameOf(metrics, index)) + metrics.height() * 3 / 2,
            metrics.height() * 7 / 4};
  }

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const PictureColors colors = pictureColors(map_->theme());
    const auto show = static_cast<LayerShow>(index.data(showRole).toInt());
    const bool whole = show == LayerShow::whole;
    const double unit = option.fontMetrics.height() / 16.0;
    const bool hasKeys = option.state.testFlag(QStyle::State_HasFocus);
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    QPen pen(hasKeys ? colors.due : whole ? colors.ink : colors.body, (hasKeys ? 2.5 : 1.2) * unit);
    if (show == LayerShow::hidden && !hasKeys) pen.setStyle(Qt::DotLine);
    painter->setPen(pen);
    painter->setBrush(whole ? colors.ink : colors.labelGround);
    const double gap = 2 * unit;
    painter->drawRoundedRect(QRectF(option.rect).adjusted(gap, gap, -gap, -gap), 4 * unit, 4 * unit);
    if (show == LayerShow::hidden && hasKeys) {
      painter->setPen(QPen(colors.body, unit, Qt::DotLine));
      painter->drawRoundedRect(QRectF(option.rect).adjusted(3 * gap, 3 * gap, -3 * gap, -3 * gap), 2, 2);
    }
    painter->setFont(option.font);
    painter->setPen(whole ? colors.labelGround : show == LayerShow::hidden ? colors.quietInk : colors.ink);
    painter->drawText(option.rect, Qt::AlignCenter, nameOf(option.fontMetrics, index));
    painter->restore();
  }

private:
  [[nodiscard]] static QString nameOf(const QFontMetrics& metrics, const QModelIndex& index) {
    return metrics.elidedText(index.data(nameRole).toString(), Qt::ElideMiddle, metrics.height() * 7);
  }
  const CopperMap* map_;
};

LayerShow after(LayerShow show) {
  if (show == LayerShow::whole) return LayerShow::dimmed;
  return show == LayerShow::dimmed ? LayerShow::hidden : LayerShow::whole;
}

} // namespace

MapSearch::MapSearch(CopperMap& map, QWidget* parent)
    : QLineEdit(parent), map_(&map), list_(new QStandardItemModel(this)) {
  setPlaceholderText(tr("Part, pin, net or value"));
  setAccessibleName(tr("Search the board"));
  // Its picture, and all that Qt looks through to read one, are not wanted before there is something to
  // clear.
  connect(this, &QLineEdit::textChanged, this, [this] { setClearButtonEnabled(true); });
  auto* completer = new QCompleter(list_, this);
  completer->setCompletionMode(QCompleter::UnfilteredPopupCompletion);
  completer->setMaxVisibleItems(12);
  setCompleter(completer);
  connect(this, &QLineEdit::textEdited, this, [this](const QString& text) { look(text); });
  connect(completer, qOverload<const QModelIndex&>(&QCompleter::activated), this,
          [this](const QModelIndex& index) { choose(static_cast<std::size_t>(std::max(0, index.row()))); });
}

void MapSearch::look(const QString& text) {
  hits_ = map_->find(text.toStdString(), mostHits);
  list_->clear();
  for (const MapHit& hit : hits_) {
    auto* item = new QStandardItem(lineOf(hit));
    item->setData(QString::fromStdString(hit.name), Qt::EditRole);
    item->setData(lineOf(hit), Qt::DisplayRole);
    list_->appendRow(item);
  }
}

void MapSearch::choose(std::size_t index) {
  if (index >= hits_.size()) return;
  const MapHit hit = hits_[index];
  setText(QString::fromStdString(hit.name));
  completer()->popup()->hide();
  map_->show(hit);
  map_->setFocus(Qt::OtherFocusReason);
  hide();
}

void MapSearch::keyPressEvent(QKeyEvent* event) {
  const int key = event->key();
  if (key == Qt::Key_Escape) {
    completer()->popup()->hide();
    map_->setFocus(Qt::OtherFocusReason);
    hide();
  } else if (key == Qt::Key_Return || key == Qt::Key_Enter) {
    // Nothing picked from the list: the first is meant.
    choose(0);
  } else {
    QLineEdit::keyPressEvent(event);
  }
}

MapLayers::MapLayers(CopperMap& map, QWidget* parent) : QListWidget(parent), map_(&map) {
  setAccessibleName(tr("Layers"));
  setAccessibleDescription(tr("Space shows a layer whole, dimmed or not at all"));
  setItemDelegate(new ChipPainter(map, this));
  map.installEventFilter(this); // of its width they take half
  setFlow(QListView::LeftToRight);
  setWrapping(true);
  setResizeMode(QListView::Adjust);
  setFrameShape(QFrame::NoFrame);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
  viewport()->setAutoFillBackground(false);
  setAutoFillBackground(false);
  connect(this, &QListWidget::itemClicked, this, [this](QListWidgetItem* item) { turnOver(item); });
  refresh();
}

void MapLayers::refresh() {
  const Board* board = map_->board();
  const std::vector<LayerId> order = board != nullptr ? board->info.layerOrder : std::vector<LayerId>();
  while (count() > static_cast<int>(order.size()))
    delete takeItem(count() - 1);
  while (count() < static_cast<int>(order.size()))
    addItem(QString());
  for (int row = 0; row < count(); ++row) {
    const LayerId id = order[static_cast<std::size_t>(row)];
    const Layer* layer = board->layers.find(id);
    const QString name = QString::fromStdString(layer != nullptr ? layer->name : std::string());
    item(row)->setData(idRole, QVariant::fromValue<qulonglong>(id.value));
    item(row)->setData(nameRole, name);
    item(row)->setData(showRole, static_cast<int>(map_->layerShow(id)));
    item(row)->setText(tr("%1: %2").arg(name, showWord(map_->layerShow(id))));
    item(row)->setToolTip(item(row)->text());
  }
  if (currentRow() < 0 && count() > 0) setCurrentRow(0);
  updateGeometry();
}

void MapLayers::turnOver(QListWidgetItem* item) {
  if (item == nullptr) return;
  const LayerId id(item->data(idRole).toULongLong());
  map_->setLayerShow(id, after(map_->layerShow(id)));
  refresh();
}

QSize MapLayers::sizeHint() const {
  QStyleOptionViewItem option;
  initViewItemOption(&option);
  option.fontMetrics = fontMetrics();
  int width = 0;
  int height = 0;
  for (int row = 0; row < count(); ++row) {
    const QSize chip = itemDelegate()->sizeHint(option, model()->index(row, 0));
    width += chip.width();
    height = chip.height();
  }
  // No more than half of the map, in as many rows as that takes.
  const int most = std::max(map_->width() / 2, 8 * height);
  const int rows = most > 0 ? (width + most - 1) / most : 1;
  return {std::min(width, most) + 4, std::min(rows + (rows > 1 ? 1 : 0), 4) * height + 1};
}

void MapLayers::changeEvent(QEvent* event) {
  QListWidget::changeEvent(event);
  if (event->type() == QEvent::FontChange) {
    scheduleDelayedItemsLayout();
    updateGeometry();
  }
}

bool MapLayers::eventFilter(QObject* watched, QEvent* event) {
  if (watched == map_ && event->type() == QEvent::Resize) updateGeometry();
  return QListWidget::eventFilter(watched, event);
}

void MapLayers::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Space)
    turnOver(currentItem());
  else
    QListWidget::keyPressEvent(event);
}

} // namespace netmend
