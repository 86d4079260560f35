#include <algorithm>
#include <array>

#include "netmend/board/value.h"
#include "netmend/netgraph/line.h"
#include "netmend/netgraph/net_role.h"
#include "through.h"

namespace netmend {
namespace {

/// Parts whose pins stand across from each other: first with last, and so on inwards. With two pins that is
/// from end to end.
struct AcrossRule {
  PartKind kind;
  std::size_t fewestPins;
  std::size_t mostPins;
};
constexpr std::array<AcrossRule, 8> acrossRules{{{PartKind::resistor, 2, 2},
                                                 {PartKind::zeroOhmLink, 2, 2},
                                                 {PartKind::inductor, 2, 2},
                                                 {PartKind::ferrite, 2, 2},
                                                 {PartKind::fuse, 2, 2},
                                                 {PartKind::choke, 2, 2},
                                                 {PartKind::choke, 4, 16},
                                                 {PartKind::resistorArray, 4, 32}}};

bool isAcross(PartKind kind, std::size_t pins) {
  return pins % 2 == 0 && std::any_of(acrossRules.begin(), acrossRules.end(), [&](const AcrossRule& rule) {
           return rule.kind == kind && rule.fewestPins <= pins && pins <= rule.mostPins;
         });
}

/// Orders "2" before "10", and "A2" before "A10": runs of digits compare as numbers.
bool naturallyBefore(const std::string& a, const std::string& b) {
  const auto digit = [](char c) { return c >= '0' && c <= '9'; };
  std::size_t i = 0;
  std::size_t j = 0;
  while (i < a.size() && j < b.size()) {
    if (!digit(a[i]) || !digit(b[j])) {
      if (a[i] != b[j]) return a[i] < b[j];
      ++i;
      ++j;
      continue;
    }
    const auto number = [&](const std::string& text, std::size_t& at) {
      while (at < text.size() && text[at] == '0')
        ++at;
      const auto start = at;
      while (at < text.size() && digit(text[at]))
        ++at;
      return std::string_view(text).substr(start, at - start);
    };
    const auto left = number(a, i);
    const auto right = number(b, j);
    if (left.size() != right.size()) return left.size() < right.size();
    if (left != right) return left < right;
  }
  return i == a.size() && j < b.size();
}

std::vector<const Pin*> pinsInOrder(const Board& board, const std::vector<PinId>& ids) {
  std::vector<const Pin*> pins;
  pins.reserve(ids.size());
  for (const auto id : ids)
    if (const auto* pin = board.pins.find(id)) pins.push_back(pin);
  std::stable_sort(pins.begin(), pins.end(),
                   [](const Pin* a, const Pin* b) { return naturallyBefore(a->name, b->name); });
  return pins;
}

Fact<NetRole> roleBehind(const Board& board, const Pin& pin) {
  const auto* net = pin.net.known() ? board.nets.find(pin.net.value) : nullptr;
  return net != nullptr ? roleOf(*net) : Fact<NetRole>{};
}

std::vector<Through> filterPaths(const Board& board, const std::vector<const Pin*>& pins) {
  if (pins.size() != 3 && pins.size() != 4) return {};
  std::vector<const Pin*> live;
  for (const auto* pin : pins) {
    const auto role = roleBehind(board, *pin);
    if (role.known() && role.value == NetRole::ground) continue;
    // A pin of unknown net may be the grounded one, and a resonator filter blocks direct current.
    if (!pin->net.known() || !pin->net.value) return {};
    if (role.known() && role.value == NetRole::radio) return {};
    live.push_back(pin);
  }
  if (live.size() != 2) return {};
  return {Through{live[0]->id, live[1]->id, Fact<Ohms>()}};
}

Fact<Ohms> resistanceOf(const Part& part) {
  if (part.kind.value == PartKind::zeroOhmLink) return guessed(Ohms(0));
  if (part.kind.value != PartKind::resistor && part.kind.value != PartKind::resistorArray) return {};
  const auto value = parsePartValue(part.value.value);
  if (!value || (value->unit != ValueUnit::none && value->unit != ValueUnit::ohm)) return {};
  // `100n` on a resistor is a slip of the pen, not 100 nΩ.
  constexpr double leastPlausible = 1e-4;
  if (value->magnitude > 0.0 && value->magnitude < leastPlausible) return {};
  return {Ohms(value->magnitude), part.value.origin};
}

} // namespace

Fact<std::vector<Through>> pathsIfFitted(const Board& board, const Part& part,
                                         const std::vector<PinId>& pinIds) {
  if (part.through.known()) return part.through;
  if (!part.kind.known()) return {};
  const auto pins = pinsInOrder(board, pinIds);
  if (part.kind.value == PartKind::filter) return guessed(filterPaths(board, pins));
  std::vector<Through> paths;
  if (isAcross(part.kind.value, pins.size()))
    for (std::size_t i = 0; i < pins.size() / 2; ++i)
      paths.push_back(Through{pins[i]->id, pins[pins.size() - 1 - i]->id, resistanceOf(part)});
  return guessed(std::move(paths));
}

} // namespace netmend
