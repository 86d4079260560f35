#include <map>

#include <catch2/catch.hpp>

#include "board/exchange/measure.h"
#include "netmend/board/exchange/import.h"
#include "netmend/board/shape.h"
#include "support/ipc_export.h"

// Two readers against each other: the CAD program (package kicad 6.0.11) writes IPC-D-356 test data of
// each demo board, and what is read from these must be what is read from the board itself.

using namespace netmend;

namespace {

struct Spot {
  std::string label; ///< cut as the test data cut it
  Point at;
  std::string net;
  Box copper;
  bool upright = false;
  Fact<double> turn; ///< degrees, where an odd angle shows in the pad's shape
};

std::string cut(const std::string& text, std::size_t most) {
  return text.substr(0, most);
}

std::vector<Spot> spotsOf(const Board& board) {
  std::vector<Spot> spots;
  for (const Pad& pad : board.pads) {
    const Pin& pin = *board.pins.find(pad.pin);
    const Part* part = board.parts.find(pin.part);
    const auto shape = padShape(pad);
    // A slot without plating is a hole with a feature round it in test data, which have no slots.
    if (!shape || (!pad.plated.value && pad.drill.value.width > Length(0))) continue;
    Spot spot;
    spot.label = cut(part != nullptr ? part->reference : "", 6) + "." + cut(pin.name, 4);
    // The test data name the hole's place, the board file's pads their copper's middle.
    spot.at = placed(pad.position.value, pad.rotation, pad.drillOffset);
    spot.net = netName(board, pin.net);
    spot.copper = boxOf(outlineOf(*shape));
    const double turn = std::fmod(pad.rotation.value, 90.0);
    spot.upright = turn == 0.0 && pad.shape.value != PadShape::polygon && pad.drillOffset == Point{};
    const bool longish = pad.size.known() && pad.size.value.width != pad.size.value.height;
    if (turn != 0.0 && longish && pad.shape.value != PadShape::polygon)
      spot.turn = fromFile(std::fmod(pad.rotation.value + 720.0, 180.0));
    spots.push_back(std::move(spot));
  }
  return spots;
}

Point lowest(const std::vector<Spot>& spots) {
  Box box;
  for (const Spot& s : spots)
    box.include(s.at);
  return box.min;
}

/// Both name the same nets differently (cut, made unique); one to one is what counts.
void sameNet(std::map<std::string, std::string>& names, const std::string& from, const std::string& to) {
  const auto [it, isNew] = names.emplace(from, to);
  if (it->second != to) FAIL_CHECK("net " << from << " is both " << it->second << " and " << to);
}

/// Gives how many pads were compared in size, too.
std::size_t compare(const Board& cad, const Board& ipc) {
  const auto cadSpots = spotsOf(cad);
  const auto ipcSpots = spotsOf(ipc);
  REQUIRE(!cadSpots.empty());
  REQUIRE(ipcSpots.size() == cadSpots.size());
  // The test data may count from another origin.
  const Point shift = lowest(cadSpots) - lowest(ipcSpots);
  std::multimap<std::string, const Spot*> open;
  for (const Spot& s : cadSpots)
    open.emplace(s.label, &s);
  std::map<std::string, std::string> toCad, toIpc;
  std::size_t boxes = 0;
  for (const Spot& s : ipcSpots) {
    const auto [first, last] = open.equal_range(s.label);
    auto best = last;
    for (auto it = first; it != last; ++it)
      if (distance(it->second->at, s.at + shift) < Length(6000)) best = it; // steps of 2.54 µm
    if (best == last) {
      FAIL_CHECK(s.label << " has no partner at " << s.at.x.mm() << ", " << s.at.y.mm());
      continue;
    }
    const Spot& partner = *best->second;
    if (s.net != "-" || partner.net != "-") {
      sameNet(toCad, s.net, partner.net);
      sameNet(toIpc, partner.net, s.net);
    }
    if (partner.turn.known()) {
      INFO(s.label);
      CHECK(s.turn.value == Approx(partner.turn.value).margin(0.5)); // written in whole degrees
    }
    if (partner.upright) {
      ++boxes;
      if (std::abs((partner.copper.size().width - s.copper.size().width).nm) > 4000 ||
          std::abs((partner.copper.size().height - s.copper.size().height).nm) > 4000)
        FAIL_CHECK(s.label << " has another size");
    }
    open.erase(best);
  }
  CHECK(ipc.vias.size() == cad.vias.size());
  return boxes;
}

} // namespace

TEST_CASE("test data written by the CAD program say the same as its board files", "[.full]") {
  const test::IpcExports exports;
  std::size_t sizes = 0;
  for (const auto& [cadFile, ipcFile] : exports.all) {
    INFO(cadFile);
    const auto cad = importBoard(cadFile);
    const auto ipc = importBoard(ipcFile);
    REQUIRE(cad);
    REQUIRE(ipc);
    sizes += compare(cad->board, ipc->board);
  }
  CHECK(exports.all.size() == 14);
  CHECK(sizes > 4000); // of 4846 pads
}
