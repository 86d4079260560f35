#include <filesystem>
#include <map>

#include <catch2/catch.hpp>

#include "netmend/board/edit.h"
#include "netmend/board/exchange/import.h"
#include "netmend/netgraph/board_graph.h"
#include "support/tiled_board.h"

using namespace netmend;

namespace {

struct Known {
  const char* file;
  std::size_t unconnected;
};

/// Boards of the Debian package `kicad-demos` 6.0.11, and what the CAD program's Python library (`pcbnew`
/// 6.0.11) counts as unconnected on them:
///   b = pcbnew.LoadBoard(file); b.BuildConnectivity(); b.GetConnectivity().GetUnconnectedCount()
const Known boards[] = {
    {"complex_hierarchy/complex_hierarchy", 0},
    {"custom_pads_test/custom_pads_test", 0},
    {"ecc83/ecc83-pp", 0},
    {"ecc83/ecc83-pp_v2", 0},
    {"flat_hierarchy/flat_hierarchy", 0},
    {"interf_u/interf_u", 0},
    {"kit-dev-coldfire-xilinx_5213/kit-dev-coldfire-xilinx_5213", 0},
    {"microwave/microwave", 0},
    {"pic_programmer/pic_programmer", 0},
    {"sonde xilinx/sonde xilinx", 0},
    {"stickhub/StickHub", 0},
    {"test_pads_inside_pads/test_pads_inside_pads", 0},
    {"test_xil_95108/carte_test", 0},
    {"video/video", 0},
};

Board read(const std::string& file) {
  auto imported = importBoard(std::filesystem::path("/usr/share/kicad/demos/" + file + ".kicad_pcb"));
  REQUIRE(imported);
  return std::move(imported->board);
}

/// The net that copper is said to be of, looked up without the graph's own code.
std::map<CopperObject, NetId> namedCopper(const Board& board) {
  std::map<CopperObject, NetId> out;
  const auto add = [&](CopperObject object, const Fact<NetId>& net) {
    if (net.known() && net.value) out[object] = net.value;
  };
  for (const Pad& pad : board.pads)
    add(pad.id, board.pins.find(pad.pin)->net);
  for (const Track& track : board.tracks)
    add(track.id, track.net);
  for (const Via& via : board.vias)
    add(via.id, via.net);
  for (const Area& area : board.areas)
    add(area.id, area.net);
  return out;
}

/// Same name: joined; joined: same name; nothing left out.
void checkPartition(const Board& board, const BoardGraph& graph) {
  auto named = namedCopper(board);
  std::map<NetId, std::size_t> islandOfNet;
  for (std::size_t i = 0; i < graph.islands.size(); ++i) {
    NetId here;
    for (const CopperObject& member : graph.islands[i].members) {
      const auto found = named.find(member);
      if (found == named.end()) continue;
      if (!here) here = found->second;
      CHECK(found->second == here);
      named.erase(found);
    }
    if (here) CHECK(islandOfNet.emplace(here, i).second);
  }
  CHECK(named.empty());
}

} // namespace

TEST_CASE("what copper joins is what net names join, both ways, on every board of kicad-demos") {
  for (const Known& known : boards) {
    INFO(known.file);
    const Board board = read(known.file);
    const auto graph = buildBoardGraph(board);
    checkPartition(board, graph);
    CHECK(compareWithNames(board, graph).size() == known.unconnected);
    REQUIRE(graph.nets.size() == board.nets.size());
    for (const NetGraph& net : graph.nets) {
      CHECK(net.islandCount <= 1);
      CHECK(fragments(net.graph, {}).count == net.islandCount);
    }
  }
}

TEST_CASE("four copies of a board side by side have four times its islands and nothing shorted") {
  const Board board = read("stickhub/StickHub");
  const Board four = test::tiled(board, 4);
  CHECK(checkReferences(four));
  const auto graph = buildBoardGraph(four);
  checkPartition(four, graph);
  CHECK(graph.islands.size() == 4 * buildBoardGraph(board).islands.size());
}
