#include <catch2/catch.hpp>

#include <QBuffer>
#include <QImage>
#include <regex>

#include "drawing/gui.h"
#include "netmend/base/file.h"
#include "sheet_job.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

Photo photoOf(const std::string& caption, QSize size, const char* format, QColor color) {
  QImage image(size, QImage::Format_RGB32);
  image.fill(color);
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  REQUIRE(image.save(&buffer, format));
  return {PhotoId(), caption, std::string("image/") + format, bytes.toStdString()};
}

Result<void> printed(const TemporaryFolder& folder, const Job& job, const SheetOptions& options = {}) {
  needApplication();
  SheetContent content;
  content.job = job;
  return writeJobSheet(folder.path / "sheet.pdf", content, options);
}

int imagesIn(const TemporaryFolder& folder) {
  const std::string list = outputOf("pdfimages -list '" + folder.file("sheet.pdf") + "'");
  const std::regex line(" image +");
  return static_cast<int>(std::distance(std::sregex_iterator(list.begin(), list.end(), line), {}));
}

} // namespace

TEST_CASE("photos are printed with their captions, on the workshop's copy all, on the customer's the first "
          "and the last") {
  Job job = invented();
  job.photos = {photoOf("before: green crust at J4", {1600, 1200}, "png", Qt::darkGreen),
                photoOf("after, wire laid", {900, 1600}, "jpeg", Qt::blue),
                photoOf("", {40, 30}, "png", Qt::red)};
  for (const auto paper : {PaperSize::a4, PaperSize::letter})
    for (const auto copy : {SheetCopy::workshop, SheetCopy::customer}) {
      const TemporaryFolder folder;
      const auto result = printed(folder, job, {paper, copy, ""});
      REQUIRE(result.has_value());
      CHECK(imagesIn(folder) == (copy == SheetCopy::workshop ? 3 : 2));
      const std::string text = outputOf("pdftotext -layout '" + folder.file("sheet.pdf") + "' -");
      CHECK(text.find("before: green crust at J4") != std::string::npos);
      if (copy == SheetCopy::customer) continue;
      CHECK(text.find("Photo 1, before: green crust at J4") != std::string::npos);
      CHECK(text.find("Photo 2, after, wire laid") != std::string::npos);
      CHECK(text.find("Photo 3") != std::string::npos);
    }
}

TEST_CASE("many photos break over pages, and large ones do not make the file large") {
  Job job = invented();
  for (int i = 0; i < 20; ++i)
    job.photos.push_back(photoOf("photo", {3000, 2000}, "jpeg", QColor::fromHsv(i * 17, 200, 200)));
  const TemporaryFolder folder;
  const auto result = printed(folder, job);
  REQUIRE(result.has_value());
  CHECK(imagesIn(folder) == 20);
  CHECK(std::filesystem::file_size(folder.file("sheet.pdf")) < 4'000'000);
}

TEST_CASE("a photo that is no whole picture is told by its number and caption, and no sheet is written") {
  Job job = invented();
  job.photos = {photoOf("before", {80, 60}, "png", Qt::red), photoOf("after", {80, 60}, "png", Qt::red)};
  job.photos[1].bytes = job.photos[1].bytes.text().substr(0, 20);
  const TemporaryFolder folder;
  const auto result = printed(folder, job);
  REQUIRE_FALSE(result.has_value());
  CHECK(wordsOf(result.error().place) == "photo 2, after");
  CHECK_FALSE(std::filesystem::exists(folder.file("sheet.pdf")));
}
