#pragma once

#include <QColor>

#include "netmend/drawing/picture_colors.h"

namespace netmend {

/// The colours of the window, each with one job (docs/design-notes.md). Text keeps a contrast of at least 4.5
/// to 1 against whatever it stands on, outlines one of 3 to 1 (WCAG 2.1, success criteria 1.4.3 and 1.4.11).
struct FaceColors {
  QColor ground;  ///< the bench
  QColor card;    ///< what lies on it
  QColor field;   ///< what can be typed into
  QColor shade;   ///< pressed, or done with
  QColor line;    ///< separates and says nothing
  QColor outline; ///< of fields, lists and buttons
  QColor ink;
  QColor quiet;    ///< text of less weight
  QColor accent;   ///< what is due, or has the keys
  QColor onAccent; ///< text on it
  int hair = 1;    ///< width of an outline
  int edge = 2;    ///< of what has the keys
};

[[nodiscard]] const FaceColors& faceColors(PictureTheme theme);

} // namespace netmend
