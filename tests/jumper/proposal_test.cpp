#include <catch2/catch.hpp>

#include "bench_board.h"
#include "netmend/jumper/proposal.h"
#include "netmend/jumper/work_steps.h"

using namespace netmend;
using namespace netmend::test;

namespace {

const JumperData& data() {
  static const JumperData loaded = [] {
    auto d = loadJumperData(std::filesystem::path(NETMEND_SOURCE_DIR) / "data");
    REQUIRE(d);
    return *d;
  }();
  return loaded;
}

/// Connector J1 and bypass capacitor C1 left of the break, chip U1 with test pad TP1 right of it; a battery
/// zone in between.
struct KeyLine : BenchBoard {
  NetId key = net("KEY"), ground = net("GND", NetRole::ground), other = net("DATA");
  PartId j1 = part("J1", PartKind::connector, box(1, 10, 4, 20));
  PartId c1 = part("C1", PartKind::capacitor, box(6, 14.5, 7.6, 15.5), Side::top, 0.5);
  PartId u1 = part("U1", PartKind::chip, box(33, 12, 37, 18));
  PinPad jPin = pin(j1, "3", key, mm(4.3, 15));
  PinPad cPin = pin(c1, "1", key, mm(6, 15));
  PinPad cFar = pin(c1, "2", ground, mm(7.6, 15));
  PinPad uPin = pin(u1, "9", key, mm(32.7, 15));
  PinPad tp = pin({}, "TP1", key, mm(30, 15));
  std::size_t broken = 0, jointOfChip = 0;

  KeyLine() {
    const auto j = joint(jPin).first, c = joint(cPin).first, t = joint(tp).first;
    const auto [u, solder] = joint(uPin);
    jointOfChip = solder;
    track(j, c, key, top);
    // The stretch under the battery runs on the bottom, so that only its ends can be landed on.
    broken = track(c, t, key, bottom);
    track(t, u, key, top);
    zone(ZoneKind::battery, "BT", box(12, 5, 26, 18), 0.5);
  }
  [[nodiscard]] JumperProposals propose(JumperRequest request = {}) const {
    request.graph = &graph;
    if (request.cut.empty()) request.cut = {broken};
    request.net = key;
    const Lookup lookup(board);
    auto found = proposeJumpers(lookup, request, data());
    INFO((found ? std::string() : found.error().text()));
    REQUIRE(found);
    return *found;
  }
};

void checkSound(const JumperProposal& p) {
  CHECK(p.way.front() == p.from.at);
  CHECK(p.way.back() == p.to.at);
  CHECK(lengthMm(p.way) == Approx(p.length.mm()).margin(1e-6));
  double sum = 0;
  for (const ScoreTerm& term : p.terms)
    sum += term.price.value;
  CHECK(sum == Approx(p.total.value));
  CHECK(p.detour.straight == (p.way.size() == 2));
  CHECK(p.difference.any());
  CHECK(p.wire.cutLength > p.length);
}

} // namespace

TEST_CASE("a jumper goes from the bypass capacitor round the battery to the test pad") {
  KeyLine line;
  const auto found = line.propose();
  REQUIRE(found.proposals.size() >= 2);
  const JumperProposal& best = found.proposals.front();
  CHECK(best.from.point == "C1.1");
  CHECK(best.from.kind == LandingKind::partTerminal);
  CHECK(best.to.point == "TP1");
  CHECK(best.to.kind == LandingKind::testPad);
  CHECK(best.side == Side::top);
  for (const auto& p : found.proposals)
    checkSound(p);
  CHECK(best.detour.near == std::vector<KeepOutName>{{KeepOutName::What::zone, ZoneKind::battery, "BT", {}}});
  // Closed form: over the zone's upper corners, each a quarter-disc margin of 0.5 mm and half a wire, whose
  // polygon is at most 1/cos(45°/8) wider. Tangents and arcs, worked out by hand.
  const double half = best.wire.wire.outer.mm() / 2;
  const auto lengthWith = [&](double r) {
    const auto leg =
        [&](double dx,
            double dy) { // from the landing to the tangent point, and the arc from there to the top
          const double d = std::hypot(dx, dy);
          return std::sqrt(d * d - r * r) + r * (std::atan2(dy, dx) + std::asin(r / d));
        };
    return leg(6, 3) + 14 + leg(4, 3);
  };
  CHECK(best.length.mm() >= lengthWith(0.5 + half) - 1e-6);
  CHECK(best.length.mm() <= lengthWith((0.5 + half) / std::cos(std::numbers::pi / 32) + 2e-5));
}

