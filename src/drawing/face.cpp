#include "netmend/drawing/face.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace netmend {

namespace {

constexpr QColor rgb(int value) {
  return {value >> 16, (value >> 8) & 0xFF, value & 0xFF};
}

constexpr FaceColors light() {
  return {.ground = rgb(0xE6E5E0),
          .card = rgb(0xF9F8F5),
          .field = rgb(0xFFFFFF),
          .shade = rgb(0xD9D7D0),
          .line = rgb(0xC6C3BB),
          .outline = rgb(0x74716A),
          .ink = rgb(0x14171A),
          .quiet = rgb(0x4A4E53),
          .accent = rgb(0x0B4DA2),
          .onAccent = rgb(0xFFFFFF),
          .accentTint = rgb(0xD5E3F4),
          .calm = rgb(0x5B7182),
          .calmTint = rgb(0xDCE3E8),
          .odd = rgb(0xB3380B),
          .oddFill = rgb(0xE4602A),
          .oddTint = rgb(0xFADFD1),
          .job = rgb(0x14171A),
          .onJob = rgb(0xFFFFFF),
          .good = rgb(0x0D5B45),
          .onGood = rgb(0xFFFFFF),
          .goodStripe = rgb(0xBFDDCF),
          .goodGround = rgb(0xDDE8E1),
          .board = rgb(0xF1EFE8),
          .boardEdge = rgb(0x57544E),
          .pad = rgb(0xA3A19A),
          .padQuiet = rgb(0xBDBBB4),
          .copper = rgb(0xCFCCC3),
          .body = rgb(0x7C7972),
          .zone = rgb(0xB9B2A0),
          .zoneInk = rgb(0x5C5544),
          .plate = rgb(0xFFFFFF),
          .net = rgb(0x14171A)};
}

constexpr FaceColors dark() {
  return {.ground = rgb(0x14171A),
          .card = rgb(0x1F2327),
          .field = rgb(0x0C0E10),
          .shade = rgb(0x2D3237),
          .line = rgb(0x3A4046),
          .outline = rgb(0x8B9298),
          .ink = rgb(0xF1F2F2),
          .quiet = rgb(0xB2B8BD),
          .accent = rgb(0x7DB7FF),
          .onAccent = rgb(0x08121F),
          .accentTint = rgb(0x1B3350),
          .calm = rgb(0x8FA5B5),
          .calmTint = rgb(0x2C363E),
          .odd = rgb(0xFF9A66),
          .oddFill = rgb(0xF0743B),
          .oddTint = rgb(0x4A2516),
          .job = rgb(0xB4BBC1),
          .onJob = rgb(0x0C0E10),
          .good = rgb(0x7FD3B4),
          .onGood = rgb(0x062018),
          .goodStripe = rgb(0x1E4A3C),
          .goodGround = rgb(0x10201A),
          .board = rgb(0x23282C),
          .boardEdge = rgb(0xA7ABAF),
          .pad = rgb(0x8B9095),
          .padQuiet = rgb(0x63686D),
          .copper = rgb(0x454A4F),
          .body = rgb(0x9AA0A5),
          .zone = rgb(0x4B4A41),
          .zoneInk = rgb(0xC2BCA9),
          .plate = rgb(0x0C0E10),
          .net = rgb(0xF1F2F2)};
}

constexpr FaceColors highContrast() {
  return {.ground = rgb(0x000000),
          .card = rgb(0x000000),
          .field = rgb(0x000000),
          .shade = rgb(0x303030),
          .line = rgb(0x8A8A8A),
          .outline = rgb(0xFFFFFF),
          .ink = rgb(0xFFFFFF),
          .quiet = rgb(0xE2E2E2),
          .accent = rgb(0xFFE000),
          .onAccent = rgb(0x000000),
          .accentTint = rgb(0x3A3500),
          .calm = rgb(0xC8C8C8),
          .calmTint = rgb(0x333333),
          .odd = rgb(0xFFA36B),
          .oddFill = rgb(0xFF8A4A),
          .oddTint = rgb(0x4A1E00),
          .job = rgb(0xFFFFFF),
          .onJob = rgb(0x000000),
          .good = rgb(0x7CF0C4),
          .onGood = rgb(0x000000),
          .goodStripe = rgb(0x0C4A36),
          .goodGround = rgb(0x00170F),
          .board = rgb(0x0C0C0C),
          .boardEdge = rgb(0xFFFFFF),
          .pad = rgb(0xC8C8C8),
          .padQuiet = rgb(0x9A9A9A),
          .copper = rgb(0x6E6E6E),
          .body = rgb(0xFFFFFF),
          .zone = rgb(0x5A5A5A),
          .zoneInk = rgb(0xFFFFFF),
          .plate = rgb(0x000000),
          .net = rgb(0xFFFFFF),
          .hair = 2,
          .edge = 3};
}

} // namespace

const FaceColors& faceColors(PictureTheme theme) {
  static constexpr std::array<FaceColors, 3> all{light(), dark(), highContrast()};
  return all.at(static_cast<std::size_t>(theme));
}

double faceZoom(int width, int height) {
  const double fits = std::min(width / 1280.0, height / 800.0);
  return std::clamp(std::floor(fits * 8.0) / 8.0, 1.0, 2.0);
}

} // namespace netmend
