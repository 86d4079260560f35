#include "netmend/board/edit.h"

#include <catch2/catch.hpp>

#include <chrono>
#include <iostream>
#include <set>

#include "random_board.h"

#include "support/effort.h"
#include "support/seed.h"

using namespace netmend;
using netmend::test::RandomBoard;

namespace {

/// Every id that the board's objects name, found by hand and not with the program's own lists.
/// False as soon as one does not exist.
bool soundByHand(const Board& board) {
  bool sound = true;
  const auto check = [&](const auto& table, auto id) {
    if (id && !table.find(id)) sound = false;
  };
  const auto checkFact = [&](const auto& table, const auto& fact) {
    if (fact.known()) check(table, fact.value);
  };
  for (const LayerId id : board.info.layerOrder)
    check(board.layers, id);
  for (const Part& part : board.parts) {
    checkFact(board.parts, part.lid);
    if (!part.through.known()) continue;
    for (const Through& through : part.through.value) {
      check(board.pins, through.from);
      check(board.pins, through.to);
    }
  }
  for (const Pin& pin : board.pins) {
    check(board.parts, pin.part);
    checkFact(board.nets, pin.net);
  }
  for (const Pad& pad : board.pads)
    if (!pad.pin || !board.pins.find(pad.pin)) sound = false;
  for (const Track& track : board.tracks) {
    checkFact(board.layers, track.layer);
    checkFact(board.nets, track.net);
  }
  for (const Via& via : board.vias) {
    checkFact(board.layers, via.from);
    checkFact(board.layers, via.to);
    checkFact(board.nets, via.net);
  }
  for (const Area& area : board.areas) {
    checkFact(board.layers, area.layer);
    checkFact(board.nets, area.net);
  }
  for (const Zone& zone : board.zones)
    check(board.parts, zone.part);
  return sound;
}

/// What `apply` promises, done one change after the other. Nothing when the edit has to be refused.
std::optional<Board> appliedByHand(Board board, const Edit& edit) {
  const auto tableFor = [&]<class T>(const T*) -> Table<T>& {
    if constexpr (std::is_same_v<T, Layer>) return board.layers;
    if constexpr (std::is_same_v<T, Part>) return board.parts;
    if constexpr (std::is_same_v<T, Net>) return board.nets;
    if constexpr (std::is_same_v<T, Pin>) return board.pins;
    if constexpr (std::is_same_v<T, Pad>) return board.pads;
    if constexpr (std::is_same_v<T, Track>) return board.tracks;
    if constexpr (std::is_same_v<T, Via>) return board.vias;
    if constexpr (std::is_same_v<T, Area>) return board.areas;
    if constexpr (std::is_same_v<T, Zone>) return board.zones;
    if constexpr (std::is_same_v<T, Underlay>) return board.underlays;
  };
  const auto one = [&]<class T>(const Change<T>& change) {
    auto& table = tableFor(static_cast<const T*>(nullptr));
    if (!change.after) return table.erase(change.id);
    table.put(*change.after);
    return true;
  };
  for (const AnyChange& change : edit.changes) {
    const bool done = std::visit(
        [&](const auto& c) {
          if constexpr (std::is_same_v<std::decay_t<decltype(c)>, InfoChange>) {
            board.info = c.after;
            return true;
          } else {
            return one(c);
          }
        },
        change);
    if (!done) return std::nullopt;
  }
  if (!soundByHand(board)) return std::nullopt;
  return board;
}

class RandomEdits {
public:
  RandomEdits(RandomBoard& random, Board& board) : random_(random), board_(board) {}

  Edit next() {
    Edit edit;
    for (std::size_t n = random_.below(5) + 1; n > 0; --n)
      addChange(edit);
    return edit;
  }

private:
  void addChange(Edit& edit) {
    switch (random_.below(10)) {
    case 0:
      edit.changes.emplace_back(InfoChange{random_.info(board_)});
      return;
    case 1:
      return change(edit, board_.layers);
    case 2:
      return change(edit, board_.parts);
    case 3:
      return change(edit, board_.nets);
    case 4:
      return change(edit, board_.pins);
    case 5:
      return change(edit, board_.pads);
    case 6:
      return change(edit, board_.tracks);
    case 7:
      return change(edit, board_.vias);
    case 8:
      return change(edit, board_.areas);
    default:
      return change(edit, board_.zones);
    }
  }

