#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "after.h"
#include "netmend/base/plane.h"
#include "netmend/board/shape.h"
#include "netmend/sketch/sketch.h"
#include "support/millimetres.h"

namespace netmend::test {

inline const ZoneRules& zoneRules() {
  static const auto rules = loadZoneRules(NETMEND_SOURCE_DIR "/data/zones.json");
  REQUIRE(rules);
  return *rules;
}

/// Somebody who draws: clicks find what is drawn there, and what comes of them is done to the board.
struct Hand {
  ChipSizes sizes = chipSizes();
  Board board;
  Sketch sketch{sizes, zoneRules()};
  std::vector<Edit> inverses;

  Hand() = default;
  Hand(const Hand&) = delete;
  Hand& operator=(const Hand&) = delete;

  [[nodiscard]] SketchClick found(Point at, Side side = Side::top) const {
    SketchClick click{.at = at, .side = side};
    const auto isHere = [&](const Pad& pad) {
      const PadReach reach = pad.reach.valueOr(PadReach::allLayers);
      return side == Side::top ? reach != PadReach::bottom : reach != PadReach::top;
    };
    for (const Pad& pad : board.pads) {
      if (!isHere(pad) || distance(pad.position.value, at) > pad.size.value.width + pad.size.value.height)
        continue;
      if (const auto shape = padShape(pad); shape && insideRing(outlineOf(*shape), vecOf(at)))
        click.pin = pad.pin;
    }
    for (const Part& part : board.parts)
      if (part.side.valueOr(side) == side && insideRing(part.body.value, vecOf(at))) click.part = part.id;
    return click;
  }

  SketchAnswer doneBy(Result<SketchAnswer> answer) {
    if (!answer) FAIL(answer.error().text());
    if (answer->edit.changes.empty()) {
      CHECK(answer->act == SketchAct::nothing);
      return *answer;
    }
    CHECK(answer->act != SketchAct::nothing);
    auto inverse = apply(board, answer->edit);
    if (!inverse) FAIL(inverse.error().text());
    inverses.push_back(std::move(*inverse));
    return *answer;
  }

  SketchAnswer click(double x, double y, Side side = Side::top) {
    return doneBy(sketch.click(Lookup(board), found(mm(x, y), side)));
  }
  /// Why a click is refused.
  std::string refusal(double x, double y, Side side = Side::top) {
    const Lookup lookup(board);
    const auto answer = sketch.click(lookup, found(mm(x, y), side));
    return answer ? "not refused" : answer.error().text();
  }
  SketchAnswer clickPin(const std::string& label) {
    const Pin& pin = pinCalled(board, label);
    const Lookup lookup(board);
    SketchClick click{.at = positionOf(lookup, pin.id).value};
    click.pin = pin.id;
    return doneBy(sketch.click(lookup, click));
  }
  SketchAnswer key(SketchKey key, double x = -99, double y = -99, Side side = Side::top) {
    return doneBy(sketch.key(Lookup(board), key, found(mm(x, y), side)));
  }
  SketchAnswer type(const std::string& text) { return doneBy(sketch.type(Lookup(board), text)); }
  SketchAnswer beep() { return doneBy(sketch.beep(Lookup(board))); }
  SketchAnswer stroke(const Ring& way) {
    return doneBy(sketch.stroke(Lookup(board), found(way.front()), way, found(way.back())));
  }
  [[nodiscard]] SketchDue due() const { return sketch.due(Lookup(board)); }
  [[nodiscard]] std::string ringed() const { return pinLabel(board, sketch.ringed(Lookup(board))); }

  void undo() {
    REQUIRE_FALSE(inverses.empty());
    REQUIRE(apply(board, inverses.back()));
    inverses.pop_back();
  }

  /// A row of pins, downwards at 1 mm, that nothing is in hand of afterwards.
  void row(const std::string& reference, std::size_t pins, double x, double y = 0) {
    type(reference + " " + std::to_string(pins) + " 1 row");
    click(x, y);
    click(x, y - static_cast<double>(pins - 1));
    key(SketchKey::take);
    key(SketchKey::next);
  }
};

} // namespace netmend::test
