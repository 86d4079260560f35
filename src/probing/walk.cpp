#include "netmend/probing/walk.h"

#include <algorithm>

#include "netmend/base/words.h"

namespace netmend {

namespace {

constexpr std::array<Word<Specimen>, 3> specimens{{
    {Specimen::unknown, "unknown"},
    {Specimen::good, "good"},
    {Specimen::faulty, "faulty"},
}};

bool isDigit(char c) {
  return c >= '0' && c <= '9';
}

/// Orders digits in a name by their number, everything else by character.
bool naturalLess(std::string_view a, std::string_view b) {
  while (!a.empty() && !b.empty()) {
    if (isDigit(a.front()) && isDigit(b.front())) {
      const auto run = [](std::string_view& text) {
        while (text.size() > 1 && text.front() == '0' && isDigit(text[1]))
          text.remove_prefix(1);
        std::size_t n = 0;
        while (n < text.size() && isDigit(text[n]))
          ++n;
        const auto digits = text.substr(0, n);
        text.remove_prefix(n);
        return digits;
      };
      const auto left = run(a);
      const auto right = run(b);
      if (left.size() != right.size()) return left.size() < right.size();
      if (left != right) return left < right;
      continue;
    }
    if (a.front() != b.front()) return a.front() < b.front();
    a.remove_prefix(1);
    b.remove_prefix(1);
  }
  return a.size() < b.size();
}

template <class Function> void forEachPoint(Walk& walk, Function function) {
  function(walk.other);
  for (auto& point : walk.points)
    function(point);
  for (auto& point : walk.skipped)
    function(point);
  for (auto& reading : walk.readings) {
    function(reading.point);
    function(reading.other);
  }
  for (auto& entry : walk.entered) {
    function(entry.point);
    function(entry.other);
  }
}

} // namespace

std::string_view word(Specimen specimen) {
  return wordFor(specimens, specimen);
}

std::optional<Specimen> specimenFrom(std::string_view text) {
  return fromWord(specimens, text);
}

std::vector<ProbePoint> pointsOf(const Lookup& lookup, PartId part) {
  const Board& board = lookup.board();
  std::vector<PinId> pins = lookup.pinsOf(part);
  std::stable_sort(pins.begin(), pins.end(), [&](PinId a, PinId b) {
    return naturalLess(board.pins.find(a)->name, board.pins.find(b)->name);
  });
  std::vector<ProbePoint> points;
  points.reserve(pins.size());
  for (const PinId pin : pins)
    points.push_back({pin, pinLabel(board, pin)});
  return points;
}

std::vector<ProbePoint> pointsWithoutNet(const Lookup& lookup, const std::vector<ProbePoint>& points) {
  const Board& board = lookup.board();
  std::vector<ProbePoint> out;
  for (const ProbePoint& point : points) {
    const Pin* pin = board.pins.find(point.pin);
    if (pin == nullptr || !pin->net.known()) continue; // nobody knows
    const Net* net = board.nets.find(pin->net.value);
    if (net == nullptr || net->name.starts_with("unconnected-(")) out.push_back(point);
  }
  if (out.size() == points.size()) out.clear();
  return out;
}

void matchToBoard(Walk& walk, const Lookup& lookup) {
  const Board& board = lookup.board();
  const bool sameBoard = walk.boardUuid == board.info.uuid;
  forEachPoint(walk, [&](ProbePoint& point) {
    if (point.pin && (!sameBoard || board.pins.find(point.pin) == nullptr)) point.pin = PinId{};
    if (point.pin || point.label.empty()) return;
    const auto pins = lookup.pinsLabelled(point.label);
    if (pins.size() == 1) point.pin = pins.front();
  });
  walk.boardUuid = board.info.uuid;
}

} // namespace netmend
