#include "netmend/jobsheet/job_sheet.h"

#include <catch2/catch.hpp>

#include <fstream>
#include <regex>
#include <sstream>

#include "drawing/small_board.h"
#include "netmend/base/file.h"
#include "netmend/words/place.h"
#include "printed_sheet.h"
#include "sheet_job.h"

// The documents are read with poppler's tools (pdftotext, pdffonts, pdfinfo), which share no code with
// what writes them.

using namespace netmend;
using namespace netmend::testing;

namespace {

/// Sixty readings before and after, long texts, words without a break.
Job crowded() {
  Job job = invented();
  job.readings.clear();
  for (std::uint64_t i = 1; i <= 60; ++i) {
    const std::string point = "J100." + std::to_string(i);
    const bool open = i % 9 == 0;
    job.readings.push_back(
        jobReading(i, point, ReadingPurpose::fault,
                   open ? std::nullopt : std::optional(0.3 + 0.003 * static_cast<double>(i)),
                   open ? "open" : "in range"));
    job.readings.push_back(jobReading(100 + i, point, ReadingPurpose::proof, 0.452, "in range"));
  }
  job.symptom = std::string(700, 'x');
  job.history = essay(700);
  job.actions[0].steps[0].text = essay(600);
  job.charges[0].what = std::string(900, 'q');
  job.internalNotes = essay(300);
  return job;
}

} // namespace

TEST_CASE("the sheet says what was found before and after, what was done and what it costs") {
  const SmallBoard small;
  SheetContent content;
  content.job = invented();
  content.board = underWork(small.board);
  content.line = {small.key};
  content.cautions = {"Battery out before any heat"};
  const Printed printed(content);
  REQUIRE(printed.result);
  const std::string text = printed.text();
  for (const char* part : {"Job sheet 2026-0042",
                           "Wasserverband Süderbrücke",
                           "2026-01-01",
                           "Tide gauge logger",
                           "Keys of one column do nothing",
                           "Findings before and after",
                           "open",
                           "0.451 V",
                           "0.441 V to 0.465 V",
                           "Checks during the work",
                           "83 %",
                           "Battery out before any heat",
                           "Work 1: Jumper, KEY_COL3",
                           "C12.1 (part terminal)",
                           "enamelled copper 0.10 mm",
                           "Check: Touch the bare copper",
                           "Expected: 0.453 V: go on",
                           "Proof: J4.3 0.451 V (in range)",
                           "Ask for payment first",
                           "signature",
                           "seen from the top",
                           "break, 83 %"}) {
    INFO(part);
    CHECK(contains(text, part));
  }
}

TEST_CASE("places on copper are called as people call them; without their board, by their handles") {
  const SmallBoard small;
  SheetContent content;
  content.job = invented();
  content.job.readings.push_back(jobReading(200, "2.00,3.00 top", ReadingPurpose::check, 0.452, "in range"));
  CHECK(contains(Printed(content).text(), "2.00,3.00 top"));
  content.board = underWork(small.board);
  const std::string text = Printed(content).text();
  CHECK_FALSE(contains(text, "2.00,3.00"));
  const Lookup lookup(small.board);
  const PlaceNames places(lookup);
  const std::string name = wordsOf(nameOf(ProbePoint{PinId{}, "2.00,3.00 top"}, &places));
  CHECK(name.starts_with("track "));
  CHECK(contains(text, name.substr(0, name.find(' ', 6))));
}

TEST_CASE("a step is printed with how it is done, and on the workshop's copy with what its check read") {
  SheetContent content;
  content.job = invented();
  WorkStep& step = content.job.actions[0].steps[0];
  step.check = true;
  step.text = "Touch it.";
  step.detail = "Before any tin.";
  step.measure = StepMeasure{};
  step.read = CheckRead{0.462, StepOutcome::agrees};
  step.note.clear();
  const std::string text = Printed(content).text();
  CHECK(contains(text, "Touch it. Before any tin."));
  CHECK(contains(text, "Note: 0.462 V, as it must be"));
  SheetOptions customers;
  customers.copy = SheetCopy::customer;
  CHECK_FALSE(contains(Printed(content, customers).text(), "0.462 V"));
}

TEST_CASE("amounts are exact decimals: 1.5 times 42.33 and 0.10 make 63.60") {
  SheetContent content;
  content.job = invented();
  const std::string text = Printed(content).text();
  CHECK(contains(text, "63.50")); // 63.495, rounded once
  CHECK(std::regex_search(text, std::regex("Total +63\\.60")));
}

TEST_CASE("the customer's copy keeps what is internal to itself") {
  SheetContent content;
  content.job = invented();
  const std::string text = Printed(content, {PaperSize::a4, SheetCopy::customer, ""}).text();
  CHECK(contains(text, "Keys of one column do nothing"));
  for (const char* internal :
       {"Ask for payment", "took two tries", "/secret/place", "explained at length", "Prüfer", "Internal"}) {
    INFO(internal);
    CHECK_FALSE(contains(text, internal));
  }
}

