#pragma once

#include <optional>
#include <variant>
#include <vector>

#include "netmend/base/error.h"
#include "netmend/board/board.h"

namespace netmend {

/// Puts `after` in the place of the object with this id, or removes it when `after` is empty.
template <class T> struct Change {
  decltype(T::id) id;
  std::optional<T> after;
  friend bool operator==(const Change&, const Change&) = default;
};

struct InfoChange {
  BoardInfo after;
  friend bool operator==(const InfoChange&, const InfoChange&) = default;
};

using AnyChange = std::variant<InfoChange, Change<Layer>, Change<Part>, Change<Net>, Change<Pin>, Change<Pad>,
                               Change<Track>, Change<Via>, Change<Area>, Change<Zone>, Change<Underlay>>;

/// One user action: all of its changes happen, or none.
struct Edit {
  std::vector<AnyChange> changes;

  template <class T> Edit& put(T object) {
    const auto id = object.id;
    changes.push_back(Change<T>{id, std::move(object)});
    return *this;
  }
  template <class T> Edit& remove(decltype(T::id) id) {
    changes.push_back(Change<T>{id, std::nullopt});
    return *this;
  }
  friend bool operator==(const Edit&, const Edit&) = default;
};

/// Changes the board and gives back the edit that restores it exactly. Fails, with the board
/// as it was, when an object would refer to one that does not exist, when an id is zero or
/// belongs to another kind, or when a removal names nothing. The order of changes matters only
/// among those of one id (the last counts); references are looked at when all are done.
/// The error's place is a JSON pointer into the edit, "/changes/3/net".
/// Takes O(k log n) for k changes, and one pass over the board when layers, parts, nets or pins are
/// removed or when several objects are added or removed in the middle of a table.
[[nodiscard]] Result<Edit> apply(Board& board, const Edit& edit);

/// The first dangling reference of a board, if any: what `apply` and the readers check. The error's
/// place is a JSON pointer, "/pins/3/net", with the position in the table.
[[nodiscard]] Result<void> checkReferences(const Board& board);

} // namespace netmend
