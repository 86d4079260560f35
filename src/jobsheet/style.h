#pragma once

#include <string>

#include <QFont>
#include <QRectF>
#include <QString>

#include "netmend/base/said.h"
#include "netmend/drawing/board_scene.h"
#include "netmend/jobsheet/job_sheet.h"

namespace netmend {

/// Page and letters. Units are tenths of a point (720 to the inch): fonts go by whole units, and
/// a tenth of a point is fine enough for any size.
struct SheetStyle {
  static constexpr int unitsPerInch = 720;
  static constexpr double point = 10.0;
  static constexpr double millimetre = unitsPerInch / 25.4;

  static constexpr double pixel = unitsPerInch / 96.0; ///< of CSS: sizes of `face` on paper

  QSizeF page;
  QRectF body; ///< where pieces go on pages after the first; between head and foot
  QRectF firstBody;
  QRectF customerBody; ///< of the customer's copy, down to the signatures
  QFont normal;
  QFont bold;
  QFont small;
  QFont heading;
  QFont title;
  PictureType picture;
};

/// Of everything that is printed.
[[nodiscard]] const PictureColors& sheetColors();

[[nodiscard]] SheetStyle sheetStyle(PaperSize paper);

/// Text from outside as the sheet takes it: valid Unicode, line ends as line separators, tabs as blanks,
/// no other control characters.
[[nodiscard]] QString cleaned(const std::string& text);

/// The same for what is said, in the language that the program has been set to.
[[nodiscard]] QString printed(const Said& said);

} // namespace netmend
