#pragma once

#include <functional>

#include <QWidget>

#include "netmend/sketch/typed_line.h"

class QLabel;
class QLineEdit;

namespace netmend {

/// The one line above the map: what is drawn next, in words, each with its meaning beneath it.
class DrawLine : public QWidget {
  Q_OBJECT

public:
  explicit DrawLine(const ChipSizes& sizes, QWidget* parent = nullptr);

  /// What the line means as it is typed.
  std::function<TypedLine(const QString&)> read;
  /// Opens it: what was typed last is marked, so that a letter begins anew.
  void open();
  void setHint(const QString& hint);
  void setText(const QString& text);
  [[nodiscard]] QString text() const;

Q_SIGNALS:
  void typed(const QString& text);
  void left(); ///< Escape

protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

private:
  void explain();
  const ChipSizes& sizes_;
  QLineEdit* edit_;
  QLabel* meanings_;
};

} // namespace netmend
