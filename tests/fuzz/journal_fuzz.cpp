#include "demand.h"
#include "netmend/board/board_file.h"
#include "netmend/board/journal.h"

using namespace netmend;
using namespace netmend::fuzz;

/// A journal is read, or refused with its file; what it holds is applied to a board, or refused, and the
/// board can be saved.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string file = fileOf(textOf(data, size), "fuzzed.journal");
  const auto opened = openJournal(file, "key");
  if (!opened) {
    demandFile(opened.error(), file);
    return 0;
  }
  Board board;
  (void)replay(board, opened->edits);
  // As far as the edits went.
  const auto saved = boardToText(board);
  demand(saved.has_value(), "a board after its edits can be saved", saved ? "" : saved.error().text());
  const auto again = boardFromText(*saved, file);
  demand(again.has_value(), "what was saved can be read", again ? "" : again.error().text());
  demand(*again == board, "what was saved and read is the same");
  return 0;
}
