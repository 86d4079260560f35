#include "netmend/jobsheet/job_sheet.h"

#include <catch2/catch.hpp>

#include <cstdlib>

#include <QBuffer>
#include <QImage>

#include "drawing/small_board.h"
#include "netmend/base/file.h"
#include "netmend/casework/function_check.h"
#include "printed_sheet.h"
#include "sheet_job.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

Printed customers(const SheetContent& content, PaperSize paper = PaperSize::a4,
                  const std::string& shop = "Slipway Board Repair\nQuay 3\nOld Harbour") {
  return Printed(content, {paper, SheetCopy::customer, shop});
}

/// For a person to look at: only where NETMEND_PICTURES names a folder.
void keep(const Printed& printed, const std::string& name) {
  const char* folder = std::getenv("NETMEND_PICTURES");
  if (folder == nullptr) return;
  std::filesystem::copy_file(printed.folder.path / "sheet.pdf",
                             std::filesystem::path(folder) / (name + ".pdf"),
                             std::filesystem::copy_options::overwrite_existing);
}

FoundFault openTrack() {
  FoundFault fault;
  fault.place.sort = PlaceName::Sort::track;
  fault.place.layer = PlaceName::Layer::inner;
  fault.place.from = {TrackEnd::Sort::pin, "J4.3", {}};
  fault.place.to = {TrackEnd::Sort::pin, "C12.1", {}};
  fault.places = 1;
  return fault;
}

/// The invented job with its suspect on the line that was repaired.
SheetContent repaired(const SmallBoard& small) {
  SheetContent content;
  content.job = invented();
  content.board = underWork(small.board);
  content.line = {small.key};
  content.job.serial = "TL-0417";
  std::erase_if(content.job.readings, [](const JobReading& r) { return r.purpose == ReadingPurpose::check; });
  content.job.actions[0].because = openTrack();
  content.job.suspects[0].what.clear();
  content.job.suspects[0].explanation.clear();
  content.job.suspects[0].fault = openTrack();
  WorkStep keys = functionCheck("Key 3");
  keys.done = true;
  content.job.actions[0].steps.push_back(keys);
  return content;
}

std::string pngOf(QColor color, QSize size = {1600, 1200}) {
  QImage image(size, QImage::Format_RGB32);
  image.fill(color);
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  REQUIRE(image.save(&buffer, "png"));
  return bytes.toStdString();
}

int imagesIn(const Printed& printed) {
  const std::string list = printed.tool("pdfimages -list");
  const std::regex line(" image +");
  return static_cast<int>(std::distance(std::sregex_iterator(list.begin(), list.end(), line), {}));
}

/// `odd` pins, each odd before and in range after.
void addOdd(Job& job, int odd) {
  job.readings.clear();
  for (int i = 1; i <= odd; ++i) {
    const std::string point = "J4." + std::to_string(i);
    job.readings.push_back(
        jobReading(static_cast<std::uint64_t>(i), point, ReadingPurpose::fault, std::nullopt, "open"));
    job.readings.push_back(
        jobReading(static_cast<std::uint64_t>(100 + i), point, ReadingPurpose::proof, 0.452, "in range"));
  }
}

} // namespace

TEST_CASE("the customer's copy says on one page what was told, found and done, and what it costs") {
  const SmallBoard small;
  const SheetContent content = repaired(small);
  const Printed printed = customers(content);
  REQUIRE(printed.result);
  keep(printed, "customer-repaired");
  CHECK(printed.pages() == 1);
  const std::string text = printed.text();
  for (const char* part : {"Slipway Board Repair",
                           "Quay 3, Old Harbour",
                           "Job 2026-0042",
                           "booked in 2026-01-01",
                           "Tide gauge logger, repaired",
                           "Serial TL-0417 · Wasserverband Süderbrücke · your reference PO 4711",
                           "What you told us",
                           "Keys of one column do nothing",
                           "What we found",
                           "A track inside the board was open between J4.3 and",
                           "What we did",
                           "Bridged J4.3 and C12.1 with 88 mm of wire.",
                           "new wire, 88 mm",
                           "open here",
                           "Good boards",
                           "0.441 V to 0.465 V",
                           "OL",
                           "0.451 V",
                           "Tried, and it works: Key 3.",
                           "Fault finding",
                           "63.50",
                           "Repaired by, date",
                           "Received by, date"}) {
    INFO(part);
    CHECK(contains(text, part));
  }
  CHECK(std::regex_search(text, std::regex("Total +63\\.60")));
  CHECK_FALSE(contains(text, "Shortened"));
  for (const char* internal :
       {"Ask for payment", "took two tries", "/secret", "keys.json", "Prüfer", "83 %"}) {
    INFO(internal);
    CHECK_FALSE(contains(text, internal));
  }
}

