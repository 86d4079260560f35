#pragma once

#include <QWidget>

#include "band.h"

class QHBoxLayout;
class QLabel;
class QPushButton;

namespace netmend {

/// The foot of the window: on the left which board or line is worked on, then the one due thing, on the right
/// its keys.
class FootBar : public QWidget {
public:
  explicit FootBar(QWidget* parent = nullptr);
  void setMode(BandLook look, const QString& text);
  void setDue(const QString& text);
  [[nodiscard]] QString due() const;
  [[nodiscard]] QString mode() const { return mode_; }
  /// The page's keys, left of the window's own; null: none. They stay the page's.
  void showKeys(QWidget* keys);
  /// The window's own button, rightmost; the one that goes on, unless the page has one.
  void addOwn(QPushButton* button);

  /// What does not fit gives way by itself.
  [[nodiscard]] QSize minimumSizeHint() const override;

protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  bool event(QEvent* event) override;

private:
  void space();
  void layOut();
  void shareWithKeys();
  [[nodiscard]] int modeWidth() const;
  BandLook look_ = BandLook::job;
  QString mode_;
  QLabel* due_;
  QHBoxLayout* row_;
  QHBoxLayout* keys_;
  QWidget* shown_ = nullptr;
  QPushButton* own_ = nullptr;
};

} // namespace netmend
