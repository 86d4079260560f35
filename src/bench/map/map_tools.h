#pragma once

#include <vector>

#include <QCoreApplication>
#include <QLineEdit>
#include <QListWidget>

#include "copper_map.h"

class QStandardItemModel;

namespace netmend {

/// The search field over a map: what is typed is looked for at once, Down and Up go through the list of what
/// was found, Return shows it on the map, Escape goes back to the map; both close it. The map must outlive
/// it.
class MapSearch : public QLineEdit {
  Q_DECLARE_TR_FUNCTIONS(netmend::MapSearch)

public:
  explicit MapSearch(CopperMap& map, QWidget* parent = nullptr);
  /// What the list holds now.
  [[nodiscard]] const std::vector<MapHit>& hits() const { return hits_; }

protected:
  void keyPressEvent(QKeyEvent* event) override;

private:
  void look(const QString& text);
  void choose(std::size_t index);

  CopperMap* map_;
  QStandardItemModel* list_;
  std::vector<MapHit> hits_;
};

/// The board's layers from top to bottom as chips: filled is shown, outlined dimmed, dotted hidden; Space or
/// a click goes on to the next of them, the arrow keys to the next layer. Call `refresh` when the map's
/// `onLayersChanged` says so. The map must outlive it.
class MapLayers : public QListWidget {
  Q_DECLARE_TR_FUNCTIONS(netmend::MapLayers)

public:
  explicit MapLayers(CopperMap& map, QWidget* parent = nullptr);
  void refresh();
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override { return sizeHint(); }

protected:
  void keyPressEvent(QKeyEvent* event) override;
  void changeEvent(QEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

private:
  void turnOver(QListWidgetItem* item);
  CopperMap* map_;
};

} // namespace netmend
