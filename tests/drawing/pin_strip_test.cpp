#include "netmend/drawing/pin_strip.h"
#include "netmend/probing/verdict.h"

#include <catch2/catch.hpp>

#include <QImage>
#include <QPageSize>
#include <QPdfWriter>

#include <cmath>
#include <limits>

#include "gui.h"
#include "netmend/drawing/picture_colors.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

PinStrip stripOf(std::size_t pins) {
  PinStrip strip;
  strip.points = "J4";
  strip.other = "GND";
  for (std::size_t i = 0; i < pins; ++i) {
    StripPin pin;
    pin.label = std::to_string(i + 1);
    pin.expected = {{0.44, 0.46}};
    pin.reading = StripReading{0.45, VerdictKind::inRange};
    strip.pins.push_back(pin);
  }
  return strip;
}

std::string wordsOf(const PinStrip& strip) {
  needApplication();
  const TemporaryFolder folder;
  {
    QPdfWriter writer(QString::fromStdString(folder.file("x.pdf")));
    writer.setResolution(72);
    writer.setPageSize(QPageSize(QPageSize::A3));
    QPainter painter(&writer);
    paintPinStrip(painter, strip, QRectF(0, 0, 700, 600), pictureType(9));
  }
  return outputOf("pdftotext '" + folder.file("x.pdf") + "' -");
}

} // namespace

TEST_CASE("each verdict has a shape of its own, apart without colour") {
  needApplication();
  std::vector<QImage> marks;
  for (int verdict = 0; verdict <= static_cast<int>(VerdictKind::nothingToCompare); ++verdict) {
    QImage image(40, 40, QImage::Format_RGB32);
    image.fill(PictureColors().paper);
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    paintMark(painter, markForVerdict(static_cast<VerdictKind>(verdict)), {20, 20}, 30);
    painter.end();
    // Ink or no ink: what a photocopier leaves of it.
    image = image.convertToFormat(QImage::Format_Grayscale8);
    marks.push_back(image);
  }
  for (std::size_t a = 0; a < marks.size(); ++a)
    for (std::size_t b = a + 1; b < marks.size(); ++b) {
      int differing = 0;
      for (int y = 0; y < 40; ++y)
        for (int x = 0; x < 40; ++x)
          if ((qGray(marks[a].pixel(x, y)) < 220) != (qGray(marks[b].pixel(x, y)) < 220)) ++differing;
      INFO(a << " and " << b);
      CHECK(differing > 60);
    }
}

TEST_CASE("findings are those verdicts that a technician has to look at") {
  const auto odd = [](std::optional<VerdictKind> kind) { return StripReading{0.45, kind}.odd(); };
  CHECK(odd(VerdictKind::open));
  CHECK(odd(VerdictKind::readsWhereOverLimitExpected));
  CHECK_FALSE(odd(VerdictKind::inRange));
  CHECK_FALSE(odd(VerdictKind::nothingToCompare));
  CHECK_FALSE(odd(std::nullopt));
}

TEST_CASE("a flagged pin is named with its verdict, OL has its lane") {
  PinStrip strip = stripOf(12);
  strip.pins[2].reading = StripReading{std::nullopt, VerdictKind::open};
  strip.pins[2].net = "KEY_COL3";
  const std::string words = wordsOf(strip);
  CHECK(words.find("KEY_COL3: open") != std::string::npos);
  CHECK(words.find("OL") != std::string::npos);
  CHECK(words.find("0.4 V") != std::string::npos);
}

TEST_CASE("sixty pins go on in further rows, none is lost") {
  needApplication();
  const PictureType type = pictureType(10);
  const PinStrip strip = stripOf(60);
  const auto rows = pinStripRows(strip, 500, type);
  CHECK(rows.size() > 1);
  std::size_t pins = 0;
  for (const PinStrip& row : rows)
    pins += row.pins.size();
  CHECK(pins == 60);
  CHECK(pinStripHeight(strip, 500, type) > pinStripHeight(rows.front(), 500, type));
}

TEST_CASE("a strip of nothing, of zeros and of values beyond sense is painted without harm") {
  CHECK_NOTHROW(wordsOf(PinStrip{}));
  for (const ReadingMode mode : {ReadingMode::diode, ReadingMode::ohms, ReadingMode::temperature}) {
    PinStrip strip = stripOf(5);
    strip.mode = mode;
    strip.pins[0].reading->value = 0.0;
    strip.pins[1].reading->value = std::numeric_limits<double>::quiet_NaN();
    strip.pins[2].reading->value = std::numeric_limits<double>::infinity();
    strip.pins[3].reading->value = -1e9;
    strip.pins[4].reading->value = 1e12;
    CHECK(wordsOf(strip).find("J4, ") != std::string::npos);
  }
}
