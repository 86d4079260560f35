#include "demand.h"
#include "netmend/board/board_file.h"
#include "netmend/board/edit.h"
#include "netmend/board/exchange/import.h"

using namespace netmend;
using namespace netmend::fuzz;

/// What is read of a board can be saved, and that read and saved again is the same.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string file = "fuzzed.board";
  ImportOptions options;
  if (std::string_view(FORMAT) != "zip") options.format = FORMAT;
  const auto read = importBoard(ImportSource{textOf(data, size), file, options});
  if (!read) {
    demandFile(read.error(), file);
    return 0;
  }
  demand(checkReferences(read->board).has_value(), "references within the board hold");
  const auto saved = boardToText(read->board);
  demand(saved.has_value(), "what was read can be saved", saved ? "" : saved.error().text());
  const auto again = boardFromText(*saved, file);
  demand(again.has_value(), "what was saved can be read", again ? "" : again.error().text());
  demand(*again == read->board, "what was saved and read is the same");
  demand(boardToText(*again).value_or("") == *saved, "saved once more it is the same to the letter");
  return 0;
}
