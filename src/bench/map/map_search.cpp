#include "map_search.h"

#include <algorithm>
#include <cctype>

namespace netmend {

namespace {

/// Lower case for letters of ASCII; names in other letters are compared as they are.
std::string folded(std::string_view text) {
  std::string out(text);
  for (char& c : out)
    c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return out;
}

bool isDigit(char c) {
  return c >= '0' && c <= '9';
}

/// R2 before R10: runs of digits count as numbers.
bool namedBefore(std::string_view a, std::string_view b) {
  std::size_t i = 0;
  std::size_t j = 0;
  while (i < a.size() && j < b.size()) {
    if (isDigit(a[i]) && isDigit(b[j])) {
      const std::size_t startA = std::min(a.find_first_not_of('0', i), a.size());
      const std::size_t startB = std::min(b.find_first_not_of('0', j), b.size());
      std::size_t endA = startA;
      std::size_t endB = startB;
      while (endA < a.size() && isDigit(a[endA]))
        ++endA;
      while (endB < b.size() && isDigit(b[endB]))
        ++endB;
      if (endA - startA != endB - startB) return endA - startA < endB - startB;
      const int order = a.substr(startA, endA - startA).compare(b.substr(startB, endB - startB));
      if (order != 0) return order < 0;
      i = endA;
      j = endB;
    } else {
      if (a[i] != b[j]) return a[i] < b[j];
      ++i;
      ++j;
    }
  }
  return a.size() - i < b.size() - j;
}

/// 0: is it, 1: begins with it, 2: holds it, 3: not.
int rankOf(std::string_view key, std::string_view wanted) {
  const std::size_t at = key.find(wanted);
  if (at == std::string_view::npos) return 3;
  if (at > 0) return 2;
  return key.size() == wanted.size() ? 0 : 1;
}

} // namespace

MapIndex::MapIndex(const Lookup& lookup) {
  const Board& board = lookup.board();
  entries_.reserve(board.parts.size() + board.pins.size() + board.nets.size());
  const auto add = [&](MapHit hit, const std::string& other) {
    if (hit.name.empty() && other.empty()) return;
    Entry entry{std::move(hit), {}, folded(other)};
    entry.key = folded(entry.hit.name);
    entries_.push_back(std::move(entry));
  };
  for (const Part& part : board.parts) {
    const std::string value = part.value.valueOr({});
    add({MapHitKind::part, part.id, {}, {}, part.reference, value}, value);
  }
  for (const Pin& pin : board.pins) {
    const Net* net = pin.net.known() ? board.nets.find(pin.net.value) : nullptr;
    add({MapHitKind::pin, pin.part, pin.id, net != nullptr ? net->id : NetId(), pinLabel(board, pin.id),
         net != nullptr ? net->name : std::string()},
        {});
  }
  for (const Net& net : board.nets)
    add({MapHitKind::net, {}, {}, net.id, net.name, {}}, {});
  std::stable_sort(entries_.begin(), entries_.end(),
                   [](const Entry& a, const Entry& b) { return namedBefore(a.key, b.key); });
}

std::vector<MapHit> MapIndex::find(std::string_view text, std::size_t most) const {
  const auto first = text.find_first_not_of(' ');
  if (first == std::string_view::npos) return {};
  const std::string wanted = folded(text.substr(first, text.find_last_not_of(' ') - first + 1));
  std::vector<const Entry*> ranks[3];
  for (const Entry& entry : entries_) {
    const int rank =
        std::min(rankOf(entry.key, wanted), entry.other.empty() ? 3 : rankOf(entry.other, wanted));
    if (rank < 3 && ranks[rank].size() < most) ranks[rank].push_back(&entry);
  }
  std::vector<MapHit> hits;
  for (const auto& rank : ranks)
    for (const Entry* entry : rank)
      if (hits.size() < most) hits.push_back(entry->hit);
  return hits;
}

} // namespace netmend
