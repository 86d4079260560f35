#pragma once

#include <memory>

#include <QCoreApplication>
#include <QPixmap>
#include <QWidget>

#include "netmend/drawing/board_scene.h"
#include "netmend/drawing/overlay.h"

namespace netmend {

/// A piece of the board, painted once for each size and theme.
class BoardClip : public QWidget {
  Q_DECLARE_TR_FUNCTIONS(netmend::BoardClip)

public:
  explicit BoardClip(QWidget* parent = nullptr);
  /// `plate` names the place, along the lower edge; empty: none.
  void showPlace(const Box& box, Side side, Overlay overlay, const QString& plate = {});
  /// Null: not made ready yet.
  void setScene(std::shared_ptr<const BoardScene> scene);
  [[nodiscard]] QSize sizeHint() const override { return {200, 100}; }
  [[nodiscard]] QSize minimumSizeHint() const override { return {40, 40}; }

protected:
  void paintEvent(QPaintEvent* event) override;

private:
  [[nodiscard]] QPixmap painted() const;
  void paintScale(QPainter& painter, const BoardView& view) const;
  std::shared_ptr<const BoardScene> scene_;
  Box box_;
  Side side_ = Side::top;
  Overlay overlay_;
  QString plate_;
  QPixmap cache_;
  PictureTheme cachedFor_ = PictureTheme::light;
};

} // namespace netmend
