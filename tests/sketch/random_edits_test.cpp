// Drawing at random: every edit can be undone and redone, and the board stays one that can be kept.
#include "hand.h"

#include <deque>
#include <iostream>
#include <map>
#include <random>

#include "netmend/board/board_file.h"
#include "support/effort.h"
#include "support/seed.h"

using namespace netmend;
using namespace netmend::test;

namespace {

const std::vector<std::string> lines{"J 6 2 rows",
                                     "J 5 tabs",
                                     "U 8",
                                     "U 16 4 sides pitch 0.5",
                                     "U 3x3 ohne B2",
                                     "R 0402",
                                     "R 4k7 x4",
                                     "C 100n 0603 3",
                                     "TP 0.8",
                                     "SH lid 1.5",
                                     "BT CR2032",
                                     "zone heat",
                                     "zone screw M2",
                                     "area",
                                     "track 0.4",
                                     "copy R1-R3",
                                     "copy J1 U1 mirrored",
                                     "net GND",
                                     "net VCC",
                                     "SDA",
                                     "ground",
                                     "supply",
                                     "J 10 2 rows holes 0.9 key 5",
                                     "",
                                     "nothing known",
                                     "Y 2",
                                     "J1 6 2 rows",
                                     "U 12 pads 0.3x1.2",
                                     "J 1",
                                     "copy R12A BT1"};

class Player {
public:
  explicit Player(unsigned seed) : random_(seed) {}

  /// One thing that a person does; whether the board changed.
  bool play(Hand& hand) {
    Board before = hand.board;
    auto answer = act(hand);
    if (!answer) {
      REQUIRE_FALSE(answer.error().text().empty());
      ++refused;
      return false;
    }
    (void)hand.due();
    (void)hand.ringed();
    REQUIRE(answer->edit.changes.empty() == (answer->act == SketchAct::nothing));
    if (answer->edit.changes.empty()) return false;
    ++acts[answer->act];
    const auto inverse = apply(hand.board, answer->edit);
    if (!inverse) FAIL(inverse.error().text());
    done_.push_back({std::move(before), answer->edit, *inverse});
    if (done_.size() > 12) done_.erase(done_.begin());
    return true;
  }

  /// Some of the last edits back, each to exactly the board before it, and some of them once more.
  void undoAndRedo(Hand& hand) {
    const std::size_t back = std::min<std::size_t>(done_.size(), 1 + pick(6));
    std::vector<Done> undone;
    for (std::size_t i = 0; i < back; ++i) {
      Done done = std::move(done_.back());
      done_.pop_back();
      const Board now = hand.board;
      const auto redo = apply(hand.board, done.inverse);
      REQUIRE(redo);
      REQUIRE(hand.board == done.before);
      Board again = hand.board;
      REQUIRE(apply(again, *redo));
      REQUIRE(again == now);
      done.edit = *redo;
      undone.push_back(std::move(done));
      ++undos;
    }
    for (std::size_t redone = pick(back + 1); redone > 0; --redone) {
      Done done = std::move(undone.back());
      undone.pop_back();
      const auto inverse = apply(hand.board, done.edit);
      REQUIRE(inverse);
      REQUIRE(*inverse == done.inverse);
      done_.push_back(std::move(done));
    }
  }
  void forget() {
    done_.clear();
    planned_.clear();
  }
  std::size_t pick(std::size_t count) {
    return std::uniform_int_distribution<std::size_t>(0, count - 1)(random_);
  }

  std::map<SketchAct, int> acts;
  int refused = 0;
  int undos = 0;

private:
  struct Done {
    Board before;
    Edit edit;
    Edit inverse;
  };

