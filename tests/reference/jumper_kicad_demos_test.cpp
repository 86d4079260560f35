// Free areas, ways and proposals on the boards of the Debian package kicad-demos, read where it puts them.
#include <catch2/catch.hpp>

#include <filesystem>

#include "jumper/shapes.h"
#include "netmend/board/exchange/import.h"
#include "netmend/jumper/proposal.h"
#include "netmend/netgraph/line.h"
#include "support/effort.h"

using namespace netmend;
using namespace netmend::test;

namespace {

std::vector<std::filesystem::path> demoBoards() {
  std::vector<std::filesystem::path> boards;
  for (const auto& entry : std::filesystem::recursive_directory_iterator("/usr/share/kicad/demos"))
    if (entry.path().extension() == ".kicad_pcb") boards.push_back(entry.path());
  std::sort(boards.begin(), boards.end());
  return boards;
}

/// No segment comes nearer to a keep-out than its margin and half the wire.
void checkClear(const FreeArea& area, const std::vector<Point>& way) {
  for (std::size_t i = 1; i < way.size(); ++i)
    for (const std::size_t k : keepOutsNear(area, way[i - 1], way[i])) {
      const KeepOut& keepOut = area.obstacles.keepOuts[k];
      FAIL_CHECK("nearer to " << keepOut.name.label << " than allowed, at (" << way[i].x.mm() << ", "
                              << way[i].y.mm() << ") mm");
    }
}

/// The edge of a line that a seed picks, among those whose loss parts it into two with terminals.
std::optional<std::size_t> breakableEdge(const CopperGraph& graph, std::mt19937& random) {
  auto edges = bridges(graph);
  std::shuffle(edges.begin(), edges.end(), random);
  for (const std::size_t edge : edges)
    if (breakEnds(graph, {edge})) return edge;
  return std::nullopt;
}

} // namespace

TEST_CASE("ways and proposals on real boards keep clear of every keep-out") {
  const auto data = loadJumperData(std::filesystem::path(NETMEND_SOURCE_DIR) / "data");
  REQUIRE(data);
  const auto boards = demoBoards();
  REQUIRE(boards.size() >= 5);
  const unsigned seed = 20;
  std::mt19937 random(seed);
  INFO("seed " << seed);
  std::size_t ways = 0, proposals = 0, lines = 0;
  for (const auto& path : boards) {
    INFO(path.string());
    const auto imported = importBoard(path);
    REQUIRE(imported);
    const Board& board = imported->board;
    const Lookup lookup(board);
    for (const Side side : {Side::top, Side::bottom}) {
      const auto area = buildFreeArea(lookup, side, data->zones);
      INFO((area ? std::string() : area.error().text()));
      REQUIRE(area);
      std::uniform_int_distribution<std::size_t> any(0, area->mesh.vertices.size() - 1);
      for (int i = 0; i < netmend::rounds(20, 4); ++i) {
        const Point from = area->mesh.vertices[any(random)], to = area->mesh.vertices[any(random)];
        const auto way = shortestWay(area->mesh, from, to);
        if (!way) continue;
        checkClear(*area, way->points);
        ++ways;
      }
    }
    if (board.nets.empty()) continue;
    const BoardGraph graph = buildBoardGraph(board);
    std::uniform_int_distribution<std::size_t> anyNet(0, board.nets.size() - 1);
    for (int i = 0; i < netmend::rounds(6, 2); ++i) {
      const NetId net = board.nets[anyNet(random)].id;
      const Line line = lineOf(board, graph, net);
      const auto edge = breakableEdge(line.graph, random);
      if (!edge) continue;
      ++lines;
      const auto found = proposeJumpers(lookup, {&line.graph, {*edge}, net, {}, {}, 3}, *data);
      INFO((found ? std::string() : found.error().text()));
      REQUIRE(found);
      CHECK((found->proposals.size() == 3 || found->whyFewer != WhyFewer::asManyAsWanted));
      for (const JumperProposal& p : found->proposals) {
        CHECK(p.way.front() == p.from.at);
        CHECK(p.way.back() == p.to.at);
        CHECK(p.length.nm > 0);
        ++proposals;
      }
    }
  }
  WARN(boards.size() << " boards, " << ways << " ways, " << lines << " broken lines, " << proposals
                     << " proposals");
  CHECK(ways > static_cast<std::size_t>(netmend::rounds(50, 20)));
  CHECK(proposals > 20);
}
