#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <string>

#include "netmend/board/board_file.h"
#include "netmend/board/connector_board.h"
#include "netmend/board/words.h"
#include "random_board.h"

namespace {

/// One part and one zone of each kind: the two enumerations that chance alone would not cover.
netmend::Board everyKind() {
  netmend::Board board;
  for (const auto& kind : netmend::boardWords<netmend::PartKind>) {
    netmend::Part part;
    part.id = board.newId<netmend::PartId>();
    part.kind = netmend::fromUser(kind.value);
    board.parts.put(part);
  }
  for (const auto& kind : netmend::boardWords<netmend::ZoneKind>) {
    netmend::Zone zone;
    zone.id = board.newId<netmend::ZoneId>();
    zone.kind = kind.value;
    board.zones.put(zone);
  }
  return board;
}

} // namespace

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
                                 : i == 2 ? everyKind()
                                          : random.board(3 * i);
    const auto written = netmend::writeBoardFile(folder / (std::to_string(i) + ".netmend-board.json"), board);
    if (!written) {
      std::fputs((written.error().text() + "\n").c_str(), stderr);
      return 1;
    }
  }
  return 0;
}
