#include <catch2/catch.hpp>

#include <filesystem>
#include <map>
#include <set>
#include <tuple>

#include "casework/demo_device.h"
#include "netmend/words/fault.h"
#include "netmend/words/place.h"

using namespace netmend;
using namespace netmend::test;

namespace {

std::string placeText(const PlaceName& name) {
  return wordsOf(nameOf(name));
}

PlaceName named(PlaceName::Sort sort, const std::string& label = {}) {
  PlaceName name;
  name.sort = sort;
  name.label = label;
  return name;
}

PlaceName via(std::optional<Heading> heading, int tenths) {
  PlaceName name = named(PlaceName::Sort::via);
  name.beside = {"U102.76", heading, tenths, {}};
  return name;
}

PlaceName track(PlaceName::Stretch stretch, int from, int to) {
  PlaceName name = named(PlaceName::Sort::track);
  name.from = {TrackEnd::Sort::pin, "R107.1", {}};
  name.to = {TrackEnd::Sort::pin, "U102.76", {}};
  name.stretch = stretch;
  name.fromTenths = from;
  name.toTenths = to;
  return name;
}

} // namespace

TEST_CASE("Places are named as a person would show them", "[words]") {
  CHECK(placeText(named(PlaceName::Sort::pin, "J4.9")) == "J4.9");
  CHECK(placeText(named(PlaceName::Sort::pad, "J4.9")) == "pad of J4.9");
  CHECK(placeText(named(PlaceName::Sort::joint, "J4.9")) == "joint of J4.9");
  CHECK(placeText(named(PlaceName::Sort::joint)) == "joint of a pin");
  CHECK(placeText(named(PlaceName::Sort::deadPin, "U1.7")) ==
        "dead pin U1.7 (inside the part, copper sound)");
  CHECK(placeText(named(PlaceName::Sort::part, "R1")) == "R1 itself");
  CHECK(placeText(named(PlaceName::Sort::part)) == "a part in the line");
  CHECK(placeText({}) == "a place that nobody has seen");
  CHECK(placeText(via(Heading::right, 20)) == "via 2 mm right of U102.76");
  CHECK(placeText(via(Heading::left, 21)) == "via 2.1 mm left of U102.76");
  CHECK(placeText(via(Heading::above, 8)) == "via 0.8 mm above U102.76");
  CHECK(placeText(via(Heading::below, 110)) == "via 11 mm below U102.76");
  CHECK(placeText(via({}, 0)) == "via at U102.76");
  PlaceName lone = named(PlaceName::Sort::spot);
  lone.beside.at = mm(12, 8.5);
  CHECK(placeText(lone) == "track at (12.00, 8.50) mm");
  PlaceName below = via(Heading::right, 20);
  below.layer = PlaceName::Layer::bottom;
  below.handle = "via 17";
  CHECK(placeText(below) == "via 2 mm right of U102.76, bottom (via 17)");
}

TEST_CASE("Right and left are those of the picture beside it, without one those from above that side",
          "[words]") {
  const auto in = [](PlaceName name, bool fromBelow, int quarters) {
    return wordsOf(nameOf(name), english, PictureLie{fromBelow, quarters});
  };
  const PlaceName top = via(Heading::right, 20);
  CHECK(placeText(top) == "via 2 mm right of U102.76");
  CHECK(in(top, false, 0) == "via 2 mm right of U102.76");
  CHECK(in(top, false, 1) == "via 2 mm above U102.76");
  CHECK(in(top, false, 2) == "via 2 mm left of U102.76");
  CHECK(in(top, false, 3) == "via 2 mm below U102.76");
  CHECK(in(top, true, 0) == "via 2 mm left of U102.76");
  CHECK(in(top, true, 1) == "via 2 mm below U102.76");
  PlaceName bottom = via(Heading::above, 20);
  bottom.layer = PlaceName::Layer::bottom;
  CHECK(placeText(bottom) == "via 2 mm above U102.76, bottom");
  CHECK(in(bottom, true, 1) == "via 2 mm left of U102.76, bottom");
  CHECK(in(bottom, false, 1) == "via 2 mm left of U102.76, bottom");
  bottom.beside.heading = Heading::right;
  CHECK(in(bottom, true, 0) == "via 2 mm right of U102.76, bottom");
  CHECK(in(bottom, false, 0) == "via 2 mm left of U102.76, bottom");
  // The ends of a track turn with it.
  PlaceName ends = track(PlaceName::Stretch::whole, 0, 0);
  ends.to = {TrackEnd::Sort::via, "", {"C28.1", Heading::left, 24, {}}};
  CHECK(in(ends, false, 1) == "track from R107.1 to via 2.4 mm below C28.1");
  ends.layer = PlaceName::Layer::bottom;
  CHECK(in(ends, false, 0) == "track from R107.1 to via 2.4 mm right of C28.1, bottom");
}

