#pragma once

#include <vector>

#include <QListWidget>
#include <QStyledItemDelegate>

#include "netmend/base/id.h"

namespace netmend {

/// A part in the list of those that can be walked.
struct PartRow {
  PartId id;
  QString text; ///< all of it in words
  QString name;
  int pins = 0;
  QString what;
  bool connector = false;
  QString walks; ///< on how many good boards; empty: none
  QString also;  ///< by which it is found as well, folded: its pins and their nets
};

/// The parts of a board, connectors large and first: name, pins, what it is and how many good boards it was
/// walked on.
class PartRows : public QListWidget {
public:
  explicit PartRows(QWidget* parent = nullptr);
  void setRows(const std::vector<PartRow>& rows, PartId current);
  [[nodiscard]] PartId chosen() const;
  [[nodiscard]] QString chosenName() const;
  void choose(PartId id);
  /// Leaves those with the words in their name, value, pins or nets.
  void filter(const QString& words);
  [[nodiscard]] QSize minimumSizeHint() const override { return {0, 0}; }

protected:
  void changeEvent(QEvent* event) override;
};

} // namespace netmend
