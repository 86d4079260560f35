#include <catch2/catch.hpp>

#include "drawn_line.h"
#include "netmend/isolation/line_names.h"

using namespace netmend;
using netmend::test::DrawnLine;
using netmend::test::mm;

namespace {

struct NamedLine {
  const DrawnLine& drawn;
  Lookup lookup{drawn.board};
  PlaceNames places{lookup};
  Isolation isolation = drawn.isolation();
  LineNames names{places, drawn.line, isolation};

  /// The class that holds a break here.
  [[nodiscard]] const FaultClass& classWith(const std::vector<Point>& way) const {
    for (const auto& faultClass : isolation.classes)
      for (const auto& place : faultClass.places)
        if (place.way == way) return faultClass;
    FAIL("no such break");
    return isolation.classes.front();
  }
  [[nodiscard]] const PlaceName& breakIn(const std::vector<Point>& way) const {
    for (const auto& place : classWith(way).places)
      if (place.way == way) return names.fault(place);
    throw std::logic_error("a class without its place");
  }
};

} // namespace

TEST_CASE("a class that holds all stretches of one track is called by the whole track, counted once") {
  DrawnLine drawn;
  const auto j = drawn.pinOnLine(drawn.part("J1", PartKind::connector), "1", mm(0, 0));
  const auto u = drawn.pinOnLine(drawn.part("U1", PartKind::chip), "1", mm(78, 0), Access::underPart);
  const auto one = drawn.joint(mm(8, 0)), two = drawn.joint(mm(68, 0));
  drawn.track(j, one, 8);
  drawn.track(one, two, 60);
  drawn.track(two, u, 10);
  const NamedLine line{drawn};
  const auto& inside = line.classWith({mm(8, 0), mm(68, 0)});
  // Three stretches, the joint of U1 and its dead pin, none of which anybody reaches.
  REQUIRE(inside.places.size() == 5);
  const auto named = line.names.nameOf(inside);
  CHECK(named.places == 3);
  CHECK(named.place.sort == PlaceName::Sort::track); // the likeliest place is what it is called by
  CHECK(named.place.stretch == PlaceName::Stretch::whole);
  CHECK(named.place.fromTenths == 0);
  CHECK(named.place.toTenths == 0);
  const auto& first = line.breakIn({mm(0, 0), mm(8, 0)});
  const auto& middle = line.breakIn({mm(8, 0), mm(68, 0)});
  const auto& last = line.breakIn({mm(68, 0), mm(78, 0)});
  for (const auto* name : {&first, &middle, &last}) {
    CHECK(name->sort == PlaceName::Sort::track);
    CHECK(name->layer == PlaceName::Layer::inner);
    CHECK(name->from.pin == "J1.1");
    CHECK(name->to.pin == "U1.1");
  }
  CHECK(first.stretch == PlaceName::Stretch::first);
  CHECK(first.toTenths == 80);
  CHECK(middle.stretch == PlaceName::Stretch::between);
  CHECK(middle.fromTenths == 80);
  CHECK(middle.toTenths == 680);
  CHECK(last.stretch == PlaceName::Stretch::last);
  CHECK(last.toTenths == 100);
}

TEST_CASE("a barrel of a via that the board does not have is a break at a place that nobody knows") {
  DrawnLine drawn;
  const auto j = drawn.pinOnLine(drawn.part("J1", PartKind::connector), "1", mm(0, 0));
  const auto u = drawn.pinOnLine(drawn.part("U1", PartKind::chip), "1", mm(20, 0));
  drawn.edge(j, u, {EdgeKind::via, ViaId(9999), 0, {}, {}, {}, {}, -1, fromUser(Ohms(0.002))});
  const NamedLine line{drawn};
  const auto& barrel = line.classWith({});
  REQUIRE(barrel.places.size() == 1);
  CHECK(barrel.places[0].edgeKind == EdgeKind::via);
  CHECK_FALSE(barrel.places[0].at);
  CHECK(line.names.nameOf(barrel).place.sort == PlaceName::Sort::somewhere);
  CHECK(line.names.nameOf(barrel).places == 1);
}
