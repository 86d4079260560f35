#include <algorithm>
#include <random>
#include <set>

#include <catch2/catch.hpp>

#include "netmend/netgraph/copper_graph.h"

#include "support/effort.h"
#include "support/seed.h"

using namespace netmend;

namespace {

using Ends = std::vector<std::pair<std::size_t, std::size_t>>;

/// `indexStep` keeps an edge's index apart from its place in the list.
CopperGraph graphOf(std::size_t nodes, const Ends& ends, std::size_t indexStep = 1) {
  CopperGraph graph(nodes);
  for (std::size_t i = 0; i < ends.size(); ++i) {
    CopperEdge edge;
    edge.index = i * indexStep;
    boost::add_edge(ends[i].first, ends[i].second, edge, graph);
  }
  return graph;
}

/// Number of pieces, the plain way: spread labels until nothing changes.
std::size_t pieces(std::size_t nodes, const Ends& ends, const std::set<std::size_t>& without,
                   std::size_t missingNode = SIZE_MAX) {
  std::vector<std::size_t> label(nodes);
  for (std::size_t i = 0; i < nodes; ++i)
    label[i] = i;
  for (bool changed = true; changed;) {
    changed = false;
    for (std::size_t i = 0; i < ends.size(); ++i) {
      const auto [a, b] = ends[i];
      if (without.contains(i) || a == missingNode || b == missingNode || label[a] == label[b]) continue;
      label[a] = label[b] = std::min(label[a], label[b]);
      changed = true;
    }
  }
  std::set<std::size_t> distinct;
  for (std::size_t i = 0; i < nodes; ++i)
    if (i != missingNode) distinct.insert(label[i]);
  return distinct.size();
}

struct Random {
  std::mt19937 engine;
  std::size_t upTo(std::size_t most) { return std::uniform_int_distribution<std::size_t>(0, most)(engine); }
};

/// Sparse enough for bridges, with parallel edges and loops.
Ends randomEnds(Random& random, std::size_t nodes) {
  Ends ends(random.upTo(nodes * 3 / 2));
  for (auto& [a, b] : ends) {
    a = random.upTo(nodes - 1);
    b = random.upTo(9) == 0 ? a : random.upTo(nodes - 1);
  }
  const auto single = ends.size();
  for (std::size_t i = 0; i < single; ++i)
    if (random.upTo(7) == 0)
      ends.push_back(random.upTo(1) == 0 ? ends[i] : std::pair(ends[i].second, ends[i].first));
  return ends;
}

} // namespace

TEST_CASE("taking an edge out leaves the fragments on its two sides") {
  // 0-1-2-3 with a branch 1-4.
  const auto graph = graphOf(5, {{0, 1}, {1, 2}, {2, 3}, {1, 4}}, 10);
  const auto whole = fragments(graph, {});
  CHECK(whole.count == 1);
  const auto cut = fragments(graph, {10});
  CHECK(cut.count == 2);
  CHECK(cut.ofNode == std::vector<std::size_t>{0, 0, 1, 1, 0});
  CHECK(fragments(graph, {0, 10, 20, 30}).count == 5);
  CHECK(fragments(graph, {11, 12}).count == 1); // no such edges
}

TEST_CASE("an empty graph has no fragments, bridges or articulation points") {
  const CopperGraph none;
  CHECK(fragments(none, {}).count == 0);
  CHECK(bridges(none).empty());
}

TEST_CASE("one of two parallel edges is no bridge, and a loop changes nothing") {
  CHECK(bridges(graphOf(2, {{0, 1}, {1, 0}})).empty());
  CHECK(bridges(graphOf(2, {{0, 1}, {1, 1}})) == std::vector<std::size_t>{0});
  CHECK(bridges(graphOf(3, {{0, 0}, {0, 1}, {1, 1}, {1, 2}, {2, 1}})) == std::vector<std::size_t>{1});
}

TEST_CASE("bridges and fragments equal those found by taking out each edge") {
  const unsigned seed = netmend::testSeed();
  INFO("seed " << seed);
  Random random{std::mt19937(seed)};
  std::size_t seenBridges = 0;
  const int times = netmend::rounds(400);
  for (int round = 0; round < times; ++round) {
    const auto nodes = 1 + random.upTo(24);
    const auto ends = randomEnds(random, nodes);
    const auto graph = graphOf(nodes, ends, 3);
    const auto whole = pieces(nodes, ends, {});

    std::vector<std::size_t> wantedBridges;
    for (std::size_t i = 0; i < ends.size(); ++i)
      if (pieces(nodes, ends, {i}) > whole) wantedBridges.push_back(3 * i);
    REQUIRE(bridges(graph) == wantedBridges);

    std::set<std::size_t> cut;
    std::vector<std::size_t> cutIndices;
    for (std::size_t i = 0; i < ends.size(); ++i)
      if (random.upTo(3) == 0 && cut.insert(i).second) cutIndices.push_back(3 * i);
    const auto split = fragments(graph, cutIndices);
    REQUIRE(split.count == pieces(nodes, ends, cut));
    for (std::size_t i = 0; i < ends.size(); ++i)
      if (!cut.contains(i)) REQUIRE(split.ofNode[ends[i].first] == split.ofNode[ends[i].second]);
    seenBridges += wantedBridges.size();
  }
  CHECK(seenBridges > static_cast<std::size_t>(times));
}

TEST_CASE("a chain of a hundred thousand edges is all bridges") {
  Ends ends;
  for (std::size_t i = 0; i < 100'000; ++i)
    ends.emplace_back(i, i + 1);
  const auto graph = graphOf(100'001, ends);
  CHECK(bridges(graph).size() == 100'000);
}
