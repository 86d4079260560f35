#include <catch2/catch.hpp>

#include "drawn_line.h"

using namespace netmend;
using netmend::test::DrawnLine;
using netmend::test::mm;

TEST_CASE("what stands behind a pin comes from the board first, then from the part, with its confidence") {
  DrawnLine drawn;
  const auto supply = drawn.addNet("+3V3", NetRole::supply);
  const auto ground = drawn.addNet("GND", NetRole::ground);
  const auto chip = drawn.part("U1", PartKind::chip);
  drawn.pinOnLine(chip, "1", mm(0, 0));
  drawn.pinOnLine(drawn.part("J1", PartKind::connector), "1", mm(1, 0));
  const auto pullUp = drawn.part("R1", PartKind::resistor, "4k7");
  drawn.pinOnLine(pullUp, "1", mm(2, 0));
  drawn.pin(pullUp, "2", supply);
  const auto pullDown = drawn.part("R2", PartKind::resistor, "10k");
  drawn.pinOnLine(pullDown, "1", mm(3, 0));
  drawn.pin(pullDown, "2", ground);
  const auto weak = drawn.part("R3", PartKind::resistor, "1M");
  drawn.pinOnLine(weak, "1", mm(4, 0));
  drawn.pin(weak, "2", supply);
  const auto missing = drawn.part("U2", PartKind::chip);
  drawn.pinOnLine(missing, "1", mm(5, 0));
  auto absent = *drawn.board.parts.find(missing);
  absent.fitted = fromUser(false);
  drawn.board.parts.put(absent);
  drawn.pinOnLine(drawn.part("U3", PartKind::chip), "1", mm(6, 0));
  auto told = *drawn.board.pins.find(drawn.pins[6]);
  told.termination = measured(Termination::none);
  drawn.board.pins.put(told);

  const Lookup lookup(drawn.board);
  const auto priors = test::priorsFromData();
  const auto found = terminationsOf(lookup, drawn.line, priors);
  REQUIRE(found.size() == 7);
  CHECK(found[0].shares.junction == found[0].confidence());
  CHECK(found[0].confidence() == Approx(priors.terminations.at(PartKind::chip).junction));
  CHECK(found[0].origin == Origin::guessed);
  CHECK(found[1].shares.none == 1.0);
  CHECK(found[1].confidence() == 1.0);
  CHECK(found[2].shares.resistive == found[2].confidence());
  CHECK(found[2].throughRail);
  CHECK(found[2].resistance == Ohms(4700) + priors.railOhms);
  CHECK(found[3].resistance == Ohms(10e3));
  CHECK_FALSE(found[3].throughRail);
  CHECK(found[4].shares.none == found[4].confidence());
  CHECK(found[5].confidence() == 1.0);
  CHECK(found[6].shares.none == 1.0);
  CHECK(found[6].origin == Origin::measured);
}
