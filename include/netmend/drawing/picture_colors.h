#pragma once

#include <QColor>

#include "netmend/drawing/face.h"

namespace netmend {

/// The colours of one picture, made of the face's. Everything written keeps a contrast of at least 4.5 to 1
/// against what it stands on (WCAG 2.1, success criterion 1.4.3). As made without arguments it is what paper
/// gets.
struct PictureColors {
  PictureColors();
  /// On a card of the window.
  explicit PictureColors(const FaceColors& face);

  QColor paper; ///< around the board
  QColor substrate;
  QColor edge;
  QColor copperArea;
  QColor copper;
  QColor quietCopper; ///< beside a lit net all else steps back
  QColor pad;
  QColor quietPad;
  QColor buried;      ///< tracks seen through the board
  QColor buriedArea;  ///< areas seen through the board
  QColor body;        ///< outlines of parts
  QColor farBody;     ///< the same, seen through the board
  QColor farPad;      ///< outlines of pads seen through the board
  QColor hole;        ///< drilled
  QColor ink;         ///< text and thin lines on `paper` and on labels' grounds
  QColor quietInk;    ///< text of less weight, on `paper`
  QColor padInk;      ///< names on pads
  QColor litInk;      ///< names on lit pads; on `litCore` they are in `ink`
  QColor holeInk;     ///< names in drilled holes
  QColor labelGround; ///< under labels
  QColor lit;         ///< a lit net on the side seen
  QColor litCore;     ///< of what is lit but not on the side seen
  QColor litOnPhoto;  ///< a lit net over a photo
  QColor litEdge;     ///< round lit pads
  QColor litArea;     ///< lit areas
  QColor zone;        ///< hatch
  QColor zoneEdge;    ///< outline of a zone
  QColor suspect;     ///< stretches that may be broken
  QColor casing;      ///< round marks and wires, to keep them apart from what they lie on
  QColor wire;        ///< a jumper's dashes
  QColor wireEdge;    ///< round a jumper's dashes
  QColor lane;        ///< where a strip shows OL
  QColor grid;        ///< lines across a strip
  QColor range;       ///< what good boards read
  QColor due;         ///< the point that is due
  QColor dueInk;      ///< text on it
  QColor calm;        ///< marks of what is in range
  QColor odd;         ///< marks of what is not
  QColor oddPlate;    ///< under a suspect's letter
  QColor oddInk;      ///< text on it
  bool darkGround = false;

  /// The same colour, further away from the ground.
  [[nodiscard]] QColor stronger(const QColor& colour) const {
    return darkGround ? colour.lighter(150) : colour.darker(130);
  }
};

[[nodiscard]] PictureColors pictureColors(PictureTheme theme);

} // namespace netmend
