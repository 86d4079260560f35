#pragma once

#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "netmend/board/edit.h"
#include "netmend/board/lookup.h"
#include "netmend/sketch/chip_sizes.h"

namespace netmend::test {

/// The board once the edit is done.
inline Board after(Board board, const Edit& edit) {
  const auto inverse = apply(board, edit);
  REQUIRE(inverse);
  return board;
}

/// What the edit puts of one kind, in order.
template <class T> std::vector<T> putBy(const Edit& edit) {
  std::vector<T> out;
  for (const AnyChange& change : edit.changes)
    if (const auto* one = std::get_if<Change<T>>(&change); one != nullptr && one->after)
      out.push_back(*one->after);
  return out;
}
/// How many objects of one kind it removes.
template <class T> std::size_t removedBy(const Edit& edit) {
  std::size_t out = 0;
  for (const AnyChange& change : edit.changes)
    if (const auto* one = std::get_if<Change<T>>(&change); one != nullptr && !one->after) ++out;
  return out;
}

inline const Part& partCalled(const Board& board, const std::string& reference) {
  for (const Part& part : board.parts)
    if (part.reference == reference) return part;
  FAIL("no part " << reference);
  throw 0;
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
/// The net's name; `?` where it is not known, `-` where the pin is joined to nothing.
inline std::string netOfPin(const Board& board, const std::string& label) {
  const Pin& pin = pinCalled(board, label);
  if (!pin.net.known()) return "?";
  const Net* net = board.nets.find(pin.net.value);
  return net != nullptr ? net->name : "-";
}

inline ChipSizes chipSizes() {
  auto loaded = loadChipSizes(NETMEND_SOURCE_DIR "/data/part_sizes.json");
  REQUIRE(loaded);
  return std::move(*loaded);
}

} // namespace netmend::test
