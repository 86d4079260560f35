#include <algorithm>
#include <limits>
#include <set>

#include <catch2/catch.hpp>

#include "drawn_line.h"

using namespace netmend;
using netmend::test::breakProbability;
using netmend::test::DrawnLine;
using netmend::test::mm;
using netmend::test::probabilityOf;
using netmend::test::trackProbability;

namespace {

/// Connector J1.4, 30 mm of buried track with a test pad after 10 mm, chip U1.7 whose pin is under it.
DrawnLine keyColumn() {
  DrawnLine drawn;
  const auto j = drawn.pinOnLine(drawn.part("J1", PartKind::connector), "4", mm(0, 0));
  const auto tp = drawn.testPad("TP3", mm(10, 0));
  const auto u = drawn.pinOnLine(drawn.part("U1", PartKind::chip), "7", mm(30, 0), Access::underPart);
  drawn.track(j, tp, 10);
  drawn.track(tp, u, 20);
  return drawn;
}

/// A chip at both ends, legs reachable, 40 mm of buried track between them.
DrawnLine twoChips() {
  DrawnLine drawn;
  const auto a = drawn.pinOnLine(drawn.part("U1", PartKind::chip), "3", mm(0, 0));
  const auto b = drawn.pinOnLine(drawn.part("U2", PartKind::chip), "9", mm(40, 0));
  drawn.track(a, b, 40);
  return drawn;
}

double openProbability(const Isolation& isolation) {
  return probabilityOf(isolation, FaultKind::open);
}

const Suspect& leading(const Suspects& found) {
  return found.ranked.front();
}

/// Of the leading suspect.
FaultKind kindOf(const Isolation& isolation) {
  return isolation.classes[leading(suspects(isolation)).faultClass].kind;
}

bool has(const Isolation& isolation, LineNotice::Kind kind) {
  return std::any_of(isolation.notices.begin(), isolation.notices.end(),
                     [&](const LineNotice& notice) { return notice.kind == kind; });
}

} // namespace

TEST_CASE("a buried track break between two reachable points is found by the readings on both sides") {
  const auto drawn = keyColumn();
  auto isolation = drawn.isolation({{drawn.pins[2], Volts(0.52), Volts(0.005)}});
  isolation = update(isolation, {drawn.diode("J1.4", std::nullopt), drawn.diode("TP3", 0.523)});
  CHECK(isolation.setAside.empty());
  const auto found = suspects(isolation);
  // Left are the 10 mm of track and the connector's joint, which the pad of J1.4 tells apart.
  CHECK(breakProbability(isolation, {mm(0, 0), mm(10, 0)}) +
            probabilityOf(isolation, FaultKind::open, drawn.pins[0]) >
        0.97);
  isolation = update(isolation, drawn.diode("pad of J1.4", std::nullopt));
  const auto after = suspects(isolation);
  REQUIRE(leading(after).places.size() == 1);
  // A connector's joint is several times as likely beforehand; what is left to it is a slip at the pad.
  CHECK(leading(after).probability > 0.9);
  CHECK(leading(after).places.front().edgeKind == EdgeKind::track);
  CHECK(leading(after).places.front().way == std::vector<Point>{mm(0, 0), mm(10, 0)});
  CHECK(after.setSize == 1);
  CHECK(after.setLength == Length::fromMm(10));
  CHECK(after.entropyBits < found.entropyBits);
  // What tells most for it stands first: a value at the test pad that only this side explains.
  const Evidence& telling = leading(after).evidence.front();
  CHECK(isolation.observations[telling.observation].reading.point.label == "pad of J1.4");
  CHECK(telling.bits > 3.0);
  CHECK(telling.foretold.what == Foretold::What::volts);
  CHECK(telling.foretold.prediction.overLimit > 0.9);
  CHECK(leading(after).evidence.size() == 3);
  CHECK(leading(after).prior < 0.5);
}

