#pragma once

#include <functional>
#include <optional>
#include <vector>

#include <QCoreApplication>
#include <QWidget>

#include "netmend/drawing/board_scene.h"
#include "netmend/drawing/picture_colors.h"
#include "netmend/drawing/pin_strip.h"

namespace netmend {

/// A pin strip that fills its width. A click on a pin tells its index.
class StripView : public QWidget {
  Q_DECLARE_TR_FUNCTIONS(netmend::StripView)

public:
  explicit StripView(QWidget* parent = nullptr);
  void setStrip(PinStrip strip);
  void setTheme(PictureTheme theme);
  [[nodiscard]] const PinStrip& strip() const { return strip_; }
  [[nodiscard]] bool hasHeightForWidth() const override { return true; }
  [[nodiscard]] int heightForWidth(int width) const override;
  [[nodiscard]] QSize sizeHint() const override;

protected:
  void paintEvent(QPaintEvent* event) override;

private:
  [[nodiscard]] PictureType type() const;
  PinStrip strip_;
  PictureTheme theme_ = PictureTheme::light;
};

/// One of a connector's pins as it is drawn.
struct ConnectorPin {
  QString label;
  QPointF place; ///< any units, y down
  MarkShape shape = MarkShape::hollow;
  bool read = false;
  bool due = false;
  bool skipped = false;
};

/// A connector's pins as they lie, the due one ringed large. Can be turned and mirrored until it lies as the
/// board under the microscope does.
class ConnectorView : public QWidget {
  Q_DECLARE_TR_FUNCTIONS(netmend::ConnectorView)

public:
  explicit ConnectorView(QWidget* parent = nullptr);
  void setPins(std::vector<ConnectorPin> pins);
  void setTheme(PictureTheme theme);
  void turn();   ///< by a quarter, clockwise
  void mirror(); ///< left and right
  [[nodiscard]] int quarters() const { return quarters_; }
  /// As it lies: long beside its height, so that it wants a row of its own.
  [[nodiscard]] bool isLong() const;
  std::function<void(std::size_t)> onPin; ///< a pin was clicked
  [[nodiscard]] QSize sizeHint() const override { return {420, 150}; }

protected:
  void paintEvent(QPaintEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;

private:
  [[nodiscard]] std::vector<QPointF> turned() const;
  [[nodiscard]] std::vector<QPointF> places() const;
  [[nodiscard]] double pitch(const std::vector<QPointF>& places) const;
  std::vector<ConnectorPin> pins_;
  PictureTheme theme_ = PictureTheme::light;
  int quarters_ = 0;
  bool mirrored_ = false;
};

/// A verdict's shape, large.
class VerdictMark : public QWidget {
public:
  explicit VerdictMark(QWidget* parent = nullptr);
  /// None: nothing is drawn.
  void setShape(std::optional<MarkShape> shape);
  void setTheme(PictureTheme theme);

protected:
  void paintEvent(QPaintEvent* event) override;

private:
  std::optional<MarkShape> shape_;
  PictureTheme theme_ = PictureTheme::light;
};

} // namespace netmend