TEST_CASE("no way of a proposal enters a keep-out or its margin, but where it was opened") {
  KeyLine line;
  const auto found = line.propose();
  const Lookup lookup(line.board);
  for (const auto& p : found.proposals) {
    FreeAreaOptions options;
    options.wire = p.wire.wire.outer;
    const auto area = buildFreeArea(lookup, p.side, data().zones, options);
    REQUIRE(area);
    const std::size_t first = p.way[0] == p.from.opening.exit ? 0 : 1;
    const std::size_t last = p.way.size() - (p.way.back() == p.to.opening.exit ? 1 : 2);
    for (std::size_t i = first + 1; i <= last; ++i)
      for (const KeepOut& k : area->obstacles.keepOuts) {
        INFO(p.from.point << " to " << p.to.point << ", " << k.name.label);
        CHECK(distanceTo(k, p.way[i - 1], p.way[i]) >= k.margin + Length(options.wire.nm / 2));
      }
  }
}

TEST_CASE("proposals differ in a landing or in the way round something") {
  KeyLine line;
  const auto found = line.propose();
  for (std::size_t i = 0; i < found.proposals.size(); ++i)
    for (std::size_t j = 0; j < i; ++j) {
      const auto &a = found.proposals[j], &b = found.proposals[i];
      CHECK(a.total <= b.total);
      CHECK((a.from.point != b.from.point || a.to.point != b.to.point || a.side != b.side || a.way != b.way));
    }
}

TEST_CASE("with one landing on either side the second proposal goes round the other side of the obstacle") {
  BenchBoard bench;
  const NetId net = bench.net("A");
  const auto a = bench.pin({}, "TP1", net, mm(5, 15)), b = bench.pin({}, "TP2", net, mm(35, 15));
  const auto broken = bench.track(bench.joint(a).first, bench.joint(b).first, net, bench.bottom);
  bench.zone(ZoneKind::fastener, "M3", box(16, 11, 24, 18), 0.5);
  const Lookup lookup(bench.board);
  const auto found = proposeJumpers(lookup, {&bench.graph, {broken}, net, {}, {}, 3}, data());
  REQUIRE(found);
  REQUIRE(found->proposals.size() == 2);
  CHECK(found->proposals[0].way[1].y > mm(0, 15).y);
  CHECK(found->proposals[1].way[1].y < mm(0, 15).y);
  CHECK(found->proposals[1].difference.wayRound);
  CHECK(found->whyFewer == WhyFewer::nothingDiffersEnough);
}

TEST_CASE("the same question gets the same answer") {
  KeyLine line;
  const auto a = line.propose(), b = line.propose();
  REQUIRE(a.proposals.size() == b.proposals.size());
  for (std::size_t i = 0; i < a.proposals.size(); ++i) {
    CHECK(a.proposals[i].way == b.proposals[i].way);
    CHECK(a.proposals[i].terms == b.proposals[i].terms);
  }
}

TEST_CASE("the best pair is the best over all pairs, taken one by one") {
  for (unsigned seed = 1; seed <= 8; ++seed) {
    INFO("seed " << seed);
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> x(2, 38), y(2, 28);
    BenchBoard bench;
    const NetId net = bench.net("A");
    std::vector<NodeIndex> left, right;
    for (int i = 0; i < 6; ++i) {
      left.push_back(
          bench.joint(bench.pin({}, "L" + std::to_string(i), net, mm(x(random), y(random)))).first);
      right.push_back(
          bench.joint(bench.pin({}, "R" + std::to_string(i), net, mm(x(random), y(random)))).first);
      if (i > 0) {
        bench.track(left[static_cast<std::size_t>(i) - 1], left.back(), net, bench.bottom);
        bench.track(right[static_cast<std::size_t>(i) - 1], right.back(), net, bench.bottom);
      }
    }
    const auto broken = bench.track(left[0], right[0], net, bench.bottom);
    int zones = 0;
    for (const Ring& ring : randomScene(random, 8, 40, 30, 10).blocks)
      bench.zone(ZoneKind::battery, std::to_string(zones++), ring, 0.2);
    const Lookup lookup(bench.board);
    JumperData plain = data();
    plain.landings.perBend = plain.landings.tight = plain.landings.opened = Price(0);
    const auto found = proposeJumpers(lookup, {&bench.graph, {broken}, net, {}, {}, 1}, plain);
    REQUIRE(found);

    const auto ends = breakEnds(bench.graph, {broken});
    REQUIRE(ends);
    FreeAreaOptions options;
    options.wire = chooseWire(plain.wires, {Length::fromMm(20), {}, NetRole::signal, {}})->wire.outer;
    double best = HUGE_VAL;
    // Scraped tracks of the bottom count too: both sides are looked at.
    for (const Side side : {Side::top, Side::bottom}) {
      const auto area = buildFreeArea(lookup, side, plain.zones, options);
      REQUIRE(area);
      const LandingOptions near{{}, ends->at};
      for (const Landing& a :
           landingsOf(lookup, bench.graph, ends->fragments, ends->a, *area, plain.landings, near).landings)
        for (const Landing& b :
             landingsOf(lookup, bench.graph, ends->fragments, ends->b, *area, plain.landings, near).landings)
          if (const auto way = shortestWay(area->mesh, a.opening.exit, b.opening.exit))
            best = std::min(best, lengthMm(way->points) + lengthMm({a.at, a.opening.exit}) +
                                      lengthMm({b.at, b.opening.exit}) + a.price().value + b.price().value);
    }
    if (found->proposals.empty())
      CHECK(best == HUGE_VAL);
    else
      CHECK(found->proposals[0].total.value == Approx(best).margin(1e-5));
  }
}

