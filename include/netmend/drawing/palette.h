#pragma once

#include <QColor>

/// Colours of screen and paper. Those that carry meaning are the Okabe-Ito palette (M. Okabe and K. Ito,
/// "Color Universal Design", 2008), which stays apart for colour-blind readers; the board itself is kept
/// in greys, so that colour always says something.
namespace netmend::palette {

inline constexpr QColor black{0x00, 0x00, 0x00};
inline constexpr QColor orange{0xE6, 0x9F, 0x00};
inline constexpr QColor skyBlue{0x56, 0xB4, 0xE9};
inline constexpr QColor bluishGreen{0x00, 0x9E, 0x73};
inline constexpr QColor yellow{0xF0, 0xE4, 0x42};
inline constexpr QColor blue{0x00, 0x72, 0xB2};
inline constexpr QColor vermillion{0xD5, 0x5E, 0x00};
inline constexpr QColor reddishPurple{0xCC, 0x79, 0xA7};

inline constexpr QColor paper{0xFF, 0xFF, 0xFF};
inline constexpr QColor substrate{0xF6, 0xF4, 0xEE};
inline constexpr QColor edge{0x5A, 0x58, 0x54};
inline constexpr QColor copperArea{0xE6, 0xE3, 0xDB};
inline constexpr QColor copper{0xB4, 0xB0, 0xA6};
inline constexpr QColor pad{0x8C, 0x89, 0x82};
inline constexpr QColor buried{0xD4, 0xD1, 0xC8};
inline constexpr QColor body{0x4A, 0x4A, 0x4A};
inline constexpr QColor litCore{0xCF, 0xE6,
                                0xF6}; ///< of blue, where something is lit but not on the side seen
inline constexpr QColor quietText{0x60, 0x60, 0x60};

} // namespace netmend::palette
