#include "style.h"
#include "netmend/drawing/shown.h"

#include <algorithm>

namespace netmend {

const PictureColors& sheetColors() {
  static const PictureColors colors;
  return colors;
}

SheetStyle sheetStyle(PaperSize paper) {
  SheetStyle style;
  const double mm = SheetStyle::millimetre;
  // ISO 216 A4; ANSI/ASME Y14.1 size A.
  style.page = paper == PaperSize::a4 ? QSizeF(210 * mm, 297 * mm) : QSizeF(215.9 * mm, 279.4 * mm);
  const double side = 17 * mm;
  const double top = 15 * mm;
  const double foot = 18 * mm;
  style.firstBody = QRectF(side, top, style.page.width() - 2 * side, style.page.height() - top - foot);
  style.body = style.firstBody.adjusted(0, 8 * mm, 0, 0);
  const double px = SheetStyle::pixel;
  style.customerBody =
      QRectF(76 * px, 56 * px, style.page.width() - 152 * px, style.page.height() - 104 * px);
  const auto sized = [](double points, bool bold) {
    QFont font = pictureType(points * SheetStyle::point).font;
    font.setBold(bold);
    return font;
  };
  style.normal = sized(9, false);
  style.bold = sized(9, true);
  style.small = sized(7.8, false);
  style.heading = sized(11.5, true);
  style.title = sized(19, true);
  style.picture = pictureType(7.2 * SheetStyle::point);
  style.picture.smallest = 4.6 * SheetStyle::point;
  return style;
}

QString cleaned(const std::string& text) {
  QString in = QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
  in.replace(QLatin1String("\r\n"), QLatin1String("\n"));
  QString out;
  out.reserve(in.size());
  for (const QChar c : in) {
    if (c == QLatin1Char('\n') || c == QLatin1Char('\r') || c == QChar::ParagraphSeparator)
      out += QChar(QChar::LineSeparator);
    else if (c == QLatin1Char('\t'))
      out += QLatin1Char(' ');
    else if (c.category() != QChar::Other_Control)
      out += c;
  }
  while (out.endsWith(QChar(QChar::LineSeparator)) || out.endsWith(QLatin1Char(' ')))
    out.chop(1);
  return out;
}

QString printed(const Said& said) {
  return cleaned(shown(said).toStdString());
}

} // namespace netmend
