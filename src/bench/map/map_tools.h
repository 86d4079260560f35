#pragma once

#include <vector>

#include <QCoreApplication>
#include <QLineEdit>
#include <QListWidget>

#include "copper_map.h"

class QStandardItemModel;

namespace netmend {

/// The search field beside a map: what is typed is looked for at once, Down and Up go through the list of
/// what was found, Return shows it on the map, Escape goes back to the map. The map must outlive it.
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

/// The board's layers from top to bottom; Space or a click goes from whole to dimmed to hidden. Call
/// `refresh` when the map's `onLayersChanged` says so. The map must outlive it.
class MapLayers : public QListWidget {
  Q_DECLARE_TR_FUNCTIONS(netmend::MapLayers)

public:
  explicit MapLayers(CopperMap& map, QWidget* parent = nullptr);
  void refresh();

protected:
  void keyPressEvent(QKeyEvent* event) override;

private:
  void turnOver(QListWidgetItem* item);
  CopperMap* map_;
};

} // namespace netmend
