#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <string>

#include "netmend/board/board_file.h"
#include "netmend/board/connector_board.h"
#include "random_board.h"

/// Writes random boards into a folder, for the check against the JSON Schema.
int main(int argc, char** argv) {
  if (argc != 3) {
    std::fputs("usage: write_random_boards FOLDER SEED\n", stderr);
    return 2;
  }
  const std::filesystem::path folder = argv[1];
  netmend::test::RandomBoard random(static_cast<unsigned>(std::strtoul(argv[2], nullptr, 10)));
  for (std::size_t i = 0; i < 12; ++i) {
    const netmend::Board board = i == 0   ? netmend::Board{}
                                 : i == 1 ? netmend::makeConnectorBoard("J4", 30).value()
                                          : random.board(3 * i);
    const auto written = netmend::writeBoardFile(folder / (std::to_string(i) + ".netmend-board.json"), board);
    if (!written) {
      std::fputs((written.error().text() + "\n").c_str(), stderr);
      return 1;
    }
  }
  return 0;
}
