#include "netmend/drawing/picture_colors.h"

#include <cmath>

namespace netmend {

namespace {

/// So much of the first, the rest of the second.
QColor mixed(const QColor& first, const QColor& second, double share) {
  const auto part = [&](int a, int b) { return static_cast<int>(std::lround(share * a + (1 - share) * b)); };
  return {part(first.red(), second.red()), part(first.green(), second.green()),
          part(first.blue(), second.blue())};
}

QColor clear(QColor color, int alpha) {
  color.setAlpha(alpha);
  return color;
}

} // namespace

PictureColors::PictureColors(const FaceColors& face)
    : paper(face.card), substrate(face.board), edge(face.boardEdge),
      copperArea(mixed(face.copper, face.board, 0.4)), copper(mixed(face.pad, face.copper, 0.5)),
      quietCopper(face.copper), pad(face.pad), quietPad(face.padQuiet),
      buried(mixed(face.copper, face.board, 0.75)), buriedArea(mixed(face.copper, face.board, 0.15)),
      body(face.body), farBody(mixed(face.body, face.board, 0.5)), farPad(mixed(face.body, face.board, 0.4)),
      hole(face.card), ink(face.ink), quietInk(face.quiet), padInk(face.ink), litInk(face.plate),
      holeInk(face.ink), labelGround(face.plate), lit(face.net), litCore(mixed(face.net, face.board, 0.3)),
      litOnPhoto(face.accent), litEdge(face.net), litArea(clear(face.net, 60)), zone(face.zone),
      zoneEdge(face.zoneInk), suspect(face.oddFill), casing(face.plate), wire(face.accent),
      wireEdge(face.ink), lane(face.shade), grid(face.line), range(face.calmTint), due(face.accent),
      dueInk(face.onAccent), calm(face.calm), odd(face.oddFill), oddPlate(face.odd), oddInk(face.card),
      darkGround(face.ink.lightness() > face.card.lightness()) {
  // Names of pads have to be read, whatever the pad.
  if (darkGround) {
    padInk = face.plate;
    quietPad = mixed(face.pad, face.padQuiet, 0.7);
  }
}

PictureColors::PictureColors() : PictureColors(faceColors(PictureTheme::light)) {
  paper = hole = casing = QColor(0xFF, 0xFF, 0xFF);
}

PictureColors pictureColors(PictureTheme theme) {
  return PictureColors(faceColors(theme));
}

} // namespace netmend
