#pragma once

#include <vector>

#include <QLineF>
#include <QRectF>

namespace netmend {

/// Finds room for labels beside what they name.
class LabelPlacer {
public:
  explicit LabelPlacer(const QRectF& frame) : frame_(frame) {}

  /// `weight`: how bad it is to cover it, 1 for what must be seen.
  void occupy(const QRectF& box, double weight = 1.0) { taken_.push_back({box, weight}); }
  void avoid(const QLineF& line) { lines_.push_back(line); }

  /// A box of this size near `anchor`, at least `gap` away from it: the one of some seventy places that
  /// covers least and stays in the frame. Taken from then on.
  [[nodiscard]] QRectF place(QSizeF size, QPointF anchor, double gap);
  /// Middle on `anchor` where that covers nothing, otherwise as above.
  [[nodiscard]] QRectF placeOver(QSizeF size, QPointF anchor, double gap);

  /// Nothing that must be seen is under it.
  [[nodiscard]] bool isFree(const QRectF& box) const;

private:
  struct Taken {
    QRectF box;
    double weight;
  };
  [[nodiscard]] double cost(const QRectF& box) const;

  QRectF frame_;
  std::vector<Taken> taken_;
  std::vector<QLineF> lines_;
};

} // namespace netmend
