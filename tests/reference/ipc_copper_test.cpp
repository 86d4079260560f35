#include <algorithm>
#include <iostream>
#include <map>
#include <random>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "netmend/base/file.h"
#include "netmend/board/exchange/import.h"
#include "netmend/board/shape.h"
#include "netmend/netgraph/board_graph.h"
#include "support/ipc_export.h"
#include "support/seed.h"

// Test data written by the CAD program, against its own boards: what the comparison of copper with nets says
// where the files have no conductors (that program writes none), and where a writer of ours adds them.

using namespace netmend;

namespace {

constexpr std::int64_t unit = 2540; // 0.0001 inch

struct Counted {
  std::size_t breaks = 0, shorts = 0;
};

Counted count(const std::vector<Disagreement>& found) {
  Counted out;
  for (const Disagreement& d : found)
    ++(d.kind == Disagreement::Kind::shorted ? out.shorts : out.breaks);
  return out;
}

std::vector<Disagreement> compared(const Board& board) {
  return compareWithNames(board, buildBoardGraph(board));
}

/// The two sides of an edge connector have pads of different nets at one place.
struct Spot {
  Point at;
  NetId net;
  PadReach reach = PadReach::allLayers;
};

std::vector<Spot> spotsOf(const Board& board) {
  std::vector<Spot> out;
  for (const Pad& pad : board.pads) {
    const Fact<NetId>& net = board.pins.find(pad.pin)->net;
    // The test data name the hole's place, the board file's pads their copper's middle.
    out.push_back(
        {placed(pad.position.value, pad.rotation, pad.drillOffset), net.valueOr({}), pad.reach.value});
  }
  for (const Via& via : board.vias)
    out.push_back({via.position, via.net.valueOr({})});
  return out;
}

Point lowest(const std::vector<Spot>& spots) {
  Box box;
  for (const Spot& s : spots)
    box.include(s.at);
  return box.min;
}

/// The board's tracks as records, in the words of its test data.
class TrackWriter {
public:
  TrackWriter(const Board& cad, const Board& ipc) : cad_(cad) {
    const auto cadSpots = spotsOf(cad);
    const auto ipcSpots = spotsOf(ipc);
    shift_ = lowest(cadSpots) - lowest(ipcSpots);
    const auto cell = [](Point p) { return Point{Length(p.x.nm / 20'000), Length(p.y.nm / 20'000)}; };
    std::map<Point, std::vector<const Spot*>> near;
    for (const Spot& s : ipcSpots)
      if (s.net) near[cell(s.at)].push_back(&s);
    for (const Spot& s : cadSpots) {
      if (!s.net || names_.contains(s.net)) continue;
      const Point at = s.at - shift_;
      for (std::int64_t i = 0; i < 9; ++i) {
        const Point next = cell(at) + Point{Length(i % 3 - 1), Length(i / 3 - 1)};
        for (const Spot* other : near[next])
          if (other->reach == s.reach && distance(other->at, at) < Length(6000))
            names_.emplace(s.net, ipc.nets.find(other->net)->name);
      }
    }
  }

  [[nodiscard]] std::string record(const Track& track) const {
    const auto name = names_.find(track.net.valueOr({}));
    if (name == names_.end()) return {};
    const auto& order = cad_.info.layerOrder;
    const auto layer = std::find(order.begin(), order.end(), track.layer.value) - order.begin() + 1;
    std::string out = fmt::format("378{:<14} L{:02} X{}", name->second, layer, counted(track.width.value));
    for (const Point p : centreLine(track))
      out += fmt::format(" X{}Y{}", counted(p.x - shift_.x), counted(p.y - shift_.y));
    return out + "\n";
  }

  [[nodiscard]] std::string all() const {
    std::string out;
    for (const Track& track : cad_.tracks)
      out += record(track);
    return out;
  }

private:
  static std::int64_t counted(Length length) {
    return std::llround(static_cast<double>(length.nm) / static_cast<double>(unit));
  }

  const Board& cad_;
  Point shift_;
  std::map<NetId, std::string> names_;
};

Board withRecords(std::string text, const std::string& records) {
  text.insert(text.rfind("999"), records);
  auto imported = importBoard(ImportSource{text, "tracks.d356"});
  REQUIRE(imported);
  return std::move(imported->board);
}

std::size_t breaksOf(const std::vector<Disagreement>& found, const std::string& net, const Board& board) {
  return static_cast<std::size_t>(std::count_if(found.begin(), found.end(), [&](const Disagreement& d) {
    return d.kind == Disagreement::Kind::disconnected && board.nets.find(d.nets.front())->name == net;
  }));
}

/// A board, its test data with tracks, and what seeded faults do to both.
struct Bench {
  Board cad;
  std::string text; ///< of the test data, without tracks
  Board ipc;        ///< with tracks
  std::vector<Disagreement> before;
  std::vector<std::size_t> firstOf{0}; ///< by track of `cad`, and one more: its first one of `ipc`

  explicit Bench(const test::IpcExports::Export& files)
      : cad(std::move(importBoard(files.cad)->board)), text(*readFile(files.ipc)),
        ipc(withRecords(text, TrackWriter(cad, importBoard(files.ipc)->board).all())), before(compared(ipc)) {
    const TrackWriter writer(cad, importBoard(files.ipc)->board);
    for (const Track& track : cad.tracks)
      firstOf.push_back(firstOf.back() + (writer.record(track).empty() ? 0 : centreLine(track).size() - 1));
    REQUIRE(firstOf.back() == ipc.tracks.size());
  }

