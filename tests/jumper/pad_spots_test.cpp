#include <catch2/catch.hpp>

#include "bench_board.h"
#include "netmend/board/shape.h"
#include "netmend/jumper/proposal.h"

using namespace netmend;
using namespace netmend::test;

namespace {

/// A pad in the shape of an L, of two arms 2 mm wide and 8 mm long, at (20, 15) mm. `inner` is the corner
/// between the arms, seen from the pad's position.
struct LPad : BenchBoard {
  PinPad pad;

  explicit LPad(Point inner, double drill = 0) {
    pad = pin(part("SW1", PartKind::other, {}, Side::top, 0.1), "1", net("A"), mm(20, 15), PadReach::top, 8);
    Pad shaped = *board.pads.find(pad.pad);
    shaped.shape = fromUser(PadShape::polygon);
    for (const Point corner : {mm(-2, -2), mm(6, -2), mm(6, 0), mm(0, 0), mm(0, 6), mm(-2, 6)})
      shaped.polygon.push_back(inner + corner);
    if (drill > 0) shaped.drill = fromUser(Size{Length::fromMm(drill), Length::fromMm(drill)});
    board.pads.put(shaped);
    joint(pad);
  }
  [[nodiscard]] std::optional<Landing> landing() const {
    const auto rules = loadJumperData(std::filesystem::path(NETMEND_SOURCE_DIR) / "data");
    REQUIRE(rules);
    const Lookup lookup(board);
    FreeAreaOptions options;
    options.own = {pad.pad};
    const auto area = buildFreeArea(lookup, Side::top, rules->zones, options);
    REQUIRE(area);
    const auto list = landingsOf(lookup, graph, fragments(graph, {}), 0, *area, rules->landings);
    return list.landings.empty() ? std::nullopt : std::optional(list.landings.front());
  }
  [[nodiscard]] Point at() const {
    const auto found = landing();
    REQUIRE(found);
    return found->at;
  }
};

} // namespace

TEST_CASE("a pad whose position is beside its copper is soldered deep in the copper") {
  // Of the middles on lines at odd sixteenths of the pad's 8 mm the deepest, 1 mm, lie along the middle of
  // the arms from the third line on: 2.5 mm up from the lower edge, 1 mm from the left one.
  CHECK(LPad(mm(-1, -1)).at() == mm(20 - 1 - 2 + 1, 15 - 1 - 2 + 2.5));
}

TEST_CASE("a polygon pad is soldered at its position where that is half as deep as its copper goes") {
  CHECK(LPad(mm(0.5, -3)).at() == mm(20, 15));
  CHECK(LPad(mm(0.499999, -3)).at() != mm(20, 15));
  CHECK(LPad(mm(1.5, -3)).at() == mm(20, 15));
  CHECK(LPad(mm(1.500001, -3)).at() != mm(20, 15));
}

TEST_CASE("a drilled polygon pad is soldered at its hole, however near its edge that is") {
  CHECK(LPad(mm(0.1, -3), 0.8).at() == mm(20, 15));
  CHECK(LPad(mm(-0.1, -3), 0.8).at() != mm(20, 15)); // nothing to solder to there
}

TEST_CASE("where a body reaches over a polygon pad's position the wire goes elsewhere on its own copper") {
  LPad b(mm(1, 1)); // the position is the middle of the corner
  CHECK(b.at() == mm(20, 15));
  // 3 mm to the right, left, above and below of the position, where a square of 8 mm would have copper, two
  // of four places have none.
  b.part("U1", PartKind::other, box(18, 13, 26.5, 17.5), Side::top, 0.3);
  const Point at = b.at();
  CHECK(covers({padShape(*b.board.pads.find(b.pad.pad))->core, {}}, at));
  CHECK_FALSE(covers({box(18, 13, 26.5, 17.5), {}}, at));
  b.part("U2", PartKind::other, box(18, 17, 22, 22.5), Side::top, 0.3);
  CHECK_FALSE(b.landing());
}

TEST_CASE("a pad's slit towards a hole in its copper does not put the wire into the hole") {
  // A ring 8 mm outside, 4 mm inside, as one outline with a slit along its lower left diagonal.
  LPad b(mm(0, 0));
  Pad ring = *b.board.pads.find(b.pad.pad);
  ring.polygon = {mm(-4, -4), mm(4, -4), mm(4, 4), mm(-4, 4), mm(-4, -4),
                  mm(-2, -2), mm(-2, 2), mm(2, 2), mm(2, -2), mm(-2, -2)};
  b.board.pads.put(ring);
  const Point at = b.at();
  CHECK(std::max(std::abs(at.x.mm() - 20), std::abs(at.y.mm() - 15)) == Approx(3)); // the middle of the ring
}
