#include "map_tools.h"

#include <algorithm>

#include <QAbstractItemView>
#include <QCompleter>
#include <QKeyEvent>
#include <QStandardItemModel>

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
}

void MapSearch::keyPressEvent(QKeyEvent* event) {
  const int key = event->key();
  if (key == Qt::Key_Escape) {
    completer()->popup()->hide();
    map_->setFocus(Qt::OtherFocusReason);
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
    item(row)->setData(Qt::UserRole, QVariant::fromValue<qulonglong>(id.value));
    item(row)->setText(
        tr("%1: %2").arg(QString::fromStdString(layer != nullptr ? layer->name : std::string()),
                         showWord(map_->layerShow(id))));
  }
  if (currentRow() < 0 && count() > 0) setCurrentRow(0);
}

void MapLayers::turnOver(QListWidgetItem* item) {
  if (item == nullptr) return;
  const LayerId id(item->data(Qt::UserRole).toULongLong());
  map_->setLayerShow(id, after(map_->layerShow(id)));
  refresh();
}

void MapLayers::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Space)
    turnOver(currentItem());
  else
    QListWidget::keyPressEvent(event);
}

} // namespace netmend
