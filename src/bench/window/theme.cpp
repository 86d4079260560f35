#include "theme.h"

namespace netmend {

QPalette widgetPalette(PictureTheme theme) {
  struct Set {
    QColor window, base, alternate, text, quiet, button, highlight, highlighted;
  };
  Set set{QColor(0xF4, 0xF3, 0xF0), QColor(0xFF, 0xFF, 0xFF), QColor(0xEF, 0xEE, 0xEA),
          QColor(0x14, 0x14, 0x14), QColor(0x5A, 0x5A, 0x5A), QColor(0xE7, 0xE5, 0xE0),
          QColor(0x00, 0x5A, 0x8E), QColor(0xFF, 0xFF, 0xFF)};
  if (theme == PictureTheme::dark)
    set = {QColor(0x1E, 0x1F, 0x21), QColor(0x16, 0x17, 0x18), QColor(0x26, 0x27, 0x2A),
           QColor(0xEC, 0xEC, 0xEA), QColor(0xA8, 0xA8, 0xA6), QColor(0x34, 0x36, 0x39),
           QColor(0x56, 0xB4, 0xE9), QColor(0x10, 0x10, 0x10)};
  if (theme == PictureTheme::highContrast)
    set = {QColor(0x00, 0x00, 0x00), QColor(0x00, 0x00, 0x00), QColor(0x10, 0x10, 0x10),
           QColor(0xFF, 0xFF, 0xFF), QColor(0xFF, 0xFF, 0xFF), QColor(0x1C, 0x1C, 0x1C),
           QColor(0xF0, 0xE4, 0x42), QColor(0x00, 0x00, 0x00)};
  QPalette out;
  out.setColor(QPalette::Window, set.window);
  out.setColor(QPalette::WindowText, set.text);
  out.setColor(QPalette::Base, set.base);
  out.setColor(QPalette::AlternateBase, set.alternate);
  out.setColor(QPalette::Text, set.text);
  out.setColor(QPalette::PlaceholderText, set.quiet);
  out.setColor(QPalette::Button, set.button);
  out.setColor(QPalette::ButtonText, set.text);
  out.setColor(QPalette::Highlight, set.highlight);
  out.setColor(QPalette::HighlightedText, set.highlighted);
  out.setColor(QPalette::ToolTipBase, set.base);
  out.setColor(QPalette::ToolTipText, set.text);
  out.setColor(QPalette::BrightText, set.highlighted);
  out.setColor(QPalette::Link, set.highlight);
  out.setColor(QPalette::Mid, set.quiet);
  for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
    out.setColor(QPalette::Disabled, role, set.quiet);
  return out;
}

} // namespace netmend