TEST_CASE("a coupling capacitor is left out unless the user says that it is right") {
  KeyLine line;
  Pin far = *line.board.pins.find(line.cFar.pin);
  far.net = fromUser(line.other);
  line.board.pins.put(far);
  const auto found = line.propose();
  for (const auto& p : found.proposals)
    CHECK(p.from.part != line.c1);
  CHECK(std::any_of(found.excluded.begin(), found.excluded.end(), [](const ExcludedLanding& e) {
    return e.point == "C1.1" && e.why == ExcludedLanding::Why::couplingCapacitor;
  }));
  JumperRequest request;
  request.couplingAllowed = {line.c1};
  CHECK(line.propose(request).proposals.front().from.part == line.c1);
}

TEST_CASE("a landing is on the fragment that it should join, not merely on the net") {
  // The chip's joint is broken: TP1 and the pad stay on one side, only the chip's leg on the other.
  KeyLine line;
  JumperRequest request;
  request.cut = {line.jointOfChip};
  const auto found = line.propose(request);
  REQUIRE_FALSE(found.proposals.empty());
  for (const auto& p : found.proposals) {
    const Landing& leg = p.from.part == line.u1 ? p.from : p.to;
    CHECK(leg.part == line.u1);
    CHECK(leg.has(LandingNote::legOnly));
    const Landing& rest = &leg == &p.from ? p.to : p.from;
    CHECK(rest.part != line.u1);
  }
}

TEST_CASE("pins under a lid are no landing") {
  KeyLine line;
  Pad pad = *line.board.pads.find(line.tp.pad);
  pad.access = fromUser(Access::underLid);
  line.board.pads.put(pad);
  const auto found = line.propose();
  for (const auto& p : found.proposals)
    CHECK(p.to.point != "TP1");
  CHECK(std::any_of(found.excluded.begin(), found.excluded.end(), [](const ExcludedLanding& e) {
    return e.point == "TP1" && e.why == ExcludedLanding::Why::underLid;
  }));
}

TEST_CASE("a track is not scraped where a part lies over it") {
  const auto scrapedTracks = [](const KeyLine& line) {
    const Lookup lookup(line.board);
    const auto area = buildFreeArea(lookup, Side::top, data().zones);
    const auto ends = breakEnds(line.graph, {line.broken});
    REQUIRE(area);
    REQUIRE(ends);
    const auto list = landingsOf(lookup, line.graph, ends->fragments, ends->a, *area, data().landings);
    return std::count_if(list.landings.begin(), list.landings.end(),
                         [](const Landing& l) { return l.kind == LandingKind::outerTrack; });
  };
  KeyLine line;
  CHECK(scrapedTracks(line) == 1);
  line.part("R9", PartKind::resistor, box(4.4, 14, 5.9, 16), Side::top, 0.4);
  CHECK(scrapedTracks(line) == 0);
}

TEST_CASE("where every way is closed the answer names what closes it") {
  KeyLine line;
  line.zone(ZoneKind::shieldWall, "W", box(28, -1, 28.5, 31), 0.2);
  const auto found = line.propose();
  CHECK(found.proposals.empty());
  CHECK(found.whyFewer == WhyFewer::closed);
  CHECK(found.closedBy == std::vector<KeepOutName>{{KeepOutName::What::zone, ZoneKind::shieldWall, "W", {}}});
}

