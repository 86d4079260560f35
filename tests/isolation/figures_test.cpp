#include <catch2/catch.hpp>

#include "drawn_line.h"
#include "netmend/isolation/line_names.h"
#include "support/kept_figures.h"

// All that an isolation says of lines of every kind of copper, against the record kept in figures.json.
// That it is right is asked in known_terminations_test.cpp and the other tests.

using namespace netmend;
using netmend::test::DrawnLine;
using netmend::test::figure;
using netmend::test::mm;
using nlohmann::json;

namespace {

json kept(const std::vector<PinId>& pins) {
  json out = json::array();
  for (const PinId pin : pins)
    out.push_back(pin.value);
  return out;
}

json kept(const std::optional<Point>& at) {
  return at ? json{at->x.nm, at->y.nm} : json();
}

json kept(const std::vector<Point>& points) {
  json out = json::array();
  for (const Point at : points)
    out.push_back(kept(std::optional(at)));
  return out;
}

json kept(const CopperObject& object) {
  return std::visit(
      [&](const auto& id) {
        if constexpr (requires { id.value; })
          return json{object.index(), id.value};
        else
          return json{object.index()};
      },
      object);
}

json kept(const Prediction& prediction) {
  return {figure(prediction.overLimit), figure(prediction.mean.value), figure(prediction.spread.value)};
}

json kept(const FaultPlace& place) {
  return {static_cast<int>(place.kind),
          figure(place.share),
          place.edgeKind ? json(static_cast<int>(*place.edgeKind)) : json(),
          place.edge ? json(*place.edge) : json(),
          kept(place.object),
          place.pin.value,
          kept(place.at),
          kept(place.way),
          place.layer,
          place.length ? json(place.length->nm) : json(),
          kept(place.beyond),
          kept(place.before)};
}

json kept(const ProbePlace& place) {
  return {place.label,
          kept(place.object),
          place.pin.value,
          place.node ? json(*place.node) : json(),
          kept(place.at),
          place.layer,
          place.scrape,
          static_cast<int>(place.access.origin),
          static_cast<int>(place.access.value),
          place.effort ? figure(place.effort->value) : json()};
}

json kept(const Beside& beside) {
  return {beside.pin, beside.heading ? static_cast<int>(*beside.heading) : -1, beside.tenths};
}

json kept(const PlaceName& name) {
  return {static_cast<int>(name.sort),
          name.label,
          kept(name.beside),
          static_cast<int>(name.layer),
          {static_cast<int>(name.from.sort), name.from.pin, kept(name.from.beside)},
          {static_cast<int>(name.to.sort), name.to.pin, kept(name.to.beside)},
          static_cast<int>(name.stretch),
          name.fromTenths,
          name.toTenths,
          name.beyond,
          name.before,
          name.handle};
}

json figures(const std::vector<double>& values) {
  json out = json::array();
  for (const double value : values)
    out.push_back(figure(value));
  return out;
}

json hypotheses(const Isolation& isolation) {
  json out = json::array();
  for (const auto& faultClass : isolation.classes) {
    json places = json::array();
    for (const auto& place : faultClass.places)
      places.push_back(kept(place));
    out.push_back({static_cast<int>(faultClass.kind), figure(faultClass.prior), places});
  }
  return out;
}

/// By place: all hypotheses together, then each by itself.
json predictions(const Isolation& isolation) {
  json out = json::array();
  for (std::size_t i = 0; i < isolation.places.size(); ++i) {
    json row{kept(predictDiode(isolation, i))};
    for (std::size_t c = 0; c < isolation.classes.size(); ++c)
      row.push_back(kept(predictDiode(isolation, i, c)));
    out.push_back(row);
  }
  return out;
}

json observations(const Isolation& isolation) {
  json out = json::array();
  for (const auto& one : isolation.observations)
    out.push_back({one.place, one.other ? json(*one.other) : json()});
  for (const auto& one : isolation.setAside)
    out.push_back({"set aside", static_cast<int>(one.why)});
  return out;
}

json ranked(const Suspects& found) {
  json out = json::array();
  for (const auto& suspect : found.ranked) {
    json evidence = json::array();
    for (const auto& one : suspect.evidence)
      evidence.push_back({one.observation, figure(one.bits), static_cast<int>(one.foretold.what),
                          kept(one.foretold.prediction), figure(one.foretold.ohms.value),
                          figure(one.foretold.ohmsSpread.value)});
    out.push_back({suspect.faultClass, figure(suspect.probability), figure(suspect.prior),
                   suspect.places.size(), evidence});
  }
  json set{found.setSize,
           figure(found.setMass),
           found.setPlaces,
           found.setLength.nm,
           found.setHasUnknownLength,
           figure(found.entropyBits),
           found.againstSound ? json{found.againstSound->observation, figure(found.againstSound->good.value),
                                     found.againstSound->repeated}
                              : json()};
  out.push_back(set);
  for (const auto& one : found.contradictions)
    out.push_back({"contradiction", one.observation, figure(one.slipped), kept(one.foretold.prediction)});
  return out;
}

json kept(const NextProbe& next) {
  json out = json::array();
  out.push_back({next.stop, static_cast<int>(next.why), figure(next.openBits), figure(next.bestGuess),
                 figure(next.wrongRepair.value), next.standing.has_value()});
  for (const auto& probe : next.ranked)
    out.push_back({static_cast<int>(probe.mode), probe.place, probe.other ? json(*probe.other) : json(),
                   figure(probe.effort.value), figure(probe.bits), figure(probe.bitsPerMinute),
                   figure(probe.betterGuess), probe.again, kept(probe.expected)});
  return out;
}

json names(const DrawnLine& drawn, const Isolation& isolation) {
  const Lookup lookup(drawn.board);
  const PlaceNames places(lookup);
  const LineNames names(places, drawn.line, isolation);
  json out = json::array();
  for (std::size_t i = 0; i < isolation.places.size(); ++i)
    out.push_back(kept(names.probe(i)));
  for (const auto& faultClass : isolation.classes) {
    const auto named = names.nameOf(faultClass);
    out.push_back({kept(named.place), named.places});
    for (const auto& place : faultClass.places)
      out.push_back(kept(names.fault(place)));
  }
  return out;
}

struct Views {
  RepairView repairs;
  ProbeLimits limits;
};

void check(const std::string& name, const DrawnLine& drawn, Isolation isolation,
           const std::vector<Reading>& readings, const Views& views = {}) {
  json before;
  before["classes"] = hypotheses(isolation);
  json places = json::array();
  for (const auto& place : isolation.places)
    places.push_back(kept(place));
  before["places"] = places;
  json notices = json::array();
  for (const auto& notice : isolation.notices)
    notices.push_back({static_cast<int>(notice.kind), notice.count, figure(notice.share),
                       figure(notice.spread.value), figure(notice.spreadThen.value)});
  before["notices"] = notices;
  before["names"] = names(drawn, isolation);
  before["predictions"] = predictions(isolation);
  before["next"] = kept(nextProbe(isolation));
  test::checkFigures("isolation/figures.json", name, before);

  isolation = update(std::move(isolation), readings);
  json after;
  after["probability"] = json{figures(isolation.probability), {figure(isolation.shareError)}};
  after["observations"] = observations(isolation);
  after["suspects"] = ranked(suspects(isolation));
  after["narrow"] = ranked(suspects(isolation, 0.3)).back();
  after["next"] = kept(nextProbe(isolation));
  after["otherwise"] = kept(nextProbe(isolation, views.repairs, views.limits));
  json shown = json::array();
  for (std::size_t i = 0; i < isolation.places.size(); ++i)
    shown.push_back(kept(predictDiode(isolation, i)));
  after["predictions"] = shown;
  test::checkFigures("isolation/figures.json", name + ", after its readings", after);
}

NodeIndex ring(DrawnLine& drawn, ViaId via, int layer) {
  return add_vertex(CopperNode{NodeKind::viaLayer, via, drawn.board.vias.find(via)->position, layer},
                    drawn.line.graph);
}

ViaId via(DrawnLine& drawn, Point at, Fact<MaskOpening> opening) {
  Via added;
  added.id = drawn.board.newId<ViaId>();
  added.position = at;
  added.maskOpening = opening;
  added.net = fromUser(drawn.net);
  drawn.board.vias.put(added);
  return added.id;
}

void barrel(DrawnLine& drawn, NodeIndex a, NodeIndex b, ViaId of, bool placed = true) {
  const auto at = placed ? std::optional(drawn.board.vias.find(of)->position) : std::nullopt;
  drawn.edge(a, b, {EdgeKind::via, of, 0, at, at, {}, {}, -1, fromUser(Ohms(0.002))});
}

/// A connector, an outer track in three pieces, a via, an inner track longer than straight, a second via, an
/// arc on the bottom, a resistor of 100 Ω, two chips in a ring of copper, a pull-up, a stub, and a pin whose
/// way nobody knows.
DrawnLine everyCopper() {
  DrawnLine drawn;
  const auto supply = drawn.addNet("+3V3", NetRole::supply);
  const auto j1 = drawn.pinOnLine(drawn.part("J1", PartKind::connector), "1", mm(0, 0));
  const auto a = drawn.joint(mm(14, 0), 0);
  drawn.track(j1, a, 14, 0);
  const auto one = via(drawn, mm(14.5, 0), fromUser(MaskOpening::top));
  const auto ring0 = ring(drawn, one, 0), ring1 = ring(drawn, one, 1), ring2 = ring(drawn, one, 2);
  drawn.contact(a, ring0);
  barrel(drawn, ring0, ring1, one);
  barrel(drawn, ring1, ring2, one);
  const auto two = via(drawn, mm(30, 4), fromUser(MaskOpening::none));
  const auto inner = ring(drawn, two, 1), bottom = ring(drawn, two, 2);
  drawn.track(ring1, inner, 21.5, 1);
  barrel(drawn, inner, bottom, two, false);
  const auto arcEnd = drawn.joint(mm(36, 4), 2);
  drawn.track(bottom, arcEnd, 9.4, 2);
  const auto r = drawn.part("R1", PartKind::resistor, "100");
  const auto r1 = drawn.pinOnLine(r, "1", mm(38, 4));
  const auto r2 = drawn.pinOnLine(r, "2", mm(40, 4));
  drawn.track(arcEnd, r1, 2.0, 2);
  drawn.through(r1, r2, r, Ohms(100));
  const auto u1 = drawn.pinOnLine(drawn.part("U1", PartKind::chip), "7", mm(50, 4), Access::underPart);
  const auto u2 = drawn.pinOnLine(drawn.part("U2", PartKind::chip), "3", mm(50, 10));
  drawn.track(r2, u1, 10);
  drawn.track(u1, u2, 6);
  drawn.track(r2, u2, 12);
  const auto pullUp = drawn.part("R2", PartKind::resistor, "4k7");
  const auto up = drawn.pinOnLine(pullUp, "1", mm(56, 10), Access::underLid);
  drawn.pin(pullUp, "2", supply);
  drawn.track(u2, up, 6.5, 0);
  drawn.track(up, drawn.joint(mm(60, 10)), 4); // leads nowhere
  const auto bare = drawn.barePin(drawn.part("U3", PartKind::transistor), "9");
  drawn.unknownWay(u2, bare);
  return drawn;
}

/// `branches` pins about a hub, some of them by two ways in one.
DrawnLine spider(int branches, bool fromTrack) {
  DrawnLine drawn;
  NodeIndex hub{};
  if (fromTrack) {
    const auto j = drawn.pinOnLine(drawn.part("J9", PartKind::connector), "1", mm(0, 0));
    const auto end = drawn.joint(mm(5, 0), 2);
    drawn.track(j, end, 5, 2);
    hub = drawn.hub();
    drawn.unknownWay(end, hub);
  } else {
    hub = drawn.hub();
  }
  for (int i = 1; i <= branches; ++i) {
    const bool chip = i % 2 == 0;
    const auto part =
        drawn.part((chip ? "U" : "J") + std::to_string(i), chip ? PartKind::chip : PartKind::connector);
    const auto pin = i % 3 == 0 ? drawn.pinOnLine(part, "4", mm(3.0 * i, 2.0 * i))
                                : drawn.barePin(part, std::to_string(i));
    drawn.unknownWay(hub, pin);
  }
  return drawn;
}

} // namespace

