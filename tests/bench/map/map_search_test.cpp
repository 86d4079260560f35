#include "bench/map/map_search.h"

#include <catch2/catch.hpp>

#include <QLineEdit>
#include <QTest>

#include "bench/map/map_tools.h"
#include "shown_map.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

std::vector<std::string> namesOf(const std::vector<MapHit>& hits) {
  std::vector<std::string> names;
  names.reserve(hits.size());
  for (const MapHit& hit : hits)
    names.push_back(hit.name);
  return names;
}

SmallBoard withResistors() {
  SmallBoard small;
  for (const char* reference : {"R10", "R2", "R1", "FR1"}) {
    const PartId id = small.part(reference, Side::top, box(30, 30, 34, 32));
    Part part = *small.board.parts.find(id);
    part.value = fromUser<std::string>("4k7");
    small.board.parts.put(part);
  }
  return small;
}

} // namespace

TEST_CASE("what is the text comes first, then what begins with it, then what holds it, numbers as numbers") {
  const SmallBoard small = withResistors();
  const MapIndex index{Lookup(small.board)};
  CHECK(namesOf(index.find("r1")) == std::vector<std::string>{"R1", "R10", "FR1"});
  CHECK(namesOf(index.find("R")) == std::vector<std::string>{"R1", "R2", "R10", "FR1"});
}

TEST_CASE("pins are found as they are written, nets by name and parts by value") {
  const SmallBoard small = withResistors();
  const MapIndex index{Lookup(small.board)};
  const auto pins = index.find("j4.3");
  REQUIRE(pins.size() == 1);
  CHECK(pins[0].kind == MapHitKind::pin);
  CHECK(pins[0].pin == small.keyPin);
  CHECK(pins[0].detail == "KEY_COL3");
  const auto nets = index.find(" key_ ");
  REQUIRE(nets.size() == 1);
  CHECK(nets[0].net == small.key);
  CHECK(index.find("4K7").size() == 4);
  CHECK(index.find("4k7", 2).size() == 2);
  CHECK(index.find("").empty());
  CHECK(index.find("  ").empty());
  CHECK(index.find("no such thing").empty());
}

TEST_CASE("numbers of any length are put in order") {
  SmallBoard small;
  for (const char* reference :
       {"C00000000000000000000000000000000000000012", "C7", "C99999999999999999999999999999", "C", "C007"})
    small.part(reference, Side::top, box(30, 30, 34, 32));
  const MapIndex index{Lookup(small.board)};
  const auto names = namesOf(index.find("C"));
  CHECK(names.front() == "C");
  CHECK(std::find(names.begin(), names.end(), "C99999999999999999999999999999") >
        std::find(names.begin(), names.end(), "C00000000000000000000000000000000000000012"));
}

TEST_CASE("typing and Return show what was meant, and the keys are the map's again") {
  ShownMap shown;
  MapSearch search(*shown.map);
  search.QWidget::show();
  search.setFocus();
  const double before = shown.map->view().scale.value;
  QTest::keyClicks(&search, QStringLiteral("key_col"));
  REQUIRE(search.hits().size() == 1);
  QTest::keyClick(&search, Qt::Key_Return);
  CHECK(shown.map->overlay().litNets == std::vector<NetId>{shown.small.key});
  CHECK(search.isHidden());
  search.QWidget::show();
  QTest::keyClick(&search, Qt::Key_A, Qt::ControlModifier);
  QTest::keyClicks(&search, QStringLiteral("J4.3"));
  QTest::keyClick(&search, Qt::Key_Return);
  CHECK(shown.map->view().scale.value > 2 * before);
  CHECK(shown.map->view().frame.contains(shown.map->view().toPicture(at(12, 20))));
}
