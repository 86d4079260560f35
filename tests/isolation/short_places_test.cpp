#include <catch2/catch.hpp>

#include "short_bench.h"

using namespace netmend;
using namespace netmend::test;

namespace {

/// 35 µm foil, 0.5 mm wide: 0.49261 mΩ × 20 squares for 10 mm.
constexpr double perTen = 9.8522;

RailBoard fourCapacitors() {
  RailBoard board;
  for (int i = 0; i < 4; ++i)
    board.capacitor("C" + std::to_string(i + 1), 10.0 * i);
  board.track(0, 10);
  board.track(10, 20);
  board.track(20, 30);
  return board;
}

PartId partOf(const RailBoard& board, const std::string& reference) {
  const Lookup lookup(board.drawn.board);
  return board.drawn.board.pins.find(lookup.pinsLabelled(reference + ".1").front())->part;
}

double shareOf(const RailBoard& board, const ShortSearch& search, const std::string& reference) {
  return probabilityOfPart(search, partOf(board, reference));
}

} // namespace

TEST_CASE("without readings parts stand by their weights") {
  RailBoard board = fourCapacitors();
  board.capacitor("D1", 40, PartKind::diode);
  board.track(30, 40);
  const ShortSearch search = board.search({});
  CHECK(shareOf(board, search, "C1") == Approx(shareOf(board, search, "C4")));
  // data/fault_priors.json: 0.5 against 1.
  CHECK(shareOf(board, search, "D1") == Approx(0.5 * shareOf(board, search, "C1")));
  CHECK(search.places.back().kind == ShortKind::noneOfThese);
  CHECK(search.places.back().probability == Approx(0.05));
  CHECK_FALSE(search.saysShort());
  double sum = 0.0;
  for (const ShortSuspect& suspect : search.suspects)
    sum += suspect.probability;
  CHECK(sum == Approx(1.0));
}

TEST_CASE("the two ends of a rail place the short between them") {
  const RailBoard board = fourCapacitors();
  // 30 mΩ at C2.
  const ShortSearch search =
      board.search({board.milliohms("C1.1", 30 + perTen), board.milliohms("C4.1", 30 + 2 * perTen)});
  REQUIRE(search.observations.size() == 2);
  CHECK(shareOf(board, search, "C2") > 0.8);
  CHECK(search.suspects.front().probability == Approx(shareOf(board, search, "C2")));
  CHECK(search.resistance.value == Approx(0.030).epsilon(0.15));
}

TEST_CASE("one reading leaves the near ones and the far ones open") {
  const RailBoard board = fourCapacitors();
  const ShortSearch search = board.search({board.milliohms("C1.1", 60)});
  for (const char* reference : {"C1", "C2", "C3", "C4"})
    CHECK(shareOf(board, search, reference) > 0.1);
  // 12 mΩ cannot come through 30 mm of this rail.
  const ShortSearch low = board.search({board.milliohms("C1.1", 12)});
  CHECK(shareOf(board, low, "C4") < 0.01);
}

TEST_CASE("drops under a current say the same as milliohms") {
  const RailBoard board = fourCapacitors();
  // 0.5 A in at C1, 30 mΩ at C3: C4 carries none and reads what C3 does.
  const ShortSearch search =
      board.search({board.drop("C1.1", 0.5 * (30 + 2 * perTen), 0.5),
                    board.drop("C2.1", 0.5 * (30 + perTen), 0.5), board.drop("C4.1", 0.5 * 30, 0.5)},
                   {}, "C1.1");
  REQUIRE(search.observations.size() == 3);
  // Nothing tells C4 from C3 but the length of the way: 30 mm would drop more.
  CHECK(shareOf(board, search, "C3") > 0.8);
}