  /// On a pin, on copper, or anywhere on a coarse raster.
  Point place(const Hand& hand) {
    const std::size_t kind = pick(10);
    if (kind < 4 && !hand.board.pads.empty()) {
      const Pad& pad = hand.board.pads[pick(hand.board.pads.size())];
      if (pad.position.known()) return pad.position.value;
    }
    if (kind == 4 && !hand.board.tracks.empty()) {
      const Track& track = hand.board.tracks[pick(hand.board.tracks.size())];
      return {(track.start.x + track.end.x) / 2, (track.start.y + track.end.y) / 2};
    }
    if ((kind == 5 || kind == 6) && !hand.sketch.clicks().empty()) return hand.sketch.clicks().front();
    return {
        Length(static_cast<std::int64_t>(pick(160)) * 500'000 + static_cast<std::int64_t>(pick(3)) * 50'000),
        Length(static_cast<std::int64_t>(pick(160)) * 500'000)};
  }
  SketchClick clickAt(const Hand& hand) {
    return hand.found(place(hand), pick(4) == 0 ? Side::bottom : Side::top);
  }

  /// Two nets between two parts, and so on.
  void planSeries(const Lookup& lookup) {
    const Board& board = lookup.board();
    const auto& a = lookup.pinsOf(board.parts[pick(board.parts.size())].id);
    const auto& b = lookup.pinsOf(board.parts[pick(board.parts.size())].id);
    if (a.size() < 3 || b.size() < 3 || a == b) return;
    for (const std::size_t i : {0u, 1u})
      for (const auto& step : {Step{SketchKey::next, {}}, Step{{}, a[i]}, Step{{}, b[i]}})
        planned_.push_back(step);
    planned_.push_back({SketchKey::series, {}});
    planned_.push_back({SketchKey::take, {}});
  }

  Result<SketchAnswer> act(Hand& hand) {
    const Lookup lookup(hand.board);
    if (!planned_.empty()) {
      const Step step = planned_.front();
      planned_.pop_front();
      if (step.key) return hand.sketch.key(lookup, *step.key, {});
      SketchClick click{.at = positionOf(lookup, step.pin).valueOr({})};
      click.pin = step.pin;
      return hand.sketch.click(lookup, click);
    }
    const std::size_t kind = pick(100);
    if (kind < 3 && !hand.board.parts.empty()) planSeries(lookup);
    if (kind < 6) return hand.sketch.key(lookup, SketchKey::next, {});
    if (kind < 55) return hand.sketch.click(lookup, clickAt(hand));
    if (kind < 68) return hand.sketch.type(lookup, lines[pick(lines.size())]);
    if (kind < 72) return hand.sketch.beep(lookup);
    if (kind < 76) {
      const SketchClick from = clickAt(hand), to = clickAt(hand);
      return hand.sketch.stroke(lookup, from, {from.at, place(hand), to.at}, to);
    }
    if (kind < 84) return hand.sketch.key(lookup, SketchKey::take, clickAt(hand));
    constexpr auto last = static_cast<std::size_t>(SketchKey::remove);
    return hand.sketch.key(lookup, static_cast<SketchKey>(pick(last + 1)), clickAt(hand));
  }

  struct Step {
    std::optional<SketchKey> key;
    PinId pin;
  };

  std::mt19937 random_;
  std::vector<Done> done_;
  std::deque<Step> planned_;
};

} // namespace

TEST_CASE("edits drawn at random are undone and redone exactly, on a board that stays sound") {
  const unsigned seed = testSeed();
  INFO("seed " << seed);
  Player player(seed);
  const int wanted = rounds(10'000, 1'000);
  int edits = 0;
  while (edits < wanted) {
    Hand hand;
    player.forget();
    for (int tries = 0, made = 0; made < 200 && edits < wanted && tries < 10'000; ++tries) {
      if (!player.play(hand)) continue;
      ++made;
      ++edits;
      const auto sound = checkReferences(hand.board);
      if (!sound) FAIL(sound.error().text());
      if (edits % 200 == 0) {
        const auto text = boardToText(hand.board);
        if (!text) FAIL(text.error().text());
        const auto read = boardFromText(*text);
        if (!read) FAIL(read.error().text());
        REQUIRE(*read == hand.board);
      }
      if (player.pick(8) == 0) player.undoAndRedo(hand);
    }
  }
  std::cout << "drawn at random, seed " << seed << ": " << edits << " edits, " << player.undos << " undone, "
            << player.refused << " refused; of each kind";
  for (const auto& [act, times] : player.acts)
    std::cout << ' ' << times;
  std::cout << '\n';
  if (!sanitized) // every kind of edit came up
    CHECK(player.acts.size() == static_cast<std::size_t>(SketchAct::separated));
}
