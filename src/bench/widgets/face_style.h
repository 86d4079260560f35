#pragma once

#include <QProxyStyle>

#include "netmend/drawing/picture_colors.h"

namespace netmend {

/// How buttons, fields and lists are painted: flat, with an outline that is seen in every theme, and a wider
/// one in the accent's colour round what has the keys. A checked button is a filled block. All else is
/// Fusion's.
class FaceStyle : public QProxyStyle {
public:
  FaceStyle();
  void setTheme(PictureTheme theme) { theme_ = theme; }
  [[nodiscard]] PictureTheme theme() const { return theme_; }

  void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                     const QWidget* widget) const override;
  void drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                   const QWidget* widget) const override;
  [[nodiscard]] QRect subElementRect(SubElement element, const QStyleOption* option,
                                     const QWidget* widget) const override;
  [[nodiscard]] QRect subControlRect(ComplexControl control, const QStyleOptionComplex* option,
                                     SubControl which, const QWidget* widget) const override;

private:
  PictureTheme theme_ = PictureTheme::light;
};

/// The theme of all widgets.
[[nodiscard]] PictureTheme faceTheme();

/// The one that the application has; it is set with the first call.
[[nodiscard]] FaceStyle& faceStyle();

} // namespace netmend
