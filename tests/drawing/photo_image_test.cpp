#include "netmend/drawing/photo_image.h"

#include <catch2/catch.hpp>

#include <QBuffer>

#include <fstream>

#include "gui.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

std::string encoded(const QImage& image, const char* format) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  REQUIRE(image.save(&buffer, format));
  return bytes.toStdString();
}

QImage plain(int width, int height) {
  QImage image(width, height, QImage::Format_Grayscale8);
  image.fill(Qt::gray);
  return image;
}

/// Claims another size than it has: what the first bytes say is all that is read of it.
std::string pngClaiming(unsigned width, unsigned height) {
  std::string png = encoded(plain(8, 8), "png");
  const auto put = [&](std::size_t at, unsigned value) {
    for (std::size_t i = 0; i < 4; ++i)
      png[at + i] = static_cast<char>(value >> (8 * (3 - i)));
  };
  put(16, width);
  put(20, height);
  // CRC-32 of the header's chunk (PNG, ISO/IEC 15948, annex D), else the header counts as broken.
  std::uint32_t crc = 0xffffffffU;
  for (std::size_t i = 12; i < 29; ++i) {
    crc ^= static_cast<unsigned char>(png[i]);
    for (int bit = 0; bit < 8; ++bit)
      crc = (crc >> 1U) ^ ((crc & 1U) != 0 ? 0xedb88320U : 0U);
  }
  put(29, ~crc);
  return png;
}

/// The most memory this process has held, in MB: proc(5), VmHWM.
double peakMegabytes() {
  std::ifstream status("/proc/self/status");
  for (std::string word; status >> word;)
    if (double kilobytes = 0; word == "VmHWM:" && status >> kilobytes) return kilobytes / 1000.0;
  return 0.0;
}

} // namespace

TEST_CASE("a photo fits its box, small ones stay as they are") {
  needApplication();
  const std::string photo = encoded(plain(400, 300), "jpeg");
  CHECK(photoImage(photo, {200, 200})->size() == QSize(200, 150));
  CHECK(photoImage(photo, {400, 300})->size() == QSize(400, 300));
  CHECK(photoImage(photo, {399, 300})->size() == QSize(399, 299));
  CHECK(photoImage(photo, {1000, 1000})->size() == QSize(400, 300));
  CHECK(photoImage(encoded(plain(1000, 1), "png"), {10, 10})->size() == QSize(10, 1));
}

TEST_CASE("a photo of fifty megapixels is read, within four bytes a pixel and a hundred megabytes") {
  needApplication();
  const std::string photo = encoded(plain(10'000, 5'000), "jpeg");
  const double before = peakMegabytes();
  const auto image = photoImage(photo, {300, 300});
  REQUIRE(image);
  CHECK(image->size() == QSize(300, 150));
  CHECK(peakMegabytes() - before <= 4e-6 * 10'000 * 5'000 + 100.0);
  // At its full size, too, where the image library by itself stops at 128 MiB.
  CHECK(photoImage(photo, {10'000, 5'000})->size() == QSize(10'000, 5'000));
}

TEST_CASE(
    "more than 250 megapixels are refused from the header alone, and what claims them falsely as broken") {
  needApplication();
  const auto tooMany = photoImage(pngClaiming(25'000, 10'001), {300, 300});
  REQUIRE_FALSE(tooMany);
  CHECK(wordsOf(tooMany.error().message) == "is a photo of too many pixels");
  CHECK(wordsOf(tooMany.error().found) == "25000 by 10001");
  const auto lying = photoImage(pngClaiming(25'000, 10'000), {300, 300});
  REQUIRE_FALSE(lying);
  CHECK(wordsOf(lying.error().message) == "is a picture that cannot be read to its end");
  CHECK(wordsOf(photoImage(pngClaiming(60'000, 60'000), {300, 300}).error().message) ==
        "is a photo of too many pixels");
  CHECK_FALSE(photoImage("", {300, 300}));
  CHECK_FALSE(photoImage("\xff\xd8\xff", {300, 300}));
}
