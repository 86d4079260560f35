// What the readers make of many files, in records that are compared exactly (support/record.h): figures of
// the CAD program's demo boards, all of small files written by hand (files/, the formats as docs/formats
// says), and what comes of the files that the fuzzers keep since each takes another way through a reader.
#include <algorithm>
#include <filesystem>

#include <catch2/catch.hpp>

#include "board/figures.h"
#include "netmend/base/digest.h"
#include "netmend/base/file.h"
#include "netmend/board/board_file.h"
#include "netmend/board/exchange/import.h"
#include "support/record.h"

using namespace netmend;
using nlohmann::json;
namespace fs = std::filesystem;

namespace {

const fs::path tests = fs::path(NETMEND_SOURCE_DIR) / "tests";
const fs::path records = tests / "board" / "exchange" / "records";

std::vector<fs::path> filesIn(const fs::path& folder, const std::string& extension = "") {
  std::vector<fs::path> out;
  for (const auto& entry : fs::recursive_directory_iterator(folder))
    if (entry.is_regular_file() && (extension.empty() || entry.path().extension() == extension))
      out.push_back(entry.path());
  std::sort(out.begin(), out.end());
  return out;
}

json wordsOfAll(const std::vector<Said>& notices) {
  json out = json::array();
  for (const Said& notice : notices)
    out.push_back(wordsOf(notice));
  return out;
}

/// All that a reader says of a small file.
json whole(const Result<Imported>& read) {
  if (!read) return {{"error", read.error().text()}};
  return {{"notices", wordsOfAll(read->notices)},
          {"digest", read->digest},
          {"former_uuid", read->formerUuid},
          {"board", json::parse(boardToText(read->board).value())}};
}

/// The same in short: how many of each, and a number that stands for all their fields.
json inShort(const Result<Imported>& read) {
  if (!read) return read.error().text();
  json out{{"digest", sha256(boardToText(read->board).value()).substr(0, 12)}};
  if (!read->notices.empty()) out["notices"] = wordsOfAll(read->notices);
  forEachKind([&](auto kind) {
    if (const auto& table = read->board.*kind.table; !table.empty())
      out[std::string(kind.list)] = table.size();
  });
  return out;
}

void recordKept(const std::string& format) {
  json found;
  const std::vector<fs::path> files = filesIn(tests / "fuzz" / "corpus" / format);
  for (const fs::path& file : files) {
    ImportOptions options;
    if (format != "zip") options.format = format;
    const auto content = readFile(file);
    REQUIRE(content);
    found[file.filename().string()] = inShort(importBoard(ImportSource{*content, "b", options}));
  }
  test::compareWithRecord((records / ("fuzzed_" + format + ".json")).string(), found);
}

/// Of the package kicad-demos, where it puts them.
template <class Is> void recordDemos(const char* record, Is is) {
  json found;
  for (const fs::path& file : filesIn("/usr/share/kicad/demos", ".kicad_pcb")) {
    if (!is(file)) continue;
    const auto imported = importBoard(file);
    REQUIRE(imported);
    json& figures = found[file.filename().string()];
    figures = test::Figures::of(imported->board);
    figures["notices"] = wordsOfAll(imported->notices);
  }
  test::compareWithRecord((records / record).string(), found);
}

} // namespace

TEST_CASE("the demo boards have the figures that they had", "[record]") {
  recordDemos("demos.json", [](const fs::path& file) { return file.stem() != "video"; });
}

TEST_CASE("the largest demo board has the figures that it had", "[record]") {
  recordDemos("largest_demo.json", [](const fs::path& file) { return file.stem() == "video"; });
}

TEST_CASE("files written by hand are read to the last field as they were", "[record]") {
  json found;
  for (const fs::path& file : filesIn(tests / "board" / "exchange" / "files")) {
    const auto content = readFile(file);
    REQUIRE(content);
    found[file.filename().string()] = whole(importBoard(ImportSource{*content, file.filename().string()}));
  }
  test::compareWithRecord((records / "files.json").string(), found);
}

TEST_CASE("branches and limits of the readers, each in a few words, give what they gave", "[record]") {
  // What is read stands in the record itself, before what came of it; a new case is added there, with "".
  const std::string file = (records / "cases.json").string();
  json found = json::parse(readFile(file).value());
  const std::string head =
      "(kicad_pcb (version 20211014)(layers (0 F.Cu signal)(31 B.Cu signal)(44 Edge.Cuts user)"
      "(37 F.SilkS user))(net 0 \"\")(net 1 G)\n";
  for (auto& [text, result] : found.at("kicad").items())
    result = inShort(importBoard(ImportSource{text, "b.kicad_pcb"}));
  for (auto& [text, result] : found.at("kicad items").items())
    result = inShort(importBoard(ImportSource{head + text + ")", "b.kicad_pcb"}));
  for (auto& [text, result] : found.at("ipc").items())
    result = inShort(importBoard(ImportSource{"P  UNITS SI\n" + text + "999\n", "b.ipc"}));
  for (auto& [text, result] : found.at("csv").items())
    result = inShort(importBoard(ImportSource{text, "b.csv"}));
  test::compareWithRecord(file, found);
}

TEST_CASE("of each file that the fuzzers keep comes what came", "[record]") {
  for (const char* format : {"csv", "ipc-d-356a", "kicad", "zip"})
    recordKept(format);
}
