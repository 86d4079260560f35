// What comes of the board files and journals that the fuzzers keep, since each takes another way through the
// readers: a record that is compared exactly (support/record.h).
#include <algorithm>
#include <filesystem>

#include <unistd.h>

#include <catch2/catch.hpp>

#include "figures.h"
#include "netmend/base/digest.h"
#include "netmend/base/file.h"
#include "netmend/board/board_file.h"
#include "netmend/board/journal.h"
#include "netmend/board/summary.h"
#include "support/record.h"

using namespace netmend;
using nlohmann::json;
namespace fs = std::filesystem;

namespace {

const fs::path tests = fs::path(NETMEND_SOURCE_DIR) / "tests";

std::vector<fs::path> keptFor(const char* reader) {
  std::vector<fs::path> out;
  for (const auto& entry : fs::directory_iterator(tests / "fuzz" / "corpus" / reader))
    out.push_back(entry.path());
  std::sort(out.begin(), out.end());
  return out;
}

json inShort(const Board& board) {
  json out{{"digest", sha256(boardToText(board).value()).substr(0, 12)}};
  const Size size = summarize(board).size;
  out["size"] = {size.width.nm, size.height.nm};
  forEachKind([&](auto kind) {
    if (const auto& table = board.*kind.table; !table.empty()) out[std::string(kind.list)] = table.size();
  });
  return out;
}

void record(const char* name, const json& found) {
  test::compareWithRecord((tests / "board" / "records" / name).string(), found);
}

} // namespace

TEST_CASE("of each board file that the fuzzers keep comes what came", "[record]") {
  json found;
  for (const fs::path& file : keptFor("netmend")) {
    const auto board = boardFromText(readFile(file).value(), "b");
    found[file.filename().string()] = board ? inShort(*board) : json(board.error().text());
  }
  record("fuzzed_boards.json", found);
}

TEST_CASE("of each journal that the fuzzers keep comes what came", "[record]") {
  const fs::path copy = fs::temp_directory_path() / ("netmend-journal-record-" + std::to_string(::getpid()));
  json found;
  for (const fs::path& file : keptFor("journal")) {
    fs::copy_file(file, copy, fs::copy_options::overwrite_existing);
    json& result = found[file.filename().string()];
    auto opened = openJournal(copy, "key");
    if (!opened) {
      opened.error().file = "journal";
      result = opened.error().text();
      continue;
    }
    Board board;
    const auto replayed = replay(board, opened->edits);
    result = inShort(board);
    result["edits"] = opened->edits.size();
    result["torn"] = opened->droppedTorn;
    if (!replayed) result["error"] = replayed.error().text();
  }
  fs::remove(copy);
  record("fuzzed_journals.json", found);
}
