#pragma once

#include <functional>
#include <string>
#include <vector>

#include <QByteArray>
#include <QImage>
#include <QPointF>

#include "netmend/board/board.h"

namespace netmend::testing {

/// What a camera makes of a board. The picture is painted here and not by the program's own painter; how it
/// lies follows from a pinhole camera with a place and a tilt, not from the program's mapping.
struct Camera {
  Side side = Side::top;
  double pixelsPerMm = 20.0; ///< in the picture's middle
  double tiltX = 0.0;        ///< degrees, about the picture's axes
  double tiltY = 0.0;
  double turn = 0.0;
  double distanceMm = 250.0;
  double marginMm = 4.0; ///< of bench round the board, or round the part that is taken
  double barrel = 0.0;   ///< how much further in the corner is seen, as a share
  double blur = 0.7;     ///< pixels, standard deviation
  double noise = 3.0;    ///< grey levels, standard deviation
  double uneven = 0.25;  ///< how much darker the darkest corner is
  int jpegQuality = 88;
  unsigned seed = 1;
  Box part;          ///< empty: all of the board
  bool parts = true; ///< bodies with their terminals; else the bare board
};

struct TakenPhoto {
  QImage image;
  QByteArray jpeg; ///< the same after compression, which `image` has not seen
  /// Where a place of the board truly is in it, in pixels.
  std::function<QPointF(Point)> pixelOf;
};

[[nodiscard]] TakenPhoto takePhoto(const Board& board, const Camera& camera);

} // namespace netmend::testing
