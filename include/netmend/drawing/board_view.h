#pragma once

#include <QPointF>
#include <QRectF>
#include <QTransform>

#include "netmend/base/quantity.h"
#include "netmend/base/said.h"
#include "netmend/board/board.h"

namespace netmend {

/// Picture units (pixels on a screen, whatever the page uses on paper) per millimetre of board.
using PictureScale = Quantity<struct PictureScaleTag>;

/// From the board to a rectangle of a picture. Seen from the bottom, the board is turned over about
/// its vertical axis, as one turns it in the hand: what was left is right, up stays up.
struct BoardView {
  QRectF frame; ///< of the picture, in its units, y down
  Point middle; ///< of the board, shown in the frame's middle
  PictureScale scale{10.0};
  Side side = Side::top;
  Degrees turn; ///< of the picture, counter-clockwise as one looks at it

  /// To the nearest quarter.
  [[nodiscard]] PictureLie lie() const;
  /// From millimetres on the board (y up) to the picture.
  [[nodiscard]] QTransform transform() const;
  [[nodiscard]] QPointF toPicture(Point p) const;
  [[nodiscard]] Point toBoard(QPointF p) const;
  /// The part of the board that the frame shows; of a turned one the box round it.
  [[nodiscard]] Box shown() const { return shown(frame); }
  /// The same for a rectangle of the picture.
  [[nodiscard]] Box shown(const QRectF& rectangle) const;

  /// `steps` of a quarter, in when positive; the place under `at` stays where it is.
  /// The scale stays within 0.05 and 50000 units per millimetre.
  void zoom(double steps, QPointF at);
  /// Moves the picture by so many of its units.
  void pan(QPointF by);
  /// Turns the board over; the middle stays.
  void flip();
  friend bool operator==(const BoardView&, const BoardView&) = default;
};

/// Shows all of `box` in `frame`, with `margin` (a share of the frame) left free around it.
/// An empty box, or one without extent, gets a view of 20 mm.
[[nodiscard]] BoardView viewOf(const Box& box, const QRectF& frame, Side side = Side::top,
                               double margin = 0.04, Degrees turn = {});

/// Everything on the board that has a place. Empty for a board without coordinates.
[[nodiscard]] Box pictureExtent(const Board& board);

} // namespace netmend
