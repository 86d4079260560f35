#include "theme.h"

#include <QApplication>
#include <QPalette>

#include "bench/widgets/face_style.h"
#include "bench/widgets/letters.h"
#include "netmend/drawing/face.h"

namespace netmend {

namespace {

QPalette widgetPalette(PictureTheme theme) {
  const FaceColors& colors = faceColors(theme);
  QPalette out;
  out.setColor(QPalette::Window, colors.ground);
  out.setColor(QPalette::WindowText, colors.ink);
  out.setColor(QPalette::Base, colors.field);
  out.setColor(QPalette::AlternateBase, colors.card);
  out.setColor(QPalette::Text, colors.ink);
  out.setColor(QPalette::PlaceholderText, colors.quiet);
  out.setColor(QPalette::Button, colors.card);
  out.setColor(QPalette::ButtonText, colors.ink);
  out.setColor(QPalette::Highlight, colors.accent);
  out.setColor(QPalette::HighlightedText, colors.onAccent);
  out.setColor(QPalette::ToolTipBase, colors.field);
  out.setColor(QPalette::ToolTipText, colors.ink);
  out.setColor(QPalette::BrightText, colors.onAccent);
  out.setColor(QPalette::Link, colors.accent);
  out.setColor(QPalette::LinkVisited, colors.odd); // see setOdd
  out.setColor(QPalette::Mid, colors.outline);
  out.setColor(QPalette::Midlight, colors.line);
  for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
    out.setColor(QPalette::Disabled, role, colors.quiet);
  return out;
}

} // namespace

void setFace(PictureTheme theme) {
  faceStyle().setTheme(theme);
  setFaceScale(faceScale());
  if (const QPalette palette = widgetPalette(theme); QApplication::palette() != palette)
    QApplication::setPalette(palette);
}

} // namespace netmend