  template <class T> void change(Edit& edit, const Table<T>& table) {
    if (random_.oneIn(3)) {
      if (!table.empty()) edit.remove<T>(random_.anyOf(table));
      return;
    }
    T object;
    object.id = random_.oneIn(2) || table.empty() ? board_.newId<decltype(T::id)>() : random_.anyOf(table);
    random_.object(board_, object);
    edit.put(object);
  }

  RandomBoard& random_;
  Board& board_;
};

Net netNamed(std::uint64_t id, std::string name) {
  Net net;
  net.id = NetId(id);
  net.name = std::move(name);
  return net;
}

} // namespace

TEST_CASE("thousands of random edits do what they say, and undo gives exactly the earlier state") {
  const unsigned seed = netmend::testSeed();
  CAPTURE(seed);
  RandomBoard random(seed);
  Board board = random.board(12);
  RandomEdits edits(random, board);
  std::vector<std::pair<Board, Edit>> history; // the state before, and the way back to it
  std::vector<Edit> redo;
  int done = 0, refused = 0, undone = 0;
  const int steps = netmend::rounds(10000);
  for (int i = 0; i < steps; ++i) {
    if (!history.empty() && random.oneIn(3)) {
      const auto [before, inverse] = std::move(history.back());
      history.pop_back();
      const Board after = board;
      auto again = apply(board, inverse);
      REQUIRE(again);
      REQUIRE(board == before);
      REQUIRE(apply(board, *again));
      REQUIRE(board == after);
      REQUIRE(apply(board, inverse));
      ++undone;
      continue;
    }
    const Edit edit = edits.next();
    Board before = board;
    const auto expected = appliedByHand(before, edit);
    const auto lastId = board.lastId;
    auto inverse = apply(board, edit);
    REQUIRE(inverse.has_value() == expected.has_value());
    REQUIRE(board.lastId >= lastId);
    if (inverse) {
      REQUIRE(board == *expected);
      REQUIRE(checkReferences(board));
      history.emplace_back(std::move(before), std::move(*inverse));
      ++done;
    } else {
      REQUIRE(board == before);
      ++refused;
    }
  }
  CHECK(done > steps / 10);
  CHECK(refused > steps / 20);
  CHECK(undone > steps / 10);
  while (!history.empty()) {
    REQUIRE(apply(board, history.back().second));
    REQUIRE(board == history.back().first);
    history.pop_back();
  }
}

TEST_CASE("an edit that names what is not there is refused at its place, and nothing changes") {
  Board board;
  REQUIRE(apply(board, Edit{}.put(netNamed(1, "GND"))));
  const Board before = board;
  Pin pin;
  pin.id = PinId(2);
  pin.net = fromUser(NetId(7));
  const auto result = apply(board, Edit{}.put(netNamed(3, "VCC")).put(pin));
  REQUIRE_FALSE(result);
  CHECK(result.error().text() == "/changes/1/net: pin 2 names net 7, which does not exist");
  CHECK(board == before);

  Part part;
  part.id = PartId(4);
  part.through = fromUser(std::vector<Through>{{PinId(2), PinId(9), {}}});
  pin.net = {};
  const auto inside = apply(board, Edit{}.put(pin).put(part));
  REQUIRE_FALSE(inside);
  CHECK(wordsOf(inside.error().place) == "/changes/1/through/0/to");
  Pad pad;
  pad.id = PadId(5);
  const auto pinless = apply(board, Edit{}.put(pad));
  REQUIRE_FALSE(pinless);
  CHECK(pinless.error().text() == "/changes/0/pin: pad 5 names no pin");
  BoardInfo info;
  info.layerOrder = {LayerId(6)};
  CHECK(wordsOf(apply(board, Edit{{InfoChange{info}}}).error().place) == "/changes/0/layer_order/0");
  CHECK(board == before);
}

TEST_CASE("what others still name cannot be removed, unless they go in the same edit in any order") {
  Board board;
  Pin pin;
  pin.id = PinId(2);
  pin.net = fromUser(NetId(1));
  REQUIRE(apply(board, Edit{}.put(pin).put(netNamed(1, "GND"))));
  const auto refused = apply(board, Edit{}.remove<Net>(NetId(1)));
  REQUIRE_FALSE(refused);
  CHECK(refused.error().text() == "/changes/0: net 1 is to be removed and pin 2 still names it");
  const auto undo = apply(board, Edit{}.remove<Net>(NetId(1)).remove<Pin>(PinId(2)));
  REQUIRE(undo);
  CHECK(board.pins.empty());
  REQUIRE(apply(board, *undo));
  CHECK(board.pins.find(PinId(2))->net == fromUser(NetId(1)));
  pin.net = fromUser(NetId{});
  CHECK(apply(board, Edit{}.remove<Net>(NetId(1)).put(pin)));
}