TEST_CASE("with a chip at both ends and a break between, nothing reads OL and yet a break is favoured") {
  const auto drawn = twoChips();
  auto isolation = drawn.isolation({{drawn.pins[0], Volts(0.500), Volts(0.004)}});
  const double trackToSound = trackProbability(isolation) / isolation.probability[0];
  // One of two equal junctions lost: n·Vt·ln 2 = 17.8 mV at n = 1, 26.7 mV at n = 1.5, and 25 °C.
  isolation = update(isolation, {drawn.diode("U1.3", 0.524), drawn.diode("U2.9", 0.521)});
  const double lost = 1.0 - isolation.probability[0] - isolation.probability[1] - isolation.probability[2];
  CHECK(isolation.probability[0] < 0.03); // sound
  CHECK(lost > 0.9);
  // A dead pin lifts both readings alike and keeps its share; that is what continuity is for.
  CHECK(openProbability(isolation) > 0.5);
  CHECK(openProbability(isolation) > probabilityOf(isolation, FaultKind::deadPin));
  CHECK(trackProbability(isolation) / isolation.probability[0] > 3.0 * trackToSound);

  SECTION("OL from end to end settles it") {
    isolation = update(isolation, drawn.continuity("pad of U1.3", "pad of U2.9", std::nullopt));
    CHECK(trackProbability(isolation) > 0.95);
  }
  SECTION("a tone from leg to leg leaves a dead pin or a lost joint's other side, and no break") {
    isolation = update(isolation, drawn.continuity("U1.3", "U2.9", 0.2));
    CHECK(trackProbability(isolation) < 0.05);
    CHECK(probabilityOf(isolation, FaultKind::deadPin) > 0.8);
  }
  SECTION("continuity is what the program asks for") {
    const auto next = nextProbe(isolation);
    REQUIRE_FALSE(next.ranked.empty());
    CHECK(next.ranked.front().mode == ReadingMode::continuity);
    CHECK(next.ranked.front().other.has_value());
    CHECK_FALSE(next.stop);
  }
}

TEST_CASE("a dead chip pin on sound copper reads OL everywhere and is told from a break by continuity") {
  DrawnLine drawn;
  const auto j = drawn.pinOnLine(drawn.part("J1", PartKind::connector), "4", mm(0, 0));
  const auto u = drawn.pinOnLine(drawn.part("U1", PartKind::chip), "7", mm(30, 0));
  drawn.track(j, u, 30);
  auto isolation = drawn.isolation({{drawn.pins[0], Volts(0.52), Volts(0.005)}});
  isolation = update(isolation, {drawn.diode("J1.4", std::nullopt), drawn.diode("U1.7", std::nullopt),
                                 drawn.continuity("J1.4", "U1.7", 0.3)});
  CHECK(probabilityOf(isolation, FaultKind::deadPin, drawn.pins[1]) > 0.9);
  CHECK(leading(suspects(isolation)).places.front().kind == FaultKind::deadPin);
}

TEST_CASE("a dead pin and an open joint are one suspect where the leg cannot be touched") {
  const auto drawn = keyColumn();
  auto isolation = drawn.isolation({{drawn.pins[2], Volts(0.52), Volts(0.005)}});
  isolation = update(isolation, {drawn.diode("J1.4", std::nullopt), drawn.diode("TP3", std::nullopt)});
  const auto found = suspects(isolation);
  std::set<FaultKind> kinds;
  for (const auto& place : leading(found).places)
    kinds.insert(place.kind);
  CHECK(kinds == std::set<FaultKind>{FaultKind::open, FaultKind::deadPin});
  CHECK(leading(found).probability > 0.9);
}

TEST_CASE("a slipped probe does not exclude the truth, and is named") {
  const auto drawn = keyColumn();
  const std::vector<KnownGood> good{{drawn.pins[2], Volts(0.52), Volts(0.005)}};
  // Truth: break between J1 and TP3. The first reading at TP3 missed the pad.
  auto isolation =
      update(drawn.isolation(good), {drawn.diode("J1.4", std::nullopt), drawn.diode("TP3", std::nullopt)});
  CHECK(breakProbability(isolation, {mm(0, 0), mm(10, 0)}) > 1e-4);
  isolation = update(isolation, {drawn.diode("TP3", 0.522), drawn.diode("TP3", 0.521),
                                 drawn.diode("pad of J1.4", std::nullopt)});
  const auto found = suspects(isolation);
  CHECK(leading(found).places.front().way == std::vector<Point>{mm(0, 0), mm(10, 0)});
  REQUIRE(found.contradictions.size() == 1);
  CHECK(found.contradictions.front().observation == 1); // OL at TP3
  CHECK(found.contradictions.front().slipped > 0.5);
  CHECK(found.contradictions.front().foretold.prediction.mean.value == Approx(0.52).margin(0.01));
}

