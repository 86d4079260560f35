// Boards of the Debian package kicad-demos, of which only a connector is drawn, turned and moved: once the
// file is brought in, the drawing is the board itself. Compared by code of its own.
#include <filesystem>
#include <iostream>
#include <map>
#include <set>

#include "netmend/board/exchange/import.h"
#include "sketch/merging.h"
#include "support/effort.h"

using namespace netmend;
using namespace netmend::test;

namespace {

/// A quarter turn counter-clockwise, then by (10, 20) mm; exact.
Point carried(Point p) {
  return {Length(10'000'000) - p.y, Length(20'000'000) + p.x};
}

/// What somebody would have drawn first: the part with most pins, all that shares a net with it, and no
/// copper.
Board drawnOf(const Board& file) {
  const Lookup lookup(file);
  PartId most;
  for (const Part& part : file.parts)
    if (!most || lookup.pinsOf(part.id).size() > lookup.pinsOf(most).size()) most = part.id;
  std::set<NetId> nets;
  for (const PinId pin : lookup.pinsOf(most))
    if (const Fact<NetId>& net = file.pins.find(pin)->net; net.known() && net.value) nets.insert(net.value);
  auto drawn = drawnBoard();
  std::map<PartId, PartId> parts;
  std::map<PinId, PinId> pins;
  for (const Pin& pin : file.pins) {
    if (pin.part != most && !(pin.net.known() && nets.contains(pin.net.value))) continue;
    Pin mine;
    mine.name = pin.name;
    if (pin.part) {
      PartId& part = parts[pin.part];
      if (!part) {
        Part made;
        made.reference = file.parts.find(pin.part)->reference;
        part = drawn.put(drawn.board.parts, made);
      }
      mine.part = part;
    }
    if (pin.net.known())
      mine.net = fromUser(pin.net.value ? drawn.net("*" + std::to_string(pin.net.value.value)) : NetId());
    pins[pin.id] = drawn.put(drawn.board.pins, mine);
  }
  for (const Pad& pad : file.pads) {
    if (!pins.contains(pad.pin)) continue;
    Pad mine = pad;
    mine.pin = pins.at(pad.pin);
    mine.position = fromUser(carried(pad.position.value));
    mine.rotation = Degrees(pad.rotation.value + 90.0);
    drawn.put(drawn.board.pads, mine);
  }
  return drawn.board;
}

/// How many labels of pins stand once.
std::size_t unique(const Board& board) {
  std::map<std::string, int> times;
  for (const Pin& pin : board.pins)
    ++times[pinLabel(board, pin.id)];
  return static_cast<std::size_t>(
      std::count_if(times.begin(), times.end(), [](const auto& label) { return label.second == 1; }));
}

/// One to one, or not.
template <class A, class B> struct Pairs {
  std::map<A, B> there;
  std::map<B, A> back;
  bool add(A a, B b) {
    return there.emplace(a, b).first->second == b && back.emplace(b, a).first->second == a;
  }
};

/// Each pad of the file with one of the same label that lies where it should: how far off the worst is.
double worstOf(const Board& file, const Board& board, Pairs<PinId, PinId>& pins) {
  std::multimap<std::string, const Pad*> there;
  for (const Pad& pad : board.pads)
    there.emplace(pinLabel(board, pad.pin), &pad);
  double worst = 0;
  for (const Pad& pad : file.pads) {
    const Point at = carried(pad.position.value);
    const auto [first, last] = there.equal_range(pinLabel(file, pad.pin));
    auto best = last;
    double least = 1e300;
    for (auto one = first; one != last; ++one) {
      const auto found = pins.there.find(pad.pin);
      if (found != pins.there.end() && found->second != one->second->pin) continue;
      const double away = std::hypot(static_cast<double>((one->second->position.value.x - at.x).nm),
                                     static_cast<double>((one->second->position.value.y - at.y).nm));
      if (away >= least) continue;
      least = away;
      best = one;
    }
    INFO(pinLabel(file, pad.pin));
    REQUIRE(best != last);
    CHECK(pins.add(pad.pin, best->second->pin));
    const double turn = std::fmod(best->second->rotation.value - pad.rotation.value + 720.0, 360.0);
    CHECK(std::abs(turn - 90.0) < 1e-6);
    worst = std::max(worst, least);
    there.erase(best);
  }
  CHECK(there.empty());
  return worst;
}

} // namespace

TEST_CASE("a real board brought into a drawing of its connector is that board") {
  std::size_t boards = 0, leftOut = 0, drawnPins = 0, allPins = 0;
  double worst = 0;
  for (const auto& entry : std::filesystem::recursive_directory_iterator("/usr/share/kicad/demos")) {
    if (entry.path().extension() != ".kicad_pcb") continue;
    const auto imported = importBoard(entry.path());
    REQUIRE(imported);
    const Board& file = imported->board;
    INFO(entry.path().filename().string());
    const Board drawn = drawnOf(file);
    if (unique(drawn) < 3) { // too few places to lay one on the other
      ++leftOut;
      continue;
    }
    const MergePlan plan = planOf(drawn, file);
    CHECK(plan.differences.empty());
    CHECK(plan.learnt == 0);
    CHECK(plan.onlyDrawn == 0);
    CHECK(plan.agree == drawn.pins.size());
    CHECK(plan.onlyInFile == file.pins.size() - drawn.pins.size());
    CHECK(plan.placesFit);
    CHECK(plan.worstPlace == Length());
    const Board board = mergedBy(drawn, file, plan);

    Pairs<PinId, PinId> pins;
    worst = std::max(worst, worstOf(file, board, pins));
    Pairs<NetId, NetId> nets;
    for (const auto& [theirs, mine] : pins.there) {
      const Fact<NetId>& a = file.pins.find(theirs)->net;
      const Fact<NetId>& b = board.pins.find(mine)->net;
      CHECK(a.known() == b.known());
      if (a.known() && b.known()) CHECK(nets.add(a.value, b.value));
    }
    for (const auto& [a, b] : nets.there)
      if (a) CHECK(file.nets.find(a)->name == board.nets.find(b)->name);
    CHECK(board.parts.size() == file.parts.size());
    CHECK(board.pins.size() == file.pins.size());
    CHECK(board.tracks.size() == file.tracks.size());
    CHECK(board.vias.size() == file.vias.size());
    CHECK(board.areas.size() == file.areas.size());
    CHECK(board.info.layerOrder.size() == file.info.layerOrder.size());
    ++boards;
    drawnPins += drawn.pins.size();
    allPins += file.pins.size();
  }
  std::cout << "merged into drawings of connectors: " << boards << " boards, " << drawnPins
            << " pins drawn of " << allPins << "; the worst place is off by " << worst << " nm\n";
  CHECK(boards >= 12);
  CHECK(leftOut == 2); // microwave: four parts of one reference; test_pads_inside_pads: two pins a part
  CHECK(worst <= 1'000.0);
}