TEST_CASE("ids are never zero, never of two kinds, never replaced by another and always exact in JSON") {
  Board board;
  REQUIRE(apply(board, Edit{}.put(netNamed(5, "A"))));
  Layer layer;
  layer.id = LayerId(5);
  CHECK(wordsOf(apply(board, Edit{}.put(layer)).error().message) == "layer 5: the id belongs to a net");
  layer.id = LayerId(6);
  CHECK(wordsOf(apply(board, Edit{}.put(layer).put(netNamed(6, "B"))).error().message) ==
        "layer 6: the id belongs to a net");
  CHECK_FALSE(apply(board, Edit{}.put(netNamed(0, "C"))));
  CHECK_FALSE(apply(board, Edit{}.put(netNamed(largestId + 1, "C"))));
  CHECK_FALSE(apply(board, Edit{{Change<Net>{NetId(5), netNamed(8, "D")}}}));
  CHECK_FALSE(apply(board, Edit{}.remove<Net>(NetId(9))));
  CHECK(board.nets.size() == 1);
  CHECK(board.lastId == 5);
}

TEST_CASE("within one edit the last change of an id counts, and the way back is still exact") {
  Board board;
  REQUIRE(apply(board, Edit{}.put(netNamed(1, "old"))));
  const Board before = board;
  const auto undo = apply(board, Edit{}
                                     .put(netNamed(1, "a"))
                                     .remove<Net>(NetId(1))
                                     .put(netNamed(1, "b"))
                                     .put(netNamed(2, "c"))
                                     .remove<Net>(NetId(2)));
  REQUIRE(undo);
  CHECK(board.nets.size() == 1);
  CHECK(board.nets.find(NetId(1))->name == "b");
  CHECK(undo->changes.size() == 1);
  CHECK(board.lastId == 2); // an id given out once is not given out again
  REQUIRE(apply(board, *undo));
  CHECK(board == before);
  CHECK_FALSE(apply(board, Edit{}.remove<Net>(NetId(1)).remove<Net>(NetId(1))));
}

TEST_CASE("a big import, its undo and its redo take time in proportion to their size") {
  using Clock = std::chrono::steady_clock;
  const auto timeFor = [](std::size_t parts) {
    RandomBoard random(1);
    const Board full = random.board(parts);
    Edit import;
    const auto putAll = [&](const auto& table) {
      // Backwards, so that every object would go before all the others.
      for (std::size_t i = table.size(); i > 0; --i)
        import.put(table[i - 1]);
    };
    putAll(full.layers);
    putAll(full.parts);
    putAll(full.nets);
    putAll(full.pins);
    putAll(full.pads);
    putAll(full.tracks);
    putAll(full.vias);
    putAll(full.areas);
    putAll(full.zones);
    putAll(full.underlays);
    import.changes.emplace_back(InfoChange{full.info});
    const auto start = Clock::now();
    Board board;
    auto undo = apply(board, import);
    REQUIRE(undo);
    auto redo = apply(board, *undo);
    REQUIRE(redo);
    REQUIRE(apply(board, *redo));
    const auto time = std::chrono::duration<double>(Clock::now() - start).count();
    REQUIRE(board == full);
    return time;
  };
  timeFor(500);
  const double small = timeFor(500);
  const double large = timeFor(netmend::sanitized ? 1000 : 8000);
  WARN("16 times the objects, twice under the sanitizers: " << small << " s, " << large << " s");
  // Quadratic would be 256 times; a loaded machine may double a figure.
  if (!netmend::sanitized) CHECK(large < small * 80);
}

TEST_CASE("taking an object out of a board of 20,000 pads stays far below a frame") {
  using Clock = std::chrono::steady_clock;
  RandomBoard random(2);
  Board board = random.board(6700);
  REQUIRE(board.pads.size() > 20000);
  Part lone;
  lone.id = board.newId<PartId>();
  REQUIRE(apply(board, Edit{}.put(lone)));
  std::vector<double> times;
  for (int i = 0; i < 21; ++i) {
    const auto start = Clock::now();
    auto undo = apply(board, Edit{}.remove<Part>(lone.id));
    REQUIRE(undo);
    REQUIRE(apply(board, *undo));
    times.push_back(std::chrono::duration<double, std::milli>(Clock::now() - start).count());
  }
  std::sort(times.begin(), times.end());
  WARN("median of removing and putting back: " << times[10] << " ms");
  if (!netmend::sanitized) CHECK(times[10] < 16);
}
