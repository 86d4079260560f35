#pragma once

#include <functional>
#include <vector>

#include <QWidget>

#include "netmend/casework/hand_repair.h"

class QLabel;
class QLineEdit;
class QPushButton;

namespace netmend {

/// A repair by hand: its kind by one key, what is worked on and why in one line.
class HandRepairCard : public QWidget {
  Q_OBJECT

public:
  explicit HandRepairCard(QWidget* parent = nullptr);
  /// The kind of this number, from 0; false: there is none. The line has the keys then.
  bool choose(std::size_t kind);
  void clear();
  [[nodiscard]] QWidget* field() const;
  std::function<void(const HandRepair&)> onTyped;

private:
  void showKind();
  void type();

  std::vector<QPushButton*> kinds_;
  std::size_t chosen_ = 0;
  QLineEdit* line_;
};

} // namespace netmend
