#pragma once

#include "netmend/board/edit.h"

namespace netmend {

/// An edit in the making, with ids for what it puts.
class Draft {
public:
  explicit Draft(const Board& board) : board_(board), lastId_(board.lastId) {}
  /// Goes on with an edit that has been begun.
  Draft(const Board& board, Edit begun);

  template <class IdType> [[nodiscard]] IdType newId() { return IdType(++lastId_); }
  template <class T> void put(T object) { edit_.put(std::move(object)); }
  template <class T> void remove(decltype(T::id) id) { edit_.template remove<T>(id); }
  void putInfo(BoardInfo info) {
    info_ = std::move(info);
    edit_.changes.emplace_back(InfoChange{*info_});
  }
  /// The outer layer of a side. A board that has no layers gets two of them, and from then on says that of
  /// its copper only points are known: where drawn copper has gaps, nothing is broken.
  [[nodiscard]] LayerId layerOf(Side side);

  [[nodiscard]] const Board& board() const { return board_; }
  [[nodiscard]] Edit take() { return std::move(edit_); }

private:
  const Board& board_;
  std::uint64_t lastId_;
  Edit edit_;
  std::optional<BoardInfo> info_; ///< of a board that had no layers
};

} // namespace netmend