TEST_CASE("sound readings leave the line sound, zero volts make a short, nonsense is none of these") {
  const auto drawn = keyColumn();
  const std::vector<KnownGood> good{{drawn.pins[2], Volts(0.52), Volts(0.005)}};
  const auto sound = update(drawn.isolation(good), {drawn.diode("J1.4", 0.521), drawn.diode("TP3", 0.519)});
  CHECK(sound.probability[0] > 0.8);
  const auto shorted = update(drawn.isolation(good), {drawn.diode("J1.4", 0.001), drawn.diode("TP3", 0.002)});
  CHECK(kindOf(shorted) == FaultKind::shortToGround);
  const auto odd = update(drawn.isolation(good), {drawn.diode("J1.4", 1.31), drawn.diode("TP3", 0.21),
                                                  drawn.diode("J1.4", 1.30), drawn.diode("TP3", 0.22)});
  CHECK(kindOf(odd) == FaultKind::noneOfThese);
  // Where nothing fits, no single reading is the odd one.
  CHECK(suspects(odd).contradictions.empty());
}

TEST_CASE("probabilities add up to one and none of these is always among the suspects") {
  const auto drawn = twoChips();
  auto isolation = drawn.isolation();
  for (const double volts : {0.61, 0.02, 1.9, 0.45}) {
    double sum = 0.0;
    for (const double p : isolation.probability)
      sum += p;
    CHECK(sum == Approx(1.0));
    CHECK(isolation.probability[1] > 0.0);
    CHECK(suspects(isolation).ranked.size() == isolation.classes.size());
    isolation = update(isolation, drawn.diode("U1.3", volts));
  }
}

TEST_CASE("with pins and nets only, a break is placed between pins and the program says so") {
  DrawnLine drawn;
  const auto hub = drawn.hub();
  const auto connector = drawn.part("J1", PartKind::connector);
  drawn.unknownWay(hub, drawn.barePin(connector, "1"));
  drawn.unknownWay(hub, drawn.barePin(connector, "2"));
  drawn.unknownWay(hub, drawn.barePin(drawn.part("U1", PartKind::chip), "5"));
  drawn.unknownWay(hub, drawn.barePin(drawn.part("U2", PartKind::chip), "6"));
  auto isolation = drawn.isolation({{drawn.pins[0], Volts(0.50), Volts(0.005)}});
  REQUIRE_FALSE(isolation.notices.empty());
  CHECK(has(isolation, LineNotice::Kind::unknownWays));
  SECTION("one pin alone") {
    isolation = update(isolation, {drawn.diode("J1.1", std::nullopt), drawn.diode("J1.2", 0.50),
                                   drawn.diode("U1.5", 0.502), drawn.diode("U2.6", 0.499)});
    const auto found = suspects(isolation);
    CHECK(leading(found).places.front().beyond == std::vector<PinId>{drawn.pins[0]});
    CHECK(leading(found).places.front().before.empty());
    CHECK(found.setHasUnknownLength);
    CHECK(leading(found).places.front().way.empty());
  }
  SECTION("two pins on each side") {
    isolation = update(isolation, {drawn.diode("J1.1", std::nullopt), drawn.diode("J1.2", std::nullopt),
                                   drawn.diode("U1.5", 0.50), drawn.diode("U2.6", 0.499)});
    const FaultPlace parted = leading(suspects(isolation)).places.front();
    const std::vector<PinId> plug{drawn.pins[0], drawn.pins[1]}, chips{drawn.pins[2], drawn.pins[3]};
    CHECK(((parted.beyond == plug && parted.before == chips) ||
           (parted.beyond == chips && parted.before == plug)));
  }
}

TEST_CASE("on the least board an isolation stands, and says what the next knowledge would buy") {
  DrawnLine drawn;
  drawn.barePin(drawn.part("J1", PartKind::connector), "1");
  auto isolation = drawn.isolation();
  isolation = update(isolation, drawn.diode("J1.1", std::nullopt));
  CHECK(suspects(isolation).ranked.size() == 3);
  CHECK(has(isolation, LineNotice::Kind::onePin));
  REQUIRE(has(isolation, LineNotice::Kind::noKnownGood));
  for (const LineNotice& notice : isolation.notices)
    if (notice.kind == LineNotice::Kind::noKnownGood) CHECK(notice.spreadThen < notice.spread);
  // No terminal at all.
  const DrawnLine empty;
  CHECK(nextProbe(empty.isolation()).stop);
}

