#include "references.h"

namespace netmend {

std::optional<DanglingAt> firstDangling(const Board& board) {
  const auto exists = [&](auto id) { return (board.*KindOfId<decltype(id)>::table).find(id) != nullptr; };
  std::optional<DanglingAt> found;
  if (const auto bad = danglingIn(board.info, exists)) return DanglingAt{*bad, "info", 0, "the board's info"};
  forEachKind([&](auto kind) {
    const auto& table = board.*kind.table;
    for (std::size_t i = 0; i < table.size() && !found; ++i) {
      if (const auto bad = danglingIn(table[i], exists))
        found =
            DanglingAt{*bad, kind.list, i, std::string(kind.name) + " " + std::to_string(table[i].id.value)};
    }
  });
  return found;
}

} // namespace netmend
