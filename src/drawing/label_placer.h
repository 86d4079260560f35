#pragma once

#include <vector>

#include <QLineF>
#include <QRectF>

namespace netmend {

/// Finds room for labels beside what they name.
class LabelPlacer {
public:
  explicit LabelPlacer(const QRectF& frame) : frame_(frame) {}

  void occupy(const QRectF& box) { taken_.push_back(box); }
  void avoid(const QLineF& line) { lines_.push_back(line); }

  /// A box of this size near `anchor`, at least `gap` away from it: the one of some fifty places that
  /// covers least and stays in the frame. Taken from then on.
  [[nodiscard]] QRectF place(QSizeF size, QPointF anchor, double gap);

private:
  [[nodiscard]] double cost(const QRectF& box) const;

  QRectF frame_;
  std::vector<QRectF> taken_;
  std::vector<QLineF> lines_;
};

} // namespace netmend
