#pragma once

#include <vector>

#include <QLineF>
#include <QRectF>

namespace netmend {

/// Finds room for labels beside what they name.
class LabelPlacer {
public:
  explicit LabelPlacer(const QRectF& frame) : frame_(frame) {}

  void occupy(const QRectF& box) { taken_.push_back({box, 1.0, true}); }
  /// Of a part's name, which is half lost where its edge is covered: other labels go further for it, but
  /// names of parts that touch stand where they are.
  void occupyName(const QRectF& box) { taken_.push_back({box, 3.0, false}); }
  void avoid(const QLineF& line) { lines_.push_back(line); }

  /// A box of this size near `anchor`, at least `gap` away from it: the one of some seventy places that
  /// covers least and stays in the frame. Taken from then on.
  [[nodiscard]] QRectF place(QSizeF size, QPointF anchor, double gap);
  /// Middle on `anchor` where that covers nothing, otherwise as above.
  [[nodiscard]] QRectF placeOver(QSizeF size, QPointF anchor, double gap);

  /// How bad a box would be: 0 covers nothing and is in the frame.
  [[nodiscard]] double cost(const QRectF& box) const;
  /// Nothing but names is under it.
  [[nodiscard]] bool isFree(const QRectF& box) const;

private:
  struct Taken {
    QRectF box;
    double weight; ///< how bad it is to cover it
    bool blocks;
  };

  QRectF frame_;
  std::vector<Taken> taken_;
  std::vector<QLineF> lines_;
};

} // namespace netmend