TEST_CASE("a zone set aside by the job is named with its reason") {
  KeyLine line;
  const ZoneId wall = line.zone(ZoneKind::shieldWall, "W", box(28, -1, 28.5, 31), 0.2);
  JumperRequest request;
  request.overrides = {{wall, "lid has a notch here"}};
  const auto found = line.propose(request);
  REQUIRE_FALSE(found.proposals.empty());
  const auto& notes = found.proposals.front().notes;
  CHECK(std::any_of(notes.begin(), notes.end(), [](const ProposalNote& n) {
    return n.kind == ProposalNote::Kind::zoneSetAside && n.reason == "lid has a notch here" &&
           n.keepOuts == std::vector<KeepOutName>{{KeepOutName::What::zone, ZoneKind::shieldWall, "W", {}}};
  }));
}

TEST_CASE("a soft zone adds its price for each millimetre inside") {
  KeyLine line;
  const double before = line.propose().proposals.front().total.value;
  line.zone(ZoneKind::heatSensitive, "film", box(14, 0.5, 24, 29.5), 0);
  const auto best = line.propose().proposals.front();
  CHECK(best.total.value ==
        Approx(before + 10 * data().zones.of(ZoneKind::heatSensitive).price.value).margin(1e-3));
}

TEST_CASE("cuts that part nothing, name nothing or leave no second end are refused") {
  KeyLine line;
  const auto refused = [&](std::vector<std::size_t> cut) {
    const Lookup lookup(line.board);
    return !proposeJumpers(lookup, {&line.graph, std::move(cut), line.key, {}, {}, 3}, data());
  };
  CHECK(refused({}));
  CHECK(refused({999}));
  const auto again = line.edge(boost::target(*boost::edges(line.graph).first, line.graph), 1,
                               EdgeKind::contact, line.jPin.pad, -1);
  CHECK(refused({again}));
}

TEST_CASE("a board that knows no places gets an answer in words") {
  BenchBoard bench;
  bench.board.info.outline = {};
  const NetId net = bench.net("A");
  const auto leg1 = boost::add_vertex({NodeKind::terminal, PinId{}, {}, -1}, bench.graph);
  const auto leg2 = boost::add_vertex({NodeKind::terminal, PinId{}, {}, -1}, bench.graph);
  const auto broken = bench.edge(leg1, leg2, EdgeKind::unknownWay, {}, -1);
  const Lookup lookup(bench.board);
  const auto found = proposeJumpers(lookup, {&bench.graph, {broken}, net, {}, {}, 3}, data());
  REQUIRE_FALSE(found);
  CHECK(wordsOf(found.error().message).find("nothing on the board has a place") != std::string::npos);
}

TEST_CASE("spots of mask hold the wire near its ends, at its bends and in between") {
  KeyLine line;
  const auto best = line.propose().proposals.front();
  const auto& spots = best.tackPoints;
  REQUIRE(spots.size() >= 3);
  CHECK(distance(spots.front(), best.way.front()).mm() <= data().wires.endTack.mm() + 1e-3);
  CHECK(distance(spots.back(), best.way.back()).mm() <= data().wires.endTack.mm() + 1e-3);
  for (std::size_t i = 1; i < spots.size(); ++i)
    CHECK(distance(spots[i - 1], spots[i]).mm() <= data().wires.tackSpacing.mm() + 1e-3);
}