TEST_CASE("drops are of no use while nobody knows where the current goes in, or how much") {
  const RailBoard board = fourCapacitors();
  Reading noCurrent = board.drop("C1.1", 10, 0.5);
  noCurrent.injected.reset();
  for (const auto& [reading, into] :
       {std::pair(board.drop("C1.1", 10, 0.5), ""), std::pair(noCurrent, "C1.1"),
        std::pair(board.drop("C1.1", 10, 0.0), "C1.1")}) {
    const ShortSearch search = board.search({reading}, {}, into);
    REQUIRE(search.setAside.size() == 1);
    CHECK(search.setAside.front().why == ShortAsideWhy::currentUnknown);
  }
}

TEST_CASE("what is no reading of a short is set aside with its reason") {
  const RailBoard board = fourCapacitors();
  const auto whyOf = [&](Reading reading) {
    const ShortSearch search = board.search({std::move(reading)});
    REQUIRE(search.setAside.size() == 1);
    CHECK(search.observations.empty());
    return search.setAside.front().why;
  };
  Reading reading = board.milliohms("C1.1", 10);
  reading.mode = ReadingMode::ohms;
  CHECK(whyOf(reading) == ShortAsideWhy::mode);
  reading = board.milliohms("C1.1", 10);
  reading.value.reset();
  CHECK(whyOf(reading) == ShortAsideWhy::overLimit);
  CHECK(whyOf(board.milliohms("C1.1", 0)) == ShortAsideWhy::negative);
  reading = board.milliohms("C1.1", 10);
  reading.settling = Settling::rising;
  CHECK(whyOf(reading) == ShortAsideWhy::rising);
  CHECK(whyOf(board.milliohms("C1.2", 10)) == ShortAsideWhy::notOnLine);
  reading = board.milliohms("C1.1", 10);
  reading.other = {board.pinOf("C4.1"), "C4.1"};
  CHECK(whyOf(reading) == ShortAsideWhy::notToGround);
  CHECK(whyOf(board.milliohms("C1.1", 2001)) == ShortAsideWhy::tooMuch);
  // Both sides of the limit, and ground by a pin of it.
  reading = board.milliohms("C1.1", 2000);
  reading.other = {board.pinOf("C4.2"), "C4.2"};
  CHECK(board.search({reading}).observations.size() == 1);
}

TEST_CASE("a warm part or seen damage raises its part and what is near, by the factors of the data file") {
  const RailBoard board = fourCapacitors();
  const auto odds = [&](const ShortSearch& search, const char* a, const char* b) {
    return shareOf(board, search, a) / shareOf(board, search, b);
  };
  ShortSign sign{ShortSign::Kind::warm, partOf(board, "C3"), {}};
  CHECK(odds(board.search({}, {sign}), "C3", "C1") == Approx(30.0));
  sign.kind = ShortSign::Kind::damaged;
  CHECK(odds(board.search({}, {sign}), "C3", "C1") == Approx(20.0));
  // A spot 3 mm from C2 and 7 mm from C3.
  const ShortSearch spot = board.search({}, {{ShortSign::Kind::warm, {}, mm(13, 0)}});
  const double near = 1 + 29 * std::exp(-0.5), far = 1 + 29 * std::exp(-0.5 * 49.0 / 9.0);
  CHECK(odds(spot, "C2", "C3") == Approx(near / far));
}

TEST_CASE("the warmest reading is a warm spot where it stands out") {
  const RailBoard board = fourCapacitors();
  const Lookup lookup(board.drawn.board);
  const auto warm = [&](const char* label, double celsius) {
    Reading reading = board.milliohms(label, 0);
    reading.mode = ReadingMode::temperature;
    reading.value = celsius;
    return reading;
  };
  const auto found = warmestOf(lookup, {warm("C1.1", 25), warm("C3.1", 28), warm("C2.1", 26)}, shortPriors());
  REQUIRE(found);
  CHECK(found->part == partOf(board, "C3"));
  CHECK(found->at == mm(20, 0));
  CHECK_FALSE(warmestOf(lookup, {warm("C1.1", 25.1), warm("C3.1", 28)}, shortPriors()));
  Reading noted = warm("C3.1", 28);
  CHECK_FALSE(warmestOf(lookup, {noted}, shortPriors()));
  noted.condition.temperature = Celsius(25);
  CHECK(warmestOf(lookup, {noted}, shortPriors()));
}

