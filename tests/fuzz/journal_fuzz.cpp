#include "demand.h"
#include "netmend/board/journal.h"

using namespace netmend;
using namespace netmend::fuzz;

/// A journal is read, or refused with its file; what it holds is applied to a board, or refused.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string file = fileOf(textOf(data, size), "fuzzed.journal");
  const auto opened = openJournal(file, "key");
  if (!opened) {
    demandFile(opened.error(), file);
    return 0;
  }
  Board board;
  (void)replay(board, opened->edits);
  return 0;
}