TEST_CASE("a jumper's steps touch the bare copper before tin, and check after each joint") {
  KeyLine line;
  auto best = line.propose().proposals.front();
  const auto work = loadWorkSteps(std::filesystem::path(NETMEND_SOURCE_DIR) / "data" / "work_steps.json");
  REQUIRE(work);
  const WorkPrediction prediction{ExpectedReading{false, Volts(0.4504), Volts(0.0121)},
                                  ExpectedReading{true, {}, {}},
                                  ExpectedReading{false, Volts(0.43), Volts(0.01)}};
  const auto steps = jumperSteps(*work, best, prediction);
  const auto at = [&](const std::string& words) {
    return std::find_if(steps.begin(), steps.end(),
                        [&](const Step& s) { return s.text.find(words) != std::string::npos; }) -
           steps.begin();
  };
  const auto end = static_cast<std::ptrdiff_t>(steps.size());
  CHECK(at("Touch the bare copper at {from}") < at("Tin {from}"));
  CHECK(at("Tin {from}") < at("Solder the wire to {from}"));
  CHECK(at("Solder the wire to {from}") < at("Solder the wire to {to}"));
  CHECK(at("Solder the wire to {to}") < at("Take the line's readings"));
  CHECK(at("Take the line's readings") < end);
  CHECK(at("Scrape the solder mask") == end); // nothing to scrape here
  for (const Step& step : steps) {
    CHECK(step.check == !step.expected.empty());
  }
  const Step& touch = steps[static_cast<std::size_t>(at("Touch the bare copper at {from}"))];
  CHECK(touch.expected == "{expected_from}");
  CHECK(touch.otherwise.starts_with("Go on. OL where a value is expected"));
  const auto measureOf = [&](const std::string& words) {
    const auto& measure = steps[static_cast<std::size_t>(at(words))].measure;
    REQUIRE(measure);
    return *measure;
  };
  const StepMeasure from = measureOf("Touch the bare copper at {from}");
  CHECK(from.mode == ReadingMode::diode);
  CHECK(from.point.label == "C1.1");
  CHECK(from.point.pin);
  CHECK(from.other.label == "GND");
  REQUIRE(from.interval); // of what is written
  CHECK(from.interval->lowest == Approx(0.438).epsilon(1e-12));
  CHECK(from.interval->highest == Approx(0.462).epsilon(1e-12));
  CHECK_FALSE(from.overLimit);
  const StepMeasure to = measureOf("Touch the bare copper at {to}");
  CHECK(to.overLimit);
  CHECK_FALSE(to.interval);
  CHECK(to.point.label == "TP1");
  const StepMeasure wire = measureOf("Measure resistance from");
  CHECK(wire.mode == ReadingMode::ohms);
  CHECK(wire.other == to.point);
  REQUIRE(wire.interval);
  CHECK(wire.interval->lowest == 0.0);
  CHECK(wire.interval->highest == Approx(2.0 * best.wire.resistance.value).epsilon(1e-12));
  const StepMeasure off = measureOf("without power");
  CHECK(off.mode == ReadingMode::volts);
  CHECK(off.point.label == "battery contacts");
  CHECK(off.interval == ValueInterval{-0.5, 0.5});
  CHECK_FALSE(measureOf("Look at both landings").comparable());
  CHECK_FALSE(steps[static_cast<std::size_t>(at("Close shield"))].measure); // by eye
  // After each joint comes a check.
  for (const char* joint : {"Solder the wire to {from}", "Solder the wire to {to}"})
    CHECK(steps[static_cast<std::size_t>(at(joint)) + 1].check);

  best.from.kind = LandingKind::outerTrack;
  const auto scraped = jumperSteps(*work, best);
  const auto has = [&](const std::string& words) {
    return std::any_of(scraped.begin(), scraped.end(),
                       [&](const Step& s) { return s.text.find(words) != std::string::npos; });
  };
  CHECK(has("Scrape the solder mask off {from}"));
  CHECK_FALSE(has("Scrape the solder mask off {to}"));
  CHECK(has("UV mask and cure"));
}

TEST_CASE("the other repairs have steps with checks too, and refuse what makes no sense") {
  const auto work = loadWorkSteps(std::filesystem::path(NETMEND_SOURCE_DIR) / "data" / "work_steps.json");
  REQUIRE(work);
  for (const WorkKind kind : {WorkKind::resolder, WorkKind::removePart, WorkKind::replacePart,
                              WorkKind::clean, WorkKind::cutTrack, WorkKind::notEconomic}) {
    const auto steps = workSteps(*work, {kind, "C44", "shorted", {{PinId{}, "C44"}}});
    REQUIRE(steps);
    CHECK(std::any_of(steps->begin(), steps->end(), [](const Step& s) { return s.check; }));
    CHECK(std::any_of(steps->begin(), steps->end(),
                      [](const Step& s) { return s.text.find("{target}") != std::string::npos; }));
    for (const Step& step : *steps) {
      if (step.measure)
        CHECK(step.measure->point.label ==
              (step.measure->mode == ReadingMode::volts ? "battery contacts" : "C44"));
    }
  }
  CHECK_FALSE(workSteps(*work, {WorkKind::wire, "C44", "", {{PinId{}, "C44"}}}));
  CHECK_FALSE(workSteps(*work, {WorkKind::jumper, "C44", "", {}}));
  CHECK_FALSE(workSteps(*work, {WorkKind::resolder, "", "", {}}));
  CHECK_FALSE(workSteps(*work, {WorkKind::notEconomic, "board", "", {}}));
  CHECK(work->cautions.size() >= 6);
}