TEST_CASE("pins and nets alone: the point that reads least is the likeliest, and shares stay open") {
  RailBoard board;
  for (int i = 0; i < 4; ++i)
    board.capacitor("C" + std::to_string(i + 1), 10.0 * i);
  // No tracks: the way between the pads is unknown.
  const ShortSearch search =
      board.search({board.milliohms("C1.1", 45), board.milliohms("C2.1", 30), board.milliohms("C3.1", 52)});
  CHECK(shareOf(board, search, "C2") > shareOf(board, search, "C1"));
  CHECK(shareOf(board, search, "C2") > shareOf(board, search, "C3"));
  CHECK(shareOf(board, search, "C2") < 0.9);
  CHECK(shareOf(board, search, "C4") > 0.03);
}

TEST_CASE("parts that are not fitted, and parts that do not reach ground, are no places of a short") {
  RailBoard board = fourCapacitors();
  Part part = *board.drawn.board.parts.find(partOf(board, "C2"));
  part.fitted = fromUser(false);
  board.drawn.board.parts.put(part);
  const NetId other = board.drawn.net("DATA"), supply = board.drawn.net("VCC");
  const auto rewire = [&](const char* label, NetId net) {
    Pin pin = *board.drawn.board.pins.find(board.pinOf(label));
    pin.net = fromUser(net);
    board.drawn.board.pins.put(pin);
  };
  rewire("C3.2", other);
  rewire("C4.2", supply);
  const ShortSearch search = board.search({});
  CHECK(shareOf(board, search, "C2") == 0.0);
  CHECK(shareOf(board, search, "C3") == 0.0);
  CHECK(shareOf(board, search, "C4") == Approx(0.05 * shareOf(board, search, "C1")));
}

TEST_CASE("where the rail runs beside ground it may be shorted too, more so over a narrow gap") {
  RailBoard board = fourCapacitors();
  // Ground 0.3 mm from the edge along C1 to C2, and 0.35 mm wide: its middle is at 0.25 + 0.3 + 0.175.
  board.drawn.track(mm(2, 0.725), mm(8, 0.725), board.top, board.ground, 0.35);
  const ShortSearch search = board.search({});
  double near = 0.0;
  for (const ShortPlace& place : search.places)
    if (place.kind == ShortKind::nearGround) {
      near += place.prior;
      CHECK(place.gap == Length::fromMm(0.3));
      CHECK(place.at->x < Length::fromMm(10));
    }
  // Five pieces of 2 mm lie within reach (the outer ones with their ends), at half the usual gap's weight.
  const double perCapacitor = search.places.front().prior;
  CHECK(near / perCapacitor == Approx(10 * 0.003 * 0.15 / 0.3).epsilon(1e-6));
}

TEST_CASE("two parts' pads side by side may be bridged") {
  RailBoard board = fourCapacitors();
  Part more;
  more.kind = fromUser(PartKind::resistor);
  const PartId r = board.drawn.part("R1", Side::top, {}, more);
  // Left of C1's pad: 0.4 mm pads 0.7 mm apart leave 0.3 mm.
  board.drawn.pad(board.drawn.pin(r, "1", board.ground), mm(-0.7, 0), PadReach::top, 0.4);
  const ShortSearch search = board.search({});
  const auto bridge = std::find_if(search.places.begin(), search.places.end(),
                                   [](const ShortPlace& place) { return place.kind == ShortKind::bridge; });
  REQUIRE(bridge != search.places.end());
  CHECK(bridge->pin == board.pinOf("C1.1"));
  CHECK(bridge->neighbour == board.pinOf("R1.1"));
  CHECK(bridge->gap == Length::fromMm(0.3));
  CHECK(bridge->prior / search.places.front().prior == Approx(0.15 * 0.2 / 0.3));
}
