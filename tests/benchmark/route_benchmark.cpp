// A way on one side of the largest demo board from nothing (free area, then search), a search in the ready
// free area against CGAL's exact geodesic on the same triangles in the same run, and whole proposals for a
// broken track.
#include <cmath>
#include <filesystem>
#include <iostream>
#include <random>

#include <fmt/format.h>

#include "demo_boards.h"
#include "geodesic_peer.h"
#include "netmend/base/data_folder.h"
#include "netmend/board/exchange/import.h"
#include "netmend/jumper/proposal.h"
#include "netmend/netgraph/board_graph.h"
#include "report.h"

using namespace netmend;
using namespace netmend::benchmarks;

namespace {

constexpr std::size_t queries = 12;

struct Ends {
  Point from;
  Point to;
};

/// Places in the middle of random free triangles.
std::vector<Ends> randomEnds(const NavigationMesh& mesh, unsigned seed) {
  std::vector<Point> places;
  for (const auto& triangle : mesh.triangles) {
    if (!triangle.free) continue;
    Point sum;
    for (const auto corner : triangle.corner)
      sum = sum + mesh.vertices[static_cast<std::size_t>(corner)];
    const Point middle{sum.x / 3, sum.y / 3};
    if (mesh.freeAt(middle)) places.push_back(middle);
  }
  std::mt19937 random(seed);
  std::vector<Ends> ends;
  while (places.size() > 1 && ends.size() < queries) {
    std::uniform_int_distribution<std::size_t> any(0, places.size() - 1);
    ends.push_back({places[any(random)], places[any(random)]});
  }
  return ends;
}

void reportQueries(const FreeArea& area, const std::vector<Ends>& all, Report& report) {
  const GeodesicPeer peer(area.mesh);
  double ours = 0.0;
  double theirs = 0.0;
  double worst = 0.0;
  std::size_t found = 0;
  for (const auto& [from, to] : all) {
    std::optional<double> way;
    ours += leastMillisecondsOf(3, [&] {
      if (const auto result = shortestWay(area.mesh, from, to)) way = result->length.mm();
    });
    double reference = -1.0;
    theirs += millisecondsOf([&] { reference = peer.lengthMm(from, to); });
    if (way.has_value() != (reference >= 0.0))
      report.note(fmt::format("a way {}, the peer says {}", way ? "was found" : "was not found", reference));
    if (!way || reference < 0.0) continue;
    ++found;
    worst = std::max(worst, std::abs(*way - reference) / reference);
  }
  const auto count = static_cast<double>(all.size());
  report.object()["ways_found"] = found;
  report.add("query_ms", ours / count, "ms (mean)");
  report.add("cgal_query_ms", theirs / count, "ms (mean)");
  report.add("route_vs_cgal", ours / theirs, "of the peer's time");
  // Lengths are whole nanometres here.
  report.add("worst_relative_error", worst, fmt::format("over {} ways", found), 1e-6);
}

/// The longest track on a signal net whose loss leaves terminals on both sides.
std::optional<JumperRequest> someBreak(const BoardGraph& graph) {
  std::optional<JumperRequest> best;
  Length longest(0);
  for (const auto& net : graph.nets) {
    for (const auto edge : boost::make_iterator_range(boost::edges(net.graph))) {
      const auto& copper = net.graph[edge];
      if (copper.kind != EdgeKind::track || !copper.length.known() || copper.length.value <= longest)
        continue;
      if (!breakEnds(net.graph, {copper.index})) continue;
      longest = copper.length.value;
      best = JumperRequest{};
      best->graph = &net.graph;
      best->cut = {copper.index};
      best->net = net.net;
    }
  }
  return best;
}

} // namespace

int main(int argc, char** argv) {
  auto arguments = argumentsFrom(argc, argv);
  if (!arguments) return 2;
  if (arguments->files.empty()) {
    const auto largest = largestDemoBoard();
    if (!largest) return noBoard();
    arguments->files.push_back(*largest);
  }
  const auto imported = importBoard(std::filesystem::path(arguments->files.front()));
  const auto data = loadJumperData(dataFolder());
  if (!imported || !data) {
    std::cerr << (imported ? data.error() : imported.error()).text() << '\n';
    return 3;
  }
  const Lookup lookup(imported->board);
  Result<FreeArea> area = failure({});
  const double build = leastMillisecondsOf(5, [&] { area = buildFreeArea(lookup, Side::top, data->zones); });
  if (!area) {
    std::cerr << area.error().text() << '\n';
    return 3;
  }
  Report report(*arguments);
  report.object()["file"] = arguments->files.front();
  report.object()["triangles"] = area->mesh.triangles.size();
  const auto ends = randomEnds(area->mesh, 7);
  report.add("free_area_ms", build, "ms");
  double slowest = 0.0;
  for (const auto& [from, to] : ends)
    slowest = std::max(slowest, leastMillisecondsOf(3, [&] { keep(shortestWay(area->mesh, from, to)); }));
  report.add("route_ms", build + slowest, "ms (free area and the slowest search)", 50.0);
  reportQueries(*area, ends, report);

  const auto graph = buildBoardGraph(imported->board);
  if (const auto request = someBreak(graph)) {
    std::size_t proposals = 0;
    const auto time = leastMillisecondsOf(3, [&] {
      const auto result = proposeJumpers(lookup, *request, *data);
      proposals = result ? result->proposals.size() : 0;
    });
    report.add("proposals_ms", time, fmt::format("ms ({} proposals)", proposals), 50.0);
  } else {
    report.skip("proposals_ms", "no track of this board is a bridge between pins");
  }
  return report.finish();
}
