#pragma once

#include <QColor>

#include "netmend/drawing/palette.h"

namespace netmend {

enum class PictureTheme { light, dark, highContrast };

/// The colours of one picture. As made without arguments it is what paper gets. Everything written keeps a
/// contrast of at least 4.5 to 1 against what it stands on (WCAG 2.1, success criterion 1.4.3).
struct PictureColors {
  QColor paper = palette::paper; ///< around the board
  QColor substrate = palette::substrate;
  QColor edge = palette::edge;
  QColor copperArea = palette::copperArea;
  QColor copper = palette::copper;
  QColor quietCopper = palette::copper.lighter(112); ///< beside a lit net all else steps back
  QColor pad = palette::pad;
  QColor quietPad = palette::pad.lighter(112);
  QColor buried = palette::buried;                    ///< tracks seen through the board
  QColor buriedArea = palette::substrate.darker(103); ///< areas seen through the board
  QColor body = palette::body;                        ///< outlines of parts
  QColor farBody = palette::copper;                   ///< the same, seen through the board
  QColor farPad = palette::buried.darker(115);        ///< outlines of pads seen through the board
  QColor hole = palette::paper;                       ///< drilled
  QColor ink = palette::black;                   ///< text and thin lines on `paper` and on labels' grounds
  QColor quietInk = palette::quietText;          ///< text of less weight, on `paper`
  QColor padInk = palette::black;                ///< names on pads
  QColor litInk = palette::paper;                ///< names on lit pads; on `litCore` they are in `ink`
  QColor holeInk = palette::black;               ///< names in drilled holes
  QColor labelGround{0xFF, 0xFF, 0xFF};          ///< under labels
  QColor lit = palette::blue;                    ///< a lit net on the side seen
  QColor litCore = palette::litCore;             ///< of what is lit but not on the side seen
  QColor litOnPhoto = palette::blue;             ///< a lit net over a photo
  QColor litEdge = palette::black;               ///< round lit pads
  QColor litArea{0x56, 0xB4, 0xE9, 90};          ///< lit areas
  QColor zone = palette::orange;                 ///< hatch
  QColor zoneEdge = palette::orange.darker(125); ///< outline of a zone
  QColor suspect = palette::vermillion;          ///< stretches that may be broken
  QColor casing = palette::paper; ///< round marks and wires, to keep them apart from what they lie on
  QColor wire = palette::bluishGreen.lighter(120); ///< a jumper's dashes
  QColor wireEdge = palette::black;                ///< round a jumper's dashes
  QColor lane{0xEE, 0xEE, 0xEE};                   ///< where a strip shows OL
  QColor grid{0xD0, 0xD0, 0xD0};                   ///< lines across a strip
  bool darkGround = false;

  /// The same colour, further away from the ground.
  [[nodiscard]] QColor stronger(const QColor& colour) const {
    return darkGround ? colour.lighter(150) : colour.darker(130);
  }
};

[[nodiscard]] PictureColors pictureColors(PictureTheme theme);

} // namespace netmend
