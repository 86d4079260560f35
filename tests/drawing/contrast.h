#pragma once

#include <algorithm>
#include <cmath>

#include <QColor>

namespace netmend::testing {

/// Of an sRGB channel from 0 to 1.
inline double linear(double channel) {
  return channel <= 0.03928 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}

/// Relative luminance, 0 for black to 1 for white (WCAG 2.1, "relative luminance"; sRGB).
inline double relativeLuminance(const QColor& colour) {
  const QColor c = colour.toRgb();
  return 0.2126 * linear(c.redF()) + 0.7152 * linear(c.greenF()) + 0.0722 * linear(c.blueF());
}

/// From 1 to 21 (WCAG 2.1, "contrast ratio").
inline double contrastRatio(const QColor& a, const QColor& b) {
  const double x = relativeLuminance(a);
  const double y = relativeLuminance(b);
  return (std::max(x, y) + 0.05) / (std::min(x, y) + 0.05);
}

} // namespace netmend::testing
