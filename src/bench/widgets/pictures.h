#pragma once

#include <optional>

#include <QWidget>

#include "netmend/drawing/overlay.h"
#include "netmend/drawing/picture_colors.h"

namespace netmend {

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
