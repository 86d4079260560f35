#include <catch2/catch.hpp>

#include "netgraph/through.h"
#include "netmend/netgraph/line.h"
#include "wired_board.h"

using namespace netmend;
using netmend::test::WiredBoard;

namespace {

Fact<std::vector<Through>> factOf(const WiredBoard& wired, const std::string& reference) {
  const PartId part = wired.parts.at(reference);
  return pathsIfFitted(wired.board, *wired.board.parts.find(part), Lookup(wired.board).pinsOf(part));
}

/// The paths of a part as pairs of pin names.
std::vector<std::string> pathsOf(const WiredBoard& wired, const std::string& reference) {
  const auto paths = factOf(wired, reference);
  std::vector<std::string> result;
  for (const auto& path : paths.value)
    result.push_back(wired.board.pins.find(path.from)->name + "-" + wired.board.pins.find(path.to)->name);
  return result;
}

using Pairs = std::vector<std::string>;

} // namespace

TEST_CASE("parts of two pins that conduct pass from pin to pin") {
  for (const auto kind : {PartKind::resistor, PartKind::zeroOhmLink, PartKind::inductor, PartKind::ferrite,
                          PartKind::fuse, PartKind::choke}) {
    WiredBoard wired;
    wired.part("X1", kind, "", {"A", "B"});
    CHECK(pathsOf(wired, "X1") == Pairs{"1-2"});
    CHECK(factOf(wired, "X1").origin == Origin::guessed);
  }
}

TEST_CASE("parts that block direct current or switch it pass nothing") {
  for (const auto kind : {PartKind::capacitor, PartKind::diode, PartKind::led, PartKind::crystal,
                          PartKind::chip, PartKind::connector, PartKind::switchOrKey, PartKind::transistor}) {
    WiredBoard wired;
    wired.part("X1", kind, "", {"A", "B"});
    CHECK(pathsOf(wired, "X1").empty());
    CHECK(factOf(wired, "X1").known());
  }
}

TEST_CASE("a common-mode choke passes 1-4 and 2-3, an isolated array each pin and the one across") {
  // Common practice, no source.
  WiredBoard wired;
  wired.part("L1", PartKind::choke, "", {"A", "B", "C", "D"});
  wired.part("RN1", PartKind::resistorArray, "33", {"A", "B", "C", "D", "E", "F", "G", "H"});
  wired.part("RN2", PartKind::resistorArray, "10k", {"VCC", "B", "C", "D", "E", "F", "G", "H", "I"});
  CHECK(pathsOf(wired, "L1") == Pairs{"1-4", "2-3"});
  CHECK(pathsOf(wired, "RN1") == Pairs{"1-8", "2-7", "3-6", "4-5"});
  CHECK(pathsOf(wired, "RN2").empty()); // an odd number of pins: bussed
  CHECK(factOf(wired, "RN1").value[2].resistance == fromFile(Ohms(33)));
}

TEST_CASE("pins count by number, not by the order they were entered or spelt") {
  WiredBoard wired;
  wired.part("RN1", PartKind::resistorArray, "33", std::vector<std::string>(10, "A"));
  // Spelling alone would put "10" before "2".
  CHECK(pathsOf(wired, "RN1") == Pairs{"1-10", "2-9", "3-8", "4-7", "5-6"});
}

TEST_CASE("a filter passes between its two live pins when the others are on ground") {
  WiredBoard wired;
  wired.part("FL1", PartKind::filter, "", {"IN", "GND", "OUT"});
  wired.part("FL2", PartKind::filter, "", {"IN", "GND", "OUT", "GND"});
  wired.part("FL3", PartKind::filter, "", {"IN", "MID", "OUT"});      // no ground
  wired.part("FL4", PartKind::filter, "", {"IN", "", "OUT"});         // one unknown
  wired.part("FL5", PartKind::filter, "", {"IN", "GND", "OUT", "X"}); // three live pins
  wired.part("FL6", PartKind::filter, "", {"IN", "GND"});
  wired.part("FL7", PartKind::filter, "", {"RF_IN", "GND", "RF_OUT"});
  auto radio = *wired.board.nets.find(wired.nets["RF_IN"]);
  radio.role = fromUser(NetRole::radio);
  wired.board.nets.put(radio);
  CHECK(pathsOf(wired, "FL1") == Pairs{"1-3"});
  CHECK(pathsOf(wired, "FL2") == Pairs{"1-3"});
  for (const auto* reference : {"FL3", "FL4", "FL5", "FL6", "FL7"}) {
    INFO(reference);
    CHECK(pathsOf(wired, reference).empty());
  }
}

TEST_CASE("what the board says of a part's paths stands over its kind") {
  WiredBoard wired;
  wired.part("U1", PartKind::chip, "", {"A", "B", "C"});
  auto& part = wired.change("U1");
  part.through = fromUser(std::vector<Through>{{wired.pins["U1.1"], wired.pins["U1.3"], fromUser(Ohms(2))}});
  wired.put();
  CHECK(pathsOf(wired, "U1") == Pairs{"1-3"});
  CHECK(factOf(wired, "U1").origin == Origin::user);
}

TEST_CASE("the paths of a part of unknown kind are unknown") {
  WiredBoard wired;
  wired.part("Q9", PartKind::other, "", {"A", "B"});
  wired.change("Q9").kind = {};
  wired.put();
  CHECK_FALSE(factOf(wired, "Q9").known());
}

TEST_CASE("only resistors take a resistance from their value") {
  WiredBoard wired;
  wired.part("R1", PartKind::resistor, "4k7", {"A", "B"});
  wired.part("R2", PartKind::resistor, "100n", {"A", "B"}); // no resistance
  wired.part("FB1", PartKind::ferrite, "600R", {"A", "B"}); // an impedance at some frequency
  wired.part("R3", PartKind::zeroOhmLink, "", {"A", "B"});
  const auto resistance = [&](const char* reference) {
    return factOf(wired, reference).value.front().resistance;
  };
  CHECK(resistance("R1") == fromFile(Ohms(4700)));
  CHECK_FALSE(resistance("R2").known());
  CHECK_FALSE(resistance("FB1").known());
  CHECK(resistance("R3") == guessed(Ohms(0)));
}