TEST_CASE("a line of every kind of copper gives the figures on record") {
  const auto drawn = everyCopper();
  const std::vector<KnownGood> good{{drawn.pins[0], Volts(0.61), Volts(0.004)},
                                    {drawn.pins[4], Volts(0.52), Volts(0.006)}};
  Views views;
  views.limits = {{"U2.3"}, 40};
  auto ohms = drawn.diode("J1.1", 4200.0);
  ohms.mode = ReadingMode::ohms;
  auto milliohms = drawn.continuity("J1.1", "via 1 top", 0.08);
  milliohms.mode = ReadingMode::milliohms;
  check("every kind of copper", drawn, drawn.isolation(good),
        {drawn.diode("J1.1", 0.71), drawn.diode("R1.2", 0.545), drawn.continuity("J1.1", "R1.1", 0.6),
         drawn.continuity("R1.1", "U2.3", std::nullopt), ohms, milliohms, drawn.diode("U2.3", std::nullopt)},
        views);
}

TEST_CASE("lines of unknown ways give the figures on record") {
  const auto drawn = spider(6, false);
  Views views;
  views.repairs.wrongRepair = Seconds(60);
  for (std::size_t c = 0; c < 30; ++c)
    views.repairs.groupOf.push_back(c % 4);
  check("six branches", drawn, drawn.isolation({{drawn.pins[0], Volts(0.47), Volts(0.004)}}),
        {drawn.diode("J1.1", std::nullopt), drawn.diode("U2.2", 0.55), drawn.continuity("J1.1", "J5.5", 0.4)},
        views);
  const auto rooted = spider(5, true);
  check("five branches beyond a track", rooted, rooted.isolation({}),
        {rooted.diode("J9.1", 0.5), rooted.diode("U4.4", 0.6)});
  const auto many = spider(8, false);
  check("eight branches", many, many.isolation({{many.pins[1], std::nullopt}, {PinId(9999), Volts(0.5)}}),
        {many.diode("U2.2", std::nullopt), many.diode("J1.1", std::nullopt)});
}

