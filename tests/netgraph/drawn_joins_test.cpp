#include <catch2/catch.hpp>

#include "copper_board.h"

using namespace netmend;
using namespace netmend::test;

namespace {

/// Two pads of one part, 2 mm apart, with nets A and B, and a track to each.
struct Jumper : CopperBoard {
  PartId part;

  Jumper() {
    const PinId a = pin("A");
    part = board.pins.find(a)->part;
    Pin b = *board.pins.find(pin("B"));
    b.part = part;
    board.pins.put(b);
    pad(a, at(0, 0));
    pad(b.id, at(2, 0));
    track(at(-5, 0), at(0, 0), "A");
    track(at(2, 0), at(7, 0), "B");
  }
  void bridge(const std::string& netName = {}) {
    area({{at(0.2, -0.2), at(1.8, -0.2), at(1.8, 0.2), at(0.2, 0.2)}, {}}, netName);
  }
};

} // namespace

TEST_CASE("copper drawn without a net over two pads of a part joins their nets, and is no disagreement") {
  Jumper b;
  CHECK(drawnJoins(b.board, buildBoardGraph(b.board)).empty()); // open
  b.bridge();
  const auto graph = buildBoardGraph(b.board);
  CHECK(compareWithNames(b.board, graph).empty());
  const auto joins = drawnJoins(b.board, graph);
  REQUIRE(joins.size() == 1);
  CHECK(joins[0].part == b.part);
  CHECK(joins[0].nets == std::vector<NetId>{b.net("A"), b.net("B")});
  CHECK(distance(joins[0].at, at(1, 0)) < Length::fromMm(1));
}

TEST_CASE("pads of one part that touch each other, as a net tie's, are no disagreement either") {
  Jumper b;
  Pad wide = b.board.pads[0];
  wide.size = fromFile(Size{Length::fromMm(3.2), Length::fromMm(3.2)});
  b.board.pads.put(wide);
  const auto graph = buildBoardGraph(b.board);
  CHECK(compareWithNames(b.board, graph).empty());
  CHECK(drawnJoins(b.board, graph).size() == 1);
}

TEST_CASE("a short beside a closed jumper is still found, and so is copper with a net over the pads") {
  Jumper third;
  third.bridge();
  third.track(at(1, -3), at(1, 3), "C");
  const auto found = compareWithNames(third.board, buildBoardGraph(third.board));
  REQUIRE_FALSE(found.empty());
  for (const Disagreement& d : found)
    CHECK(std::count(d.nets.begin(), d.nets.end(), third.net("C")) == 1);

  Jumper elsewhere;
  elsewhere.bridge();
  elsewhere.track(at(-5, 0), at(-5, 5), "B");
  CHECK(compareWithNames(elsewhere.board, buildBoardGraph(elsewhere.board)).size() == 1);

  Jumper named;
  named.bridge("A");
  const auto graph = buildBoardGraph(named.board);
  CHECK(drawnJoins(named.board, graph).empty());
  CHECK_FALSE(compareWithNames(named.board, graph).empty());
}

TEST_CASE("copper without a net that joins pads of different parts is a disagreement") {
  CopperBoard b;
  b.pad(b.pin("A"), at(0, 0));
  b.pad(b.pin("B"), at(2, 0));
  b.track(at(-5, 0), at(0, 0), "A");
  b.area({{at(0.2, -0.2), at(1.8, -0.2), at(1.8, 0.2), at(0.2, 0.2)}, {}});
  const auto graph = buildBoardGraph(b.board);
  CHECK(drawnJoins(b.board, graph).empty());
  CHECK_FALSE(compareWithNames(b.board, graph).empty());
}
