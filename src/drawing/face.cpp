#include "netmend/drawing/face.h"

#include <array>

namespace netmend {

namespace {

constexpr QColor rgb(int value) {
  return {value >> 16, (value >> 8) & 0xFF, value & 0xFF};
}

} // namespace

const FaceColors& faceColors(PictureTheme theme) {
  // By theme: light, dark, high contrast.
  static const std::array<FaceColors, 3> all{{{.ground = rgb(0xE6E5E0),
                                               .card = rgb(0xF9F8F5),
                                               .field = rgb(0xFFFFFF),
                                               .shade = rgb(0xD9D7D0),
                                               .line = rgb(0xC6C3BB),
                                               .outline = rgb(0x74716A),
                                               .ink = rgb(0x14171A),
                                               .quiet = rgb(0x4A4E53),
                                               .accent = rgb(0x0B4DA2),
                                               .onAccent = rgb(0xFFFFFF)},
                                              {.ground = rgb(0x14171A),
                                               .card = rgb(0x1F2327),
                                               .field = rgb(0x0C0E10),
                                               .shade = rgb(0x2D3237),
                                               .line = rgb(0x3A4046),
                                               .outline = rgb(0x8B9298),
                                               .ink = rgb(0xF1F2F2),
                                               .quiet = rgb(0xB2B8BD),
                                               .accent = rgb(0x7DB7FF),
                                               .onAccent = rgb(0x08121F)},
                                              {.ground = rgb(0x000000),
                                               .card = rgb(0x000000),
                                               .field = rgb(0x000000),
                                               .shade = rgb(0x303030),
                                               .line = rgb(0x8A8A8A),
                                               .outline = rgb(0xFFFFFF),
                                               .ink = rgb(0xFFFFFF),
                                               .quiet = rgb(0xE2E2E2),
                                               .accent = rgb(0xFFE000),
                                               .onAccent = rgb(0x000000),
                                               .hair = 2,
                                               .edge = 3}}};
  return all.at(static_cast<std::size_t>(theme));
}

} // namespace netmend
