#include <algorithm>

#include <catch2/catch.hpp>

#include "short_bench.h"

using namespace netmend;
using namespace netmend::test;

namespace {

RailBoard rail(int capacitors) {
  RailBoard board;
  for (int i = 0; i < capacitors; ++i)
    board.capacitor("C" + std::to_string(i + 1), 10.0 * i);
  for (int i = 0; i + 1 < capacitors; ++i)
    board.track(10.0 * i, 10.0 * (i + 1));
  return board;
}

std::string labelOf(const ShortSearch& search, const ShortProbe& probe) {
  return search.points[probe.point].label;
}

} // namespace

TEST_CASE("after one end the other end is read next, and never the same point twice") {
  const RailBoard board = rail(6);
  const ShortSearch search = board.search({board.milliohms("C1.1", 60)});
  const NextShortProbe next = nextShortProbe(search);
  REQUIRE_FALSE(next.ranked.empty());
  CHECK_FALSE(next.stop);
  CHECK(next.ranked.front().mode == ReadingMode::milliohms);
  CHECK(labelOf(search, next.ranked.front()) == "C6.1");
  CHECK(next.ranked.front().bits > 0.5);
  for (const ShortProbe& probe : next.ranked) {
    CHECK(labelOf(search, probe) != "C1.1");
    CHECK(probe.bits <= next.openBits + 1e-9);
  }
  const NextShortProbe other = nextShortProbe(search, {"C6.1"});
  CHECK(labelOf(search, other.ranked.front()) == "C5.1");
}

TEST_CASE("it stops where nothing is left to tell") {
  const RailBoard board = rail(4);
  // 30 mΩ at C2, 9.8522 mΩ for 10 mm.
  const ShortSearch search = board.search({board.milliohms("C1.1", 39.8522), board.milliohms("C4.1", 49.7044),
                                           board.milliohms("C2.1", 30.0), board.milliohms("C3.1", 39.8522)});
  CHECK(search.suspects.front().probability > 0.95);
  CHECK(nextShortProbe(search).stop);
}

TEST_CASE("a meter without milliohms reads drops where a current is injected") {
  const RailBoard board = rail(4);
  const Lookup lookup(board.drawn.board);
  const BoardGraph graph = buildBoardGraph(board.drawn.board);
  const Line line = lineOf(lookup, graph, board.rail);
  const auto meters = loadMeters(NETMEND_SOURCE_DIR "/data/meters.json").value();
  ShortInput input{lookup,
                   graph,
                   line,
                   shortPriors(),
                   readProbeEfforts(NETMEND_SOURCE_DIR "/data/efforts.json").value(),
                   *findMeter(meters, "handheld-4000"),
                   board.pinOf("C1.1")};
  const NextShortProbe drops = nextShortProbe(findShort(input, {}));
  CHECK(drops.ranked.front().mode == ReadingMode::dropUnderCurrent);
  input.injectedAt = {};
  CHECK(nextShortProbe(findShort(input, {})).ranked.front().mode == ReadingMode::milliohms);
}

TEST_CASE("the drop falls evenly to the short and not beyond it") {
  const RailBoard board = rail(3);
  const ShortSearch search = board.search(
      {board.milliohms("C1.1", 39.8522), board.milliohms("C3.1", 39.8522), board.milliohms("C2.1", 30.0)});
  const std::size_t place = search.suspects.front().places.front();
  REQUIRE(search.places[place].at == mm(10, 0));
  const auto into = std::find_if(search.points.begin(), search.points.end(),
                                 [](const ProbePlace& point) { return point.label == "C1.1"; });
  const DropPattern pattern =
      dropPattern(search, place, static_cast<std::size_t>(into - search.points.begin()), Amperes(0.5));
  CHECK(pattern.most.value == Approx(0.5 * (search.resistance.value + 9.8522e-3)).epsilon(1e-4));
  int tracks = 0;
  for (const DropPiece& piece : pattern.pieces) {
    if (piece.way.size() < 2) continue;
    ++tracks;
    const auto at = [&](Length x) {
      const double mmBefore = std::max(0.0, 10.0 - x.mm());
      return 0.5 * (search.resistance.value + 0.98522e-3 * mmBefore);
    };
    CHECK(piece.from.value == Approx(at(piece.way.front().x)).epsilon(1e-4));
    CHECK(piece.to.value == Approx(at(piece.way.back().x)).epsilon(1e-4));
  }
  CHECK(tracks == 2);
  CHECK(dropPattern(search, search.places.size() - 1, 0, Amperes(1)).pieces.empty());
}