TEST_CASE("a device is called repaired when nothing measured since says otherwise") {
  SheetContent content;
  content.job = invented();
  CHECK(contains(customers(content).text(), "Tide gauge logger, repaired"));
  SECTION("it went back unrepaired") {
    content.job.state = JobState::returnedUnrepaired;
  }
  SECTION("a proof is odd") {
    content.job.readings.push_back(jobReading(9, "J4.3", ReadingPurpose::proof, std::nullopt, "open"));
  }
  SECTION("it does not pay") {
    content.job.actions[0].kind = RepairKind::notEconomic;
  }
  SECTION("nothing was done") {
    content.job.actions.clear();
  }
  const Printed printed = customers(content);
  CHECK(contains(printed.text(), "Tide gauge logger, not repaired"));
  keep(printed, "customer-not-repaired");
}

TEST_CASE("the customer's copy is one page, whatever the job holds, and says that it was shortened") {
  const SmallBoard small;
  SheetContent content = repaired(small);
  content.job.symptom = essay(700);
  content.job.device = essay(40);
  content.job.customer = essay(60);
  addOdd(content.job, 40);
  for (int i = 0; i < 2; ++i) {
    content.job.actions.push_back(content.job.actions.front());
    content.job.actions.back().jumper->from.name.label = "J4." + std::to_string(10 + i);
  }
  for (std::uint64_t i = 0; i < 15; ++i)
    content.job.charges.push_back({ChargeId(10 + i), std::string(300, 'q'), Decimal{10000}, Decimal{10000}});
  for (int i = 0; i < 30; ++i)
    content.job.actions[0].steps.push_back(functionCheck("function " + std::to_string(i)));
  content.job.photos = {{PhotoId(1), "before", "image/png", pngOf(Qt::darkGreen)}};
  for (const PaperSize paper : {PaperSize::a4, PaperSize::letter}) {
    const Printed printed = customers(content, paper);
    REQUIRE(printed.result);
    keep(printed, paper == PaperSize::a4 ? "customer-crowded" : "customer-crowded-letter");
    CHECK(printed.pages() == 1);
    const std::string text = printed.text();
    CHECK(contains(text, "Shortened to one page; the workshop's copy has all of it."));
    CHECK(
        std::regex_search(text, std::regex("and [0-9]+ more points, of which as they must be now: [0-9]+")));
    CHECK(std::regex_search(text, std::regex("[0-9]+ more charges")));
    CHECK(std::regex_search(text, std::regex("Total +78\\.60"))); // 63.60 and fifteen times 1.00
    CHECK(contains(text, "Received by, date"));
    const Words words = wordBoxes(printed);
    for (const Word& word : words.words) {
      INFO(word.text);
      CHECK(word.left >= 50);
      CHECK(word.right <= words.pages.at(0).first - 50);
      CHECK(word.bottom <= words.pages.at(0).second - 30);
    }
    // Nothing is lost: the workshop's copy has the last word.
    CHECK(contains(Printed(content, {paper, SheetCopy::workshop, ""}).text(), "word699"));
  }
}

TEST_CASE("rows up to the page's share are all shown; one more is counted only where there are two more") {
  SheetContent content;
  content.job = invented();
  content.job.actions.clear();
  addOdd(content.job, 9);
  const std::string all = customers(content).text();
  CHECK(contains(all, "J4.9"));
  CHECK_FALSE(contains(all, "more point"));
  addOdd(content.job, 10);
  const std::string counted = customers(content).text();
  CHECK(contains(counted, "J4.8"));
  CHECK_FALSE(contains(counted, "J4.9"));
  CHECK(contains(counted, "and 2 more points, of which as they must be now: 2"));
}

