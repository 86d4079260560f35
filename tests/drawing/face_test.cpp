#include <catch2/catch.hpp>

#include "contrast.h"
#include "netmend/drawing/face.h"

using namespace netmend;
using namespace netmend::testing;

TEST_CASE("text of the window stands out from all that it stands on, outlines from both of their sides") {
  for (const auto theme : {PictureTheme::light, PictureTheme::dark, PictureTheme::highContrast}) {
    const FaceColors& c = faceColors(theme);
    INFO(static_cast<int>(theme));
    for (const QColor& ground : {c.ground, c.card, c.field, c.shade})
      for (const QColor& text : {c.ink, c.quiet})
        CHECK(contrastRatio(text, ground) >= 4.5);
    CHECK(contrastRatio(c.onAccent, c.accent) >= 4.5);
    CHECK(contrastRatio(c.card, c.ink) >= 4.5); // a filled block
    for (const QColor& ground : {c.ground, c.card, c.field})
      for (const QColor& outline : {c.outline, c.accent})
        CHECK(contrastRatio(outline, ground) >= 3.0);
    CHECK(c.edge > c.hair);
  }
}
