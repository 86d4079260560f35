#include <catch2/catch.hpp>

#include <QFontMetricsF>
#include <QGuiApplication>
#include <QImage>
#include <QPainter>
#include <QRawFont>
#include <QtEndian>

#include "contrast.h"
#include "gui.h"
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

namespace {

/// One letter as it is drawn, large enough that no hinting decides.
QImage drawn(QChar letter, bool bold) {
  QImage image(160, 160, QImage::Format_Grayscale8);
  image.fill(Qt::white);
  QPainter painter(&image);
  QFont font = faceFont(100);
  font.setBold(bold);
  painter.setFont(font);
  painter.drawText(image.rect(), Qt::AlignCenter, letter);
  return image;
}

/// Pixels of the two that clearly differ.
int difference(QChar a, QChar b, bool bold) {
  const QImage one = drawn(a, bold), other = drawn(b, bold);
  int count = 0;
  for (int y = 0; y < one.height(); ++y)
    for (int x = 0; x < one.width(); ++x)
      if (std::abs(qGray(one.pixel(x, y)) - qGray(other.pixel(x, y))) > 128) ++count;
  return count;
}

} // namespace

TEST_CASE("the face's letters are B612's, whose digits have one width, and not its fixed-pitch sister's") {
  needApplication();
  REQUIRE(faceFamily() == "N612"); // its own name, see face_font.cpp
  for (const bool bold : {false, true}) {
    QFont font = faceFont(1000);
    font.setBold(bold);
    const QFontMetricsF metrics(font);
    // 1300 of 2000 units: the font's own table `hmtx` (OpenType specification), four bytes a glyph, read
    // here.
    const QRawFont raw = QRawFont::fromFont(font);
    CHECK(raw.unitsPerEm() == 2000.0);
    const QByteArray widths = raw.fontTable("hmtx");
    for (const quint32 glyph : raw.glyphIndexesForString(QStringLiteral("0123456789")))
      CHECK(qFromBigEndian<quint16>(widths.constData() + 4 * glyph) == 1300);
    for (const char digit : {'0', '1', '2', '3', '4', '5', '6', '7', '8', '9'})
      CHECK(metrics.horizontalAdvance(QLatin1Char(digit)) == Approx(650.0).margin(1.0));
    CHECK(metrics.horizontalAdvance(QLatin1Char('i')) < 400.0); // of the one fixed in pitch it would be 650
    for (const QChar wanted : {u'✓', u'Ω', u'±', u'µ', u'Ä', u'ß', u'→', u'–', u'≥', u'€'})
      CHECK(metrics.inFont(wanted));
  }
}

TEST_CASE("letters that are taken for digits look different from them") {
  needApplication();
  for (const bool bold : {false, true})
    for (const auto& [digit, letter] :
         {std::pair{u'0', u'O'}, {u'1', u'l'}, {u'1', u'I'}, {u'8', u'B'}, {u'5', u'S'}}) {
      INFO(QString(QChar(digit)).toStdString() << QString(QChar(letter)).toStdString() << bold);
      CHECK(difference(digit, letter, bold) > 150);
    }
  CHECK(difference(u'8', u'8', false) == 0);
}

TEST_CASE("sizes grow with the window by whole eighths, once to twice") {
  CHECK(faceZoom(1280, 800) == 1.0);
  CHECK(faceZoom(640, 480) == 1.0);
  CHECK(faceZoom(1439, 1080) == 1.0);
  CHECK(faceZoom(1440, 900) == 1.125);
  CHECK(faceZoom(1920, 1080) == 1.25); // 1.35 by its height
  CHECK(faceZoom(2560, 1440) == 1.75); // 1.8
  CHECK(faceZoom(2560, 1600) == 2.0);
  CHECK(faceZoom(5120, 3200) == 2.0);
}

TEST_CASE("marks and states stand out from what they are painted on") {
  for (const auto theme : {PictureTheme::light, PictureTheme::dark, PictureTheme::highContrast}) {
    const FaceColors& c = faceColors(theme);
    INFO(static_cast<int>(theme));
    for (const auto& [text, ground] : {std::pair{c.odd, c.card},
                                       {c.odd, c.ground},
                                       {c.ink, c.oddTint},
                                       {c.ink, c.accentTint},
                                       {c.onJob, c.job},
                                       {c.onGood, c.good},
                                       {c.ink, c.goodGround},
                                       {c.quiet, c.goodGround},
                                       {c.ink, c.calmTint}})
      CHECK(contrastRatio(text, ground) >= 4.5);
    for (const auto& [mark, ground] : {std::pair{c.calm, c.card},
                                       {c.oddFill, c.card},
                                       {c.accent, c.card},
                                       {c.good, c.goodStripe},
                                       {c.accent, c.board},
                                       {c.boardEdge, c.board}})
      CHECK(contrastRatio(mark, ground) >= 3.0);
  }
}