TEST_CASE("photos are on the customer's copy where the page has room for them, the first and the last") {
  SheetContent content;
  content.job = invented();
  content.job.photos = {{PhotoId(1), "before: green crust", "image/png", pngOf(Qt::darkGreen)},
                        {PhotoId(2), "meanwhile", "image/png", pngOf(Qt::red)},
                        {PhotoId(3), "after", "image/png", pngOf(Qt::blue)}};
  const Printed printed = customers(content);
  keep(printed, "customer-photos");
  CHECK(imagesIn(printed) == 2);
  const std::string text = printed.text();
  CHECK(contains(text, "before: green crust"));
  CHECK(contains(text, "after"));
  CHECK_FALSE(contains(text, "meanwhile"));
}

TEST_CASE("a connector that was typed has no picture, and an empty job is a page all the same") {
  SheetContent content;
  content.job = invented();
  const Printed printed = customers(content);
  keep(printed, "customer-typed");
  CHECK(printed.pages() == 1);
  CHECK_FALSE(contains(printed.text(), "new wire"));
  const Printed empty = customers(SheetContent{}, PaperSize::letter, "");
  keep(empty, "customer-empty");
  CHECK(empty.pages() == 1);
  CHECK(contains(empty.text(), "Your device, not repaired"));
  CHECK(contains(empty.text(), "Nothing was repaired."));
}

TEST_CASE("suspects of a line that was looked at after the repair are on neither copy") {
  const SmallBoard small;
  SheetContent content = repaired(small);
  const auto both = [&] {
    return Printed(content, {PaperSize::a4, SheetCopy::workshop, ""}).text() + customers(content).text();
  };
  CHECK(contains(both(), "83 %"));
  CHECK(contains(both(), "open here"));
  JobSuspect other = content.job.suspects[0];
  other.fault.place.from.pin = "U9.1";
  other.fault.place.to.pin = "U9.2";
  other.probability = 0.77;
  content.job.suspects = {other};
  const std::string text = both();
  CHECK_FALSE(contains(text, "U9.1"));
  CHECK_FALSE(contains(text, "77 %"));
  CHECK_FALSE(contains(text, "open here"));
  CHECK(contains(text, "A track inside the board was open between J4.3 and"));
}

TEST_CASE("the workshop's copy names the board's file without its folder, and tells which content it had") {
  SheetContent content;
  content.job = invented();
  content.job.boardDigest = "0123456789abcdef0123456789abcdef";
  for (const char* file : {"/secret/place/keys.json", "C:\\secret\\place\\keys.json", "keys.json"}) {
    content.job.boardFile = file;
    const std::string text = Printed(content).text();
    CHECK(contains(text, "keys.json (content 0123456789abcdef)"));
    CHECK_FALSE(contains(text, "secret"));
  }
}

TEST_CASE("signatures are never alone on a page of the workshop's copy") {
  SheetContent content;
  content.job = invented();
  int last = 0;
  // The page's end moves through the notes: somewhere signatures alone would be left over.
  for (std::size_t words = 500; words < 740; words += 8) {
    content.job.internalNotes = essay(words);
    const Printed printed(content);
    const int pages = printed.pages();
    const std::string page = std::to_string(pages);
    const std::string text = printed.tool("pdftotext -f " + page + " -l " + page, "-");
    INFO(words);
    CHECK(contains(text, "word" + std::to_string(words - 1)));
    last = pages;
  }
  CHECK(last >= 2);
}

TEST_CASE("both copies are set in B612, embedded") {
  const SmallBoard small;
  const SheetContent content = repaired(small);
  for (const SheetCopy copy : {SheetCopy::customer, SheetCopy::workshop}) {
    const Printed printed(content, {PaperSize::a4, copy, "Shop"});
    keep(printed, copy == SheetCopy::customer ? "customer-fonts" : "workshop-repaired");
    std::istringstream lines(printed.tool("pdffonts"));
    std::string line;
    std::getline(lines, line);
    const std::size_t embedded = line.find("emb");
    std::getline(lines, line);
    int fonts = 0;
    while (std::getline(lines, line)) {
      ++fonts;
      INFO(line);
      CHECK(contains(line, "B612"));
      CHECK(line.substr(embedded, 3) == "yes");
    }
    CHECK(fonts >= 2);
  }
}
