#pragma once

#include <functional>
#include <memory>
#include <vector>

#include <QPainter>
#include <QRectF>

namespace netmend {

/// A piece of the sheet that is never cut in two.
struct Piece {
  double height = 0;
  std::function<void(QPainter&, QPointF topLeft)> paint;
  double spaceAbove = 0;             ///< not at the head of a page
  bool keepWithNext = false;         ///< a heading, the first line of a paragraph …
  std::shared_ptr<const Piece> head; ///< painted again above it where it comes first on a page
};

using Pieces = std::vector<Piece>;

struct PlacedPiece {
  const Piece* piece;
  double top;
};
using PlacedPage = std::vector<PlacedPiece>;

/// Fills pages one after the other. Pieces kept together go to the next page together, unless they would
/// not fit on one page at all. The pieces must outlive the result.
[[nodiscard]] std::vector<PlacedPage> paginate(const Pieces& pieces, const QRectF& firstBody,
                                               const QRectF& body);

void append(Pieces& pieces, Pieces more);

} // namespace netmend
