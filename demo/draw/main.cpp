#include <filesystem>
#include <iostream>

#include "keypad_walks.h"
#include "logger_board.h"
#include "netmend/board/board_file.h"
#include "netmend/probing/walk_file.h"

/// Writes the demo's board and walks into the folder given: what demo/device holds.
int main(int argc, char** argv) {
  using namespace netmend;
  if (argc != 2) {
    std::cerr << "usage: draw_demo FOLDER\n";
    return 2;
  }
  const std::filesystem::path folder = argv[1];
  std::filesystem::create_directories(folder);
  const Board board = demo::loggerBoard();
  Result<void> written = writeBoardFile(folder / "tide-logger.netmend-board.json", board);
  const auto walks = demo::keypadWalks(board, 8);
  for (std::size_t i = 0; i < walks.size() && written; ++i) {
    const std::string name = i + 1 < walks.size() ? "good-" + std::to_string(i + 1) : "faulty";
    written = writeWalkFile(folder / (name + ".netmend-walk.json"), walks[i]);
  }
  if (written) return 0;
  std::cerr << written.error().text() << "\n";
  return 1;
}