TEST_CASE("Stretches of tracks are told from their start", "[words]") {
  using Stretch = PlaceName::Stretch;
  CHECK(placeText(track(Stretch::whole, 0, 0)) == "track from R107.1 to U102.76");
  CHECK(placeText(track(Stretch::first, 0, 50)) == "track from R107.1 towards U102.76, first 5 mm");
  CHECK(placeText(track(Stretch::last, 0, 50)) == "track from R107.1 towards U102.76, last 5 mm");
  PlaceName inner = track(Stretch::between, 50, 123);
  inner.layer = PlaceName::Layer::inner;
  CHECK(placeText(inner) == "track from R107.1 towards U102.76, 5 to 12.3 mm, inner layer");
  PlaceName far = track(Stretch::first, 0, 50);
  far.to = {TrackEnd::Sort::via, "", {"C28.1", Heading::right, 24, {}}};
  CHECK(placeText(far) == "track from R107.1 towards C28.1, first 5 mm");
  CHECK(far.asSaid().to == TrackEnd{TrackEnd::Sort::pin, "C28.1", {}});
  far.stretch = Stretch::whole;
  CHECK(placeText(far) == "track from R107.1 to via 2.4 mm right of C28.1");
  CHECK(far.asSaid() == far);
  PlaceName vias = track(Stretch::whole, 0, 0);
  vias.from = {TrackEnd::Sort::via, "", {"J4.9", {}, 0, {}}};
  vias.to = {TrackEnd::Sort::via, "", {"C28.1", {}, 0, {}}};
  vias.layer = PlaceName::Layer::inner;
  CHECK(placeText(vias) == "track between the vias at J4.9 and at C28.1, inner layer");
  vias.to.sort = TrackEnd::Sort::fork;
  CHECK(placeText(vias) == "track from via at J4.9 to fork at C28.1, inner layer");
  vias.from.sort = TrackEnd::Sort::area;
  vias.to.sort = TrackEnd::Sort::end;
  CHECK(placeText(vias) == "track from copper area at J4.9 to its end at C28.1, inner layer");
  vias.to.sort = TrackEnd::Sort::unseen;
  CHECK(placeText(vias) == "track from copper area at J4.9 to an end that nobody has seen, inner layer");
}

TEST_CASE("Ways that nobody has seen are told by their pins, three of them by name", "[words]") {
  PlaceName way = named(PlaceName::Sort::unknownWay);
  CHECK(placeText(way) == "unknown way to no pin");
  way.beyond = {"J1.1"};
  CHECK(placeText(way) == "unknown way to J1.1");
  way.beyond = {"J1.1", "J1.2", "J1.3"};
  CHECK(placeText(way) == "unknown way to J1.1, J1.2 and J1.3");
  way.beyond = {"J1.1", "J1.2", "J1.3", "J1.4", "J1.5"};
  CHECK(placeText(way) == "unknown way to J1.1, J1.2, J1.3 and 2 more");
  way.beyond = {"J1.1", "J1.2"};
  way.before = {"U1.5"};
  CHECK(placeText(way) == "unknown way between J1.1 and J1.2 on one side and U1.5 on the other");
}

TEST_CASE("A lead's place is named by what is beside its handle, on the board that it is of", "[words]") {
  const PlaceNames places(demoDevice().lookup);
  CHECK(wordsOf(nameOf(ProbePoint{demoDevice().pin("J4.9"), "J4.9"}, &places)) == "J4.9");
  CHECK(wordsOf(nameOf(ProbePoint{PinId{}, "via 963 top"}, &places)) == "via 2.4 mm above J4.9");
  CHECK(wordsOf(nameOf(ProbePoint{PinId{}, "via 963 top"}, nullptr)) == "via 963 top");
  CHECK(wordsOf(nameOf(ProbePoint{PinId{}, "pad of J4.9"}, &places)) == "pad of J4.9");
  CHECK(wordsOf(nameOf(ProbePoint{PinId{}, "via at (19.50, 9.00) mm"}, &places)) ==
        "via at (19.50, 9.00) mm");
}

