#include <cmath>

#include "painting.h"

namespace netmend {

namespace {

QColor mixedColour(const QColor& low, const QColor& high, double share) {
  const auto part = [&](int a, int b) {
    return static_cast<int>(std::lround((1.0 - share) * a + share * b));
  };
  return {part(low.red(), high.red()), part(low.green(), high.green()), part(low.blue(), high.blue())};
}

} // namespace

void paintDrops(const Painting& p) {
  constexpr double thinnest = 2.5;
  constexpr double widest = 8.0;
  p.painter.setBrush(Qt::NoBrush);
  for (const bool casing : {true, false})
    for (const OverlayDrop& drop : p.overlay.drops) {
      if (drop.points.empty()) continue;
      const double width = thinnest + (widest - thinnest) * drop.share.value + (casing ? 2.0 : 0.0);
      const QColor colour =
          casing ? p.colors.casing : mixedColour(p.colors.calm, p.colors.oddPlate, drop.share.value);
      p.painter.setPen(QPen(colour, width * p.unit, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
      const QPointF from = p.view.toPicture(drop.points.front());
      const QPointF to = p.view.toPicture(drop.points.back());
      if (from == to)
        p.painter.drawPoint(from);
      else
        p.painter.drawLine(from, to);
    }
}

} // namespace netmend