TEST_CASE("joints, tracks and parts of which little is known give the figures on record") {
  DrawnLine drawn;
  const auto bareJoint = [&](PartKind kind, const char* reference, Point at, int how) {
    const PinId id = drawn.pin(drawn.part(reference, kind), "1", drawn.net);
    drawn.pins.push_back(id);
    Pad pad;
    pad.id = drawn.board.newId<PadId>();
    pad.pin = id;
    pad.position = fromUser(at);
    drawn.board.pads.put(pad);
    const auto terminal = add_vertex(CopperNode{NodeKind::terminal, id, std::nullopt, -1}, drawn.line.graph);
    const auto copper = add_vertex(CopperNode{NodeKind::pad, pad.id, std::nullopt, -1}, drawn.line.graph);
    CopperEdge joint{EdgeKind::solderJoint, {}, 0, {}, {}, {}, {}, -1, {}};
    if (how == 1) joint.object = pad.id;
    if (how == 2) joint.from = at, joint.to = mm(at.x.mm() + 1, at.y.mm());
    drawn.edge(terminal, copper, joint);
    return copper;
  };
  const auto a = bareJoint(PartKind::connector, "J1", mm(0, 0), 0);
  const auto b = bareJoint(PartKind::chip, "U1", mm(20, 3), 1);
  const auto c = bareJoint(PartKind::chip, "U2", mm(40, 6), 2);
  const auto r = drawn.part("R1", PartKind::resistor, "22");
  auto placed = *drawn.board.parts.find(r);
  placed.position = fromUser(mm(9, 9));
  drawn.board.parts.put(placed);
  // A track of no known length, one of which even the ends are not known, a part whose value nobody knows.
  drawn.edge(a, b, {EdgeKind::track, {}, 0, mm(0, 0), mm(20, 3), {}, {}, 1, {}});
  const auto between = drawn.joint(mm(30, 6));
  drawn.edge(b, between, {EdgeKind::part, r, 0, {}, {}, {}, {}, -1, {}});
  drawn.edge(between, c, {EdgeKind::track, {}, 0, {}, {}, {}, {}, 1, {}});
  CopperEdge way{EdgeKind::unknownWay, {}, 0, mm(40, 6), mm(50, 6), {}, {}, -1, {}};
  drawn.edge(c, drawn.barePin(drawn.part("U3", PartKind::chip), "1"), way);
  way.length = fromUser(Length::fromMm(31));
  drawn.edge(c, drawn.barePin(drawn.part("U4", PartKind::diode), "1"), way);
  auto milliohms = drawn.continuity("J1.1", "U1.1", 0.5);
  milliohms.mode = ReadingMode::milliohms;
  check("little known", drawn, drawn.isolation({{drawn.pins[0], Volts(0.45), Volts(0.004)}}),
        {drawn.diode("U3.1", 0.47), drawn.continuity("J1.1", "U4.1", 23.0), milliohms,
         drawn.continuity("U2.1", "U3.1", std::nullopt)});
}

TEST_CASE("an OL that stands against good boards gives the figures on record") {
  DrawnLine drawn;
  const auto j = drawn.pinOnLine(drawn.part("J1", PartKind::connector), "4", mm(0, 0));
  const auto tp = drawn.testPad("TP3", mm(10, 0));
  const auto u = drawn.pinOnLine(drawn.part("U1", PartKind::chip), "7", mm(30, 0), Access::underPart);
  drawn.track(j, tp, 10);
  drawn.track(tp, u, 20);
  Views views;
  views.repairs.groupOf = {0, 1, 2, 3, 3, 3, 4};
  views.limits.most = 2;
  check("one standing OL", drawn, drawn.isolation({{drawn.pins[1], Volts(0.52), Volts(0.005)}}),
        {drawn.diode("J1.4", 0.521), drawn.diode("pad of J1.4", 0.519), drawn.diode("J1.4", 0.520),
         drawn.diode("TP3", std::nullopt)},
        views);
}
