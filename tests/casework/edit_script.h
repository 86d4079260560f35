#pragma once

#include <catch2/catch.hpp>

#include "netmend/board/lookup.h"
#include "netmend/casework/edit_script.h"
#include "netmend/jumper/zone_rules.h"
#include "support/drawn_board.h"

namespace netmend::test {

inline Result<ScriptDone> run(Board& board, const std::string& text) {
  static const ChipSizes sizes = loadChipSizes(NETMEND_SOURCE_DIR "/data/part_sizes.json").value();
  static const ZoneRules zones = loadZoneRules(NETMEND_SOURCE_DIR "/data/zones.json").value();
  return applyScript(board, text, "s.json", sizes, zones);
}
inline std::string script(const std::string& steps) {
  return R"({"format": "netmend-edits", "version": 1, "steps": [)" + steps + "]}";
}
inline ScriptDone done(Board& board, const std::string& steps) {
  auto result = run(board, script(steps));
  if (!result) FAIL(result.error().text());
  CHECK(checkReferences(board));
  return std::move(*result);
}
/// What is said of a script that is refused; the board is then as it was.
inline std::string refusal(const Board& board, const std::string& text) {
  Board after = board;
  const auto result = run(after, text);
  CHECK(after == board);
  return result ? "done" : result.error().text();
}
inline std::string stepRefusal(const Board& board, const std::string& step) {
  return refusal(board, script(step));
}

inline const Pin& pinCalled(const Board& board, const std::string& label) {
  const auto found = Lookup(board).pinsLabelled(label);
  INFO(label);
  REQUIRE(found.size() == 1);
  return *board.pins.find(found.front());
}
inline Point placeOf(const Board& board, const std::string& label) {
  const Lookup lookup(board);
  return positionOf(lookup, pinCalled(board, label).id).value;
}
inline std::string netOfPin(const Board& board, const std::string& label) {
  const Pin& pin = pinCalled(board, label);
  const Net* net = board.nets.find(pin.net.value);
  return !pin.net.known() ? "?" : net != nullptr ? net->name : "-";
}
inline const Part& partCalled(const Board& board, const std::string& reference) {
  for (const Part& part : board.parts)
    if (part.reference == reference) return part;
  FAIL("no part " << reference);
  throw 0;
}

/// J1 with four pins in a row, downwards at 1 mm from (0, 0); J2 the same at x = 20.
inline const Board& rows() {
  static const Board board = [] {
    Board out;
    done(out, R"({"line": "J1 4 1 row", "clicks": [[0, 0], [0, -3]]},
                 {"line": "J2 4 1 row", "clicks": [[20, 0], [20, -3]]})");
    return out;
  }();
  return board;
}

} // namespace netmend::test