  /// Takes a track away that its net needs; nothing when the net does not.
  template <class Random> std::optional<bool> breakFound(Random& random) const {
    const auto pick = std::uniform_int_distribution<std::size_t>(0, cad.tracks.size() - 1)(random);
    const Track& track = cad.tracks[pick];
    Board broken = cad;
    broken.tracks.erase(track.id);
    if (count(compared(broken)).breaks == count(compared(cad)).breaks) return std::nullopt;
    // The records have the tracks in the board's order; arcs became several.
    const std::size_t first = firstOf[pick];
    if (first == firstOf[pick + 1]) return false;
    const Track& record = ipc.tracks[first];
    const std::string net = ipc.nets.find(record.net.value)->name;
    Board brokenIpc = ipc;
    for (std::size_t i = first; i < firstOf[pick + 1]; ++i)
      brokenIpc.tracks.erase(ipc.tracks[i].id);
    return breaksOf(compared(brokenIpc), net, ipc) > breaksOf(before, net, ipc);
  }

  /// Joins two pads of different nets on the top by a track of the first one's.
  template <class Random> std::optional<bool> shortFound(Random& random) const {
    std::vector<const Pad*> pads;
    for (const Pad& pad : ipc.pads)
      if (pad.reach.known() && pad.reach.value != PadReach::bottom && ipc.pins.find(pad.pin)->net.valueOr({}))
        pads.push_back(&pad);
    if (pads.size() < 2) return std::nullopt;
    std::uniform_int_distribution<std::size_t> any(0, pads.size() - 1);
    const Pad& from = *pads[any(random)];
    const Pad& to = *pads[any(random)];
    const NetId a = ipc.pins.find(from.pin)->net.value;
    const NetId b = ipc.pins.find(to.pin)->net.value;
    if (a == b) return std::nullopt;
    Board shorted = ipc;
    Track track;
    track.id = shorted.newId<TrackId>();
    track.start = from.position.value;
    track.end = to.position.value;
    track.layer = fromFile(shorted.info.layerOrder.front());
    track.width = fromFile(Length(200'000));
    track.net = fromFile(a);
    track.origin = Origin::file;
    shorted.tracks.put(track);
    const auto found = compared(shorted);
    return std::any_of(found.begin(), found.end(), [&](const Disagreement& d) {
      return d.kind == Disagreement::Kind::shorted &&
             d.nets == std::vector<NetId>{std::min(a, b), std::max(a, b)};
    });
  }
};

} // namespace

TEST_CASE("test data of every demo board show no break and no short, with and without tracks", "[.full]") {
  const test::IpcExports exports;
  REQUIRE(exports.all.size() == 14);
  for (const auto& files : exports.all) {
    INFO(files.cad);
    const auto plain = importBoard(files.ipc);
    REQUIRE(plain);
    CHECK(plain->board.info.copper == fromFile(DrawnCopper::points));
    const Counted without = count(compared(plain->board));
    CHECK(without.breaks == 0);
    CHECK(without.shorts == 0);
    const Bench bench(files);
    CHECK(bench.ipc.info.copper ==
          fromFile(bench.ipc.tracks.empty() ? DrawnCopper::points : DrawnCopper::tracks));
    const Counted with = count(bench.before);
    std::cout << files.cad.filename().string() << ": " << bench.ipc.tracks.size() << " of "
              << bench.cad.tracks.size() << " tracks, " << with.breaks << " breaks, " << with.shorts
              << " shorts\n";
    // A pad of a shape of its own reaches farther than its record says, to where a track ends.
    CHECK(with.breaks == (files.cad.stem() == "custom_pads_test" ? 1 : 0));
    CHECK(with.shorts == 0);
  }
}

TEST_CASE("190 of 200 seeded breaks and all of 50 seeded shorts are found in test data with tracks",
          "[.full]") {
  const unsigned seed = testSeed();
  std::cout << "seeding breaks and shorts with seed " << seed << "\n";
  INFO("seed " << seed);
  std::mt19937 random(seed);
  const test::IpcExports exports;
  std::vector<Bench> benches;
  for (const auto& files : exports.all)
    if (Bench bench(files); bench.cad.tracks.size() > 20) benches.push_back(std::move(bench));
  std::size_t breaks = 0, foundBreaks = 0, shorts = 0, foundShorts = 0;
  for (std::size_t turn = 0; breaks < 200 && turn < 20'000; ++turn) {
    const auto found = benches[turn % benches.size()].breakFound(random);
    breaks += found ? 1 : 0;
    foundBreaks += found.value_or(false) ? 1 : 0;
  }
  for (std::size_t turn = 0; shorts < 50 && turn < 20'000; ++turn) {
    const auto found = benches[turn % benches.size()].shortFound(random);
    shorts += found ? 1 : 0;
    foundShorts += found.value_or(false) ? 1 : 0;
  }
  std::cout << foundBreaks << " of " << breaks << " breaks, " << foundShorts << " of " << shorts
            << " shorts\n";
  CHECK(breaks == 200);
  CHECK(foundBreaks >= 190);
  CHECK(shorts == 50);
  CHECK(foundShorts == 50);
}
