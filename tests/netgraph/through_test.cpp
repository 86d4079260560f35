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

TEST_CASE("each kind passes at the pin counts of its rule and at no others") {
  for (const auto kind : {PartKind::resistor, PartKind::zeroOhmLink, PartKind::inductor, PartKind::ferrite,
                          PartKind::fuse, PartKind::choke, PartKind::resistorArray})
    for (std::size_t pins = 0; pins <= 36; ++pins) {
      const bool even = pins % 2 == 0;
      const bool array = kind == PartKind::resistorArray, choke = kind == PartKind::choke;
      const bool passes = array   ? even && pins >= 4 && pins <= 32
                          : choke ? even && pins >= 2 && pins <= 16
                                  : pins == 2;
      WiredBoard wired;
      wired.part("X1", kind, "", std::vector<std::string>(pins, "A"));
      INFO(static_cast<int>(kind) << " with " << pins << " pins");
      CHECK(pathsOf(wired, "X1").size() == (passes ? pins / 2 : 0));
    }
}

TEST_CASE("names of pins count as people count, with letters, noughts in front and names alike") {
  // Two pins of a resistor array of four: which names stand across from each other tells their order.
  const auto order = [](std::vector<std::string> names) {
    WiredBoard wired;
    wired.part("RN1", PartKind::resistorArray, "33", std::vector<std::string>(names.size(), "A"));
    for (std::size_t i = 0; i < names.size(); ++i) {
      Pin pin = *wired.board.pins.find(wired.pins["RN1." + std::to_string(i + 1)]);
      pin.name = names[i];
      wired.board.pins.put(pin);
    }
    return pathsOf(wired, "RN1");
  };
  CHECK(order({"10", "9", "2", "1"}) == Pairs{"1-10", "2-9"});
  CHECK(order({"A10", "A9", "A2", "B1"}) == Pairs{"A2-B1", "A9-A10"});
  CHECK(order({"1B", "1A", "1", "2"}) == Pairs{"1-2", "1A-1B"});
  CHECK(order({"12", "11", "21", "3"}) == Pairs{"3-21", "11-12"});
  CHECK(order({"A", "", "B", "AA"}) == Pairs{"-B", "A-AA"});
  CHECK(order({"007", "06", "8", "5"}) == Pairs{"5-8", "06-007"});
  CHECK(order({"P10X", "P9X", "P9", "P10"}) == Pairs{"P9-P10X", "P9X-P10"});
  CHECK(order({"0", "00", "1", "2"}) == Pairs{"0-2", "00-1"}); // as entered, where they count the same
  CHECK(order({"00", "0", "1", "2"}) == Pairs{"00-2", "0-1"});
  CHECK(order({"99", "100", "98", "101"}) == Pairs{"98-101", "99-100"});
}

TEST_CASE(
    "a filter of three or four pins may carry a supply or a signal, but not radio nor a net that is gone") {
  WiredBoard wired;
  wired.part("FL1", PartKind::filter, "", {"GND", "VCC", "VCC_F"});
  wired.part("FL2", PartKind::filter, "", {"IN", "GND", "OUT", "GND", "GND"}); // five pins
  wired.part("FL3", PartKind::filter, "", {"GND", "GND", "GND", "OUT"});
  wired.part("FL4", PartKind::filter, "", {"IN", "GND", "OUT"});
  CHECK(pathsOf(wired, "FL1") == Pairs{"2-3"});
  CHECK(pathsOf(wired, "FL2").empty());
  CHECK(pathsOf(wired, "FL3").empty());
  CHECK_FALSE(factOf(wired, "FL4").value.front().resistance.known());
  Pin none = *wired.board.pins.find(wired.pins["FL4.3"]);
  none.net = fromFile(NetId{}); // known to be on no net
  wired.board.pins.put(none);
  CHECK(pathsOf(wired, "FL4").empty());
}

TEST_CASE("a resistance is a number or ohms, nought or no less than a tenth of a milliohm") {
  const auto resistance = [](const std::string& value, PartKind kind = PartKind::resistor) {
    WiredBoard wired;
    wired.part("R1", kind, value, {"A", "B"});
    return factOf(wired, "R1").value.front().resistance;
  };
  CHECK(resistance("0") == fromFile(Ohms(0)));
  CHECK(resistance("22") == fromFile(Ohms(22)));
  CHECK(resistance("22R") == fromFile(Ohms(22)));
  CHECK_FALSE(resistance("22V").known());
  CHECK_FALSE(resistance("no number").known());
  CHECK_FALSE(resistance("").known());
  CHECK(resistance("0.0001").known());
  CHECK_FALSE(resistance("0.00009").known());
  CHECK_FALSE(resistance("22", PartKind::fuse).known());
  CHECK_FALSE(resistance("22", PartKind::inductor).known());
  CHECK_FALSE(resistance("22", PartKind::choke).known());
  CHECK(resistance("22", PartKind::zeroOhmLink) == guessed(Ohms(0)));
}