TEST_CASE("a job of a connector without a board gets its pin strip") {
  SheetContent content;
  content.job = invented();
  content.job.actions.clear();
  const std::string text = Printed(content).text();
  CHECK(contains(text, "J4, diode, other lead on GND"));
  CHECK(contains(text, "bar: expected"));
}

TEST_CASE("an empty job still is a sheet of one page") {
  const Printed printed{SheetContent{}};
  REQUIRE(printed.result);
  CHECK(printed.pages() == 1);
  CHECK(contains(printed.text(), "not stated"));
  CHECK(contains(printed.text(), "1 of 1"));
}

TEST_CASE("all fonts are embedded and every letter can be copied") {
  const SmallBoard small;
  SheetContent content;
  content.job = crowded();
  content.board = underWork(small.board);
  const Printed printed(content);
  REQUIRE(printed.result);
  std::istringstream lines(printed.tool("pdffonts"));
  std::string line;
  std::getline(lines, line);
  const std::size_t embedded = line.find("emb");
  const std::size_t unicode = line.find("uni");
  REQUIRE(embedded != std::string::npos);
  std::getline(lines, line); // the rule
  int fonts = 0;
  while (std::getline(lines, line)) {
    ++fonts;
    INFO(line);
    CHECK(line.substr(embedded, 3) == "yes");
    CHECK(line.substr(unicode, 3) == "yes");
  }
  CHECK(fonts >= 2);
  SheetContent ligatures;
  ligatures.job.symptom = "file, reflow, affine, Größe 4k7 Ω, µF, 25 °C";
  CHECK(contains(Printed(ligatures).text(), ligatures.job.symptom));
}

TEST_CASE("paper is A4 by ISO 216 or Letter, in points") {
  for (const auto& [paper, width, height] :
       {std::tuple{PaperSize::a4, 595.28, 841.89}, std::tuple{PaperSize::letter, 612.0, 792.0}}) {
    const Words words = wordBoxes(Printed(SheetContent{}, {paper, SheetCopy::workshop, ""}));
    REQUIRE(words.pages.size() == 1);
    CHECK(words.pages[0].first == Approx(width).margin(0.5));
    CHECK(words.pages[0].second == Approx(height).margin(0.5));
  }
}

TEST_CASE("of a crowded job no word leaves the page, none is lost, and every page names job and number") {
  SheetContent content;
  content.job = crowded();
  content.cautions = {essay(60), std::string(300, 'y')};
  for (const PaperSize paper : {PaperSize::a4, PaperSize::letter}) {
    const Printed printed(content, {paper, SheetCopy::workshop, "A workshop\nwith an address"});
    REQUIRE(printed.result);
    const Words words = wordBoxes(printed);
    const double width = words.pages.at(0).first;
    const double height = words.pages.at(0).second;
    REQUIRE(words.words.size() > 2000);
    for (const Word& word : words.words) {
      INFO(word.text);
      CHECK(word.left >= 20);
      CHECK(word.right <= width - 20);
      CHECK(word.top >= 20);
      CHECK(word.bottom <= height - 20);
    }
    const std::string text = printed.text();
    for (const char* last : {"word699", "word599", "J100.60"})
      CHECK(contains(text, last));
    const int pages = printed.pages();
    CHECK(pages > 4);
    for (int page = 1; page <= pages; ++page) {
      const std::string number = std::to_string(page);
      const std::string only = printed.tool("pdftotext -f " + number + " -l " + number, "-");
      CHECK(contains(only, "Job 2026-0042"));
      CHECK(contains(only, number + " of " + std::to_string(pages)));
    }
  }
}

TEST_CASE("text with control characters, broken UTF-8 and line breaks is printed, not choked on") {
  SheetContent content;
  content.job.device = "bad \xff\xfe byte";
  content.job.symptom = "first\r\nsecond\tthird\x01\x1b[31m";
  const Printed printed(content);
  REQUIRE(printed.result);
  CHECK(std::regex_search(printed.text(), std::regex("first\\n +second third")));
}

TEST_CASE("what cannot be printed is refused by name and leaves the old sheet") {
  needApplication();
  const TemporaryFolder folder;
  const auto path = folder.path / "sheet.pdf";
  REQUIRE(writeFileAtomically(path, "old"));
  SheetContent tooLong;
  tooLong.job.history = std::string(3'000'000, 'x');
  const auto refused = writeJobSheet(path, tooLong);
  REQUIRE_FALSE(refused);
  CHECK(refused.error().file == path.string());
  SheetContent tooDear;
  tooDear.job.charges = {{ChargeId(1), "gold", Decimal{INT64_MAX}, Decimal{INT64_MAX}}};
  CHECK_FALSE(writeJobSheet(path, tooDear));
  CHECK(readFile(path).value() == "old");
  CHECK_FALSE(writeJobSheet(folder.path / "none" / "sheet.pdf", SheetContent{}));
}