TEST_CASE("a reading that cannot be used is set aside with its reason and changes nothing") {
  const auto drawn = keyColumn();
  const auto before = drawn.isolation();
  auto powered = drawn.diode("J1.4", 0.5);
  powered.condition.powered = true;
  auto rising = drawn.diode("J1.4", 0.5);
  rising.settling = Settling::rising;
  auto volts = drawn.diode("J1.4", 3.3);
  volts.mode = ReadingMode::volts;
  auto stranger = drawn.diode("J1.4", 0.5);
  stranger.other.label = "U9.1";
  auto notNumber = drawn.diode("J1.4", std::numeric_limits<double>::quiet_NaN());
  const auto after = update(before, {powered, rising, volts, stranger, notNumber, drawn.diode("J7.1", 0.5)});
  CHECK(after.probability == before.probability);
  REQUIRE(after.setAside.size() == 6);
  const std::vector<SetAsideWhy> why{SetAsideWhy::otherCondition, SetAsideWhy::rising,
                                     SetAsideWhy::mode,           SetAsideWhy::otherLeadElsewhere,
                                     SetAsideWhy::notANumber,     SetAsideWhy::notOnLine};
  for (std::size_t i = 0; i < why.size(); ++i)
    CHECK(after.setAside[i].why == why[i]);
}

TEST_CASE("a series resistor shows in what the connector reads, and lifts it by its drop") {
  DrawnLine drawn;
  const auto j = drawn.pinOnLine(drawn.part("J1", PartKind::connector), "4", mm(0, 0));
  const auto r = drawn.part("R1", PartKind::resistor, "100");
  const auto r1 = drawn.pinOnLine(r, "1", mm(5, 0));
  const auto r2 = drawn.pinOnLine(r, "2", mm(6, 0));
  const auto u = drawn.pinOnLine(drawn.part("U1", PartKind::chip), "7", mm(30, 0));
  drawn.track(j, r1, 5);
  drawn.through(r1, r2, r, Ohms(100));
  drawn.track(r2, u, 24);
  const auto isolation = drawn.isolation({{drawn.pins[3], Volts(0.52), Volts(0.001)}});
  const auto place = [&](const std::string& label) {
    for (std::size_t i = 0; i < isolation.places.size(); ++i)
      if (isolation.places[i].label == label) return i;
    return isolation.places.size();
  };
  CHECK(predictDiode(isolation, place("U1.7"), 0).mean.value == Approx(0.52).margin(0.001));
  CHECK(predictDiode(isolation, place("J1.4"), 0).mean.value == Approx(0.62).margin(0.002));
}

TEST_CASE(
    "a pin that reads OL where good boards read a value is never part of a sound line, but is read again") {
  const auto drawn = keyColumn();
  // No single fault cuts TP3 off on both sides: the other readings leave a slip, or none of these.
  const std::vector<KnownGood> good{{drawn.pins[1], Volts(0.52), Volts(0.005)}};
  const std::vector<Reading> fine{drawn.diode("J1.4", 0.521), drawn.diode("pad of J1.4", 0.519),
                                  drawn.diode("J1.4", 0.520)};
  const auto once = update(update(drawn.isolation(good), fine), drawn.diode("TP3", std::nullopt));
  CHECK(once.probability[0] == 0.0);
  const auto found = suspects(once);
  CHECK(kindOf(once) != FaultKind::sound);
  REQUIRE(found.againstSound);
  CHECK(found.againstSound->observation == 3);
  CHECK(found.againstSound->good == Volts(0.52));
  const auto next = nextProbe(once);
  CHECK_FALSE(next.stop);
  CHECK(next.why == ProbeAdvice::readAgain);
  REQUIRE(next.standing);
  CHECK(next.standing->observation == 3);
  REQUIRE_FALSE(next.ranked.empty());
  CHECK(once.places[next.ranked.front().place].label == "TP3");
  CHECK(next.ranked.front().again);

  SECTION("a value there takes the doubt away") {
    const auto after = update(once, drawn.diode("TP3", 0.522));
    CHECK(after.probability[0] > 0.9);
    CHECK(kindOf(after) == FaultKind::sound);
  }
  SECTION("OL once more stands, and is not asked for a third time") {
    const auto after = update(once, drawn.diode("TP3", std::nullopt));
    CHECK(after.probability[0] == 0.0);
    CHECK(kindOf(after) != FaultKind::sound);
    CHECK(nextProbe(after).why != ProbeAdvice::readAgain);
  }
  SECTION("where good boards read OL now and then, or nobody knows, a slip may explain it") {
    auto mixed = good;
    mixed.front().sometimesOverLimit = true;
    const auto may = update(update(drawn.isolation(mixed), fine), drawn.diode("TP3", std::nullopt));
    CHECK(kindOf(may) == FaultKind::sound);
    const std::vector<KnownGood> elsewhere{{drawn.pins[0], Volts(0.52), Volts(0.005)}};
    const auto other = update(update(drawn.isolation(elsewhere), fine), drawn.diode("TP3", std::nullopt));
    CHECK(kindOf(other) == FaultKind::sound);
  }
}
