#include "netmend/drawing/picture_colors.h"

#include <catch2/catch.hpp>

#include "contrast.h"

using namespace netmend;
using namespace netmend::testing;

TEST_CASE("contrast is as WCAG 2.1 counts it") {
  CHECK(contrastRatio(Qt::black, Qt::white) == Approx(21.0));
  CHECK(contrastRatio(Qt::white, Qt::white) == Approx(1.0));
  // By hand: #777777 has a channel of 0.4667, linear 0.1845; 1.05 / 0.2345.
  CHECK(contrastRatio(QColor(0x77, 0x77, 0x77), Qt::white) == Approx(4.478).epsilon(0.001));
  CHECK(relativeLuminance(QColor(255, 0, 0)) == Approx(0.2126));
}

TEST_CASE("all that is written stands out from its ground by 4.5 to 1 in every theme") {
  for (const PictureTheme theme : {PictureTheme::light, PictureTheme::dark, PictureTheme::highContrast}) {
    const PictureColors c = pictureColors(theme);
    const std::pair<QColor, QColor> pairs[] = {
        {c.ink, c.labelGround}, {c.ink, c.paper},       {c.ink, c.substrate}, {c.quietInk, c.paper},
        {c.padInk, c.pad},      {c.padInk, c.quietPad}, {c.litInk, c.lit},    {c.ink, c.litCore},
        {c.holeInk, c.hole},    {c.ink, c.lane}};
    int number = 0;
    for (const auto& [ink, ground] : pairs) {
      INFO("theme " << static_cast<int>(theme) << ", pair " << number++);
      CHECK(contrastRatio(ink, ground) >= 4.5);
    }
  }
}

TEST_CASE("what carries meaning stands out from the board by 3 to 1 in every theme") {
  for (const PictureTheme theme : {PictureTheme::light, PictureTheme::dark, PictureTheme::highContrast}) {
    const PictureColors c = pictureColors(theme);
    INFO("theme " << static_cast<int>(theme));
    CHECK(contrastRatio(c.lit, c.substrate) >= 3.0);
    CHECK(contrastRatio(c.suspect, c.substrate) >= 3.0);
    CHECK(contrastRatio(c.zoneEdge, c.substrate) >= 3.0);
    CHECK(contrastRatio(c.body, c.substrate) >= 3.0);
  }
}