TEST_CASE("No two places of a line are called the same", "[words]") {
  const FaultCase& fault = demoFault();
  std::set<std::string> probes, faults;
  std::size_t places = 0;
  for (std::size_t i = 0; i < fault.isolation.places.size(); ++i)
    probes.insert(placeText(fault.names.probe(i)));
  CHECK(probes.size() == fault.isolation.places.size());
  for (const FaultClass& faultClass : fault.isolation.classes)
    for (const FaultPlace& place : faultClass.places) {
      faults.insert(placeText(fault.names.fault(place)));
      ++places;
    }
  CHECK(faults.size() == places);
  CHECK(places > 10);
}

TEST_CASE("On other people's boards, too, no two places of a line are called the same", "[words]") {
  // Boards of Debian's package kicad-demos.
  const std::filesystem::path demos = "/usr/share/kicad/demos";
  std::size_t lines = 0, places = 0;
  std::string longest;
  for (const char* file : {"video/video.kicad_pcb", "complex_hierarchy/complex_hierarchy.kicad_pcb",
                           "pic_programmer/pic_programmer.kicad_pcb", "stickhub/StickHub.kicad_pcb",
                           "sonde xilinx/sonde xilinx.kicad_pcb", "interf_u/interf_u.kicad_pcb"}) {
    if (!std::filesystem::exists(demos / file)) continue;
    const auto board = openBoard((demos / file).string());
    REQUIRE(board);
    std::size_t here = 0;
    for (const Net& net : board->board->nets) {
      const std::size_t pins = board->lookup->pinsOf(net.id).size();
      if (pins < 3 || pins > 8 || ++here > 3) continue;
      FaultQuestion question;
      question.net = net.id;
      const auto fault = solveFault(*board, question, repairData());
      REQUIRE(fault);
      INFO(file << ", " << net.name);
      std::map<std::string, int> probes, faults;
      for (std::size_t i = 0; i < fault->isolation.places.size(); ++i)
        ++probes[placeText(fault->names.probe(i))];
      std::map<std::tuple<FaultKind, std::optional<std::size_t>, PinId, std::vector<Point>>, std::string>
          named;
      for (const FaultClass& faultClass : fault->isolation.classes)
        for (const FaultPlace& place : faultClass.places)
          named[{place.kind, place.edge, place.pin, place.way}] = placeText(fault->names.fault(place));
      for (const auto& [key, text] : named)
        ++faults[text];
      for (const auto& called : {probes, faults})
        for (const auto& [text, times] : called) {
          INFO(text);
          CHECK(times == 1);
          longest = std::max(longest, text, [](auto& a, auto& b) { return a.size() < b.size(); });
        }
      ++lines;
      places += probes.size() + faults.size();
    }
  }
  WARN(lines << " lines, " << places << " places");
  INFO(longest);
  CHECK(longest.size() <= 80); // a probe's headline has ten more
  CHECK(lines >= 15);
}

TEST_CASE("A suspect is named by its likeliest place and how many more read the same", "[words]") {
  const auto said = [](FaultKind kind, std::size_t places) {
    return wordsOf(nameOf(FoundFault{kind, named(PlaceName::Sort::joint, "J4.9"), places}));
  };
  CHECK(said(FaultKind::open, 1) == "open: joint of J4.9");
  CHECK(said(FaultKind::open, 2) == "open: joint of J4.9, or 1 more place that reads the same");
  CHECK(said(FaultKind::open, 3) == "open: joint of J4.9, or 2 more places that read the same");
  CHECK(said(FaultKind::deadPin, 1) == "joint of J4.9");
  CHECK(said(FaultKind::sound, 0) == "the line is sound");
  CHECK(said(FaultKind::noneOfThese, 0) == "none of these");
  CHECK(said(FaultKind::shortToGround, 0) == "short to ground somewhere on the line");
}
