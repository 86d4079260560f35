#include "netmend/drawing/picture_colors.h"

#include <algorithm>
#include <cmath>

namespace netmend {

namespace {

PictureColors darkColors() {
  PictureColors c;
  c.darkGround = true;
  c.paper = QColor(0x17, 0x19, 0x1C);
  c.substrate = QColor(0x24, 0x27, 0x2B);
  c.edge = QColor(0x9A, 0x98, 0x92);
  c.copperArea = QColor(0x35, 0x38, 0x3C);
  c.copper = QColor(0x66, 0x6A, 0x70);
  c.quietCopper = QColor(0x55, 0x58, 0x5D);
  c.pad = QColor(0x9C, 0xA0, 0xA6);
  c.quietPad = QColor(0x86, 0x8A, 0x90);
  c.buried = QColor(0x44, 0x47, 0x4C);
  c.buriedArea = QColor(0x2A, 0x2D, 0x31);
  c.body = QColor(0xC8, 0xC8, 0xC8);
  c.farBody = QColor(0x6E, 0x71, 0x76);
  c.farPad = QColor(0x62, 0x65, 0x6A);
  c.hole = c.paper;
  c.ink = QColor(0xF2, 0xF2, 0xF2);
  c.quietInk = QColor(0xA8, 0xA8, 0xA8);
  c.padInk = palette::black;
  c.litInk = palette::black;
  c.holeInk = c.ink;
  c.labelGround = QColor(0x17, 0x19, 0x1C);
  c.lit = palette::skyBlue;
  c.litCore = QColor(0x14, 0x42, 0x5E);
  c.litEdge = QColor(0xFF, 0xFF, 0xFF);
  c.litArea = QColor(0x56, 0xB4, 0xE9, 80);
  c.zoneEdge = palette::orange;
  c.suspect = QColor(0xE8, 0x75, 0x1A);
  c.casing = c.paper;
  c.wire = palette::bluishGreen.lighter(140);
  c.wireEdge = c.paper;
  c.lane = QColor(0x2C, 0x30, 0x35);
  c.grid = QColor(0x45, 0x49, 0x4E);
  return c;
}

PictureColors highContrastColors() {
  PictureColors c;
  c.darkGround = true;
  c.paper = c.substrate = c.hole = c.labelGround = c.casing = c.wireEdge = palette::black;
  c.edge = c.ink = c.quietInk = c.holeInk = c.body = palette::paper;
  c.copperArea = QColor(0x30, 0x30, 0x30);
  c.copper = QColor(0x90, 0x90, 0x90);
  c.quietCopper = QColor(0x70, 0x70, 0x70);
  c.pad = QColor(0xD8, 0xD8, 0xD8);
  c.quietPad = QColor(0xB0, 0xB0, 0xB0);
  c.buried = QColor(0x58, 0x58, 0x58);
  c.buriedArea = QColor(0x1A, 0x1A, 0x1A);
  c.farBody = QColor(0x90, 0x90, 0x90);
  c.farPad = QColor(0x90, 0x90, 0x90);
  c.padInk = palette::black;
  c.litInk = palette::black;
  c.lit = palette::yellow;
  c.litCore = QColor(0x50, 0x4C, 0x00);
  c.litEdge = palette::paper;
  c.litArea = QColor(0xF0, 0xE4, 0x42, 90);
  c.zoneEdge = palette::orange;
  c.suspect = QColor(0xFF, 0x8A, 0x30);
  c.wire = QColor(0x00, 0xE0, 0xA4);
  c.lane = QColor(0x28, 0x28, 0x28);
  c.grid = QColor(0x70, 0x70, 0x70);
  return c;
}

} // namespace

PictureColors pictureColors(PictureTheme theme) {
  switch (theme) {
  case PictureTheme::light:
    return {};
  case PictureTheme::dark:
    return darkColors();
  case PictureTheme::highContrast:
    return highContrastColors();
  }
  return {};
}

} // namespace netmend
