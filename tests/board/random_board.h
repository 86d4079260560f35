#pragma once

#include <random>

#include "netmend/board/board.h"
#include "netmend/board/edit.h"

/// Boards with every field filled at random, for tests. Written out by hand and not from the program's own
/// lists of fields, so that a field forgotten there is noticed here.
namespace netmend::test {

class RandomBoard {
public:
  explicit RandomBoard(unsigned seed) : random_(seed) {}

  /// About `parts` parts and a few times as many of everything else.
  Board board(std::size_t parts);
  /// A fresh object of one kind that names existing objects only.
  void object(const Board& board, Layer& layer);
  void object(const Board& board, Part& part);
  void object(const Board& board, Net& net);
  void object(const Board& board, Pin& pin);
  void object(const Board& board, Pad& pad);
  void object(const Board& board, Track& track);
  void object(const Board& board, Via& via);
  void object(const Board& board, Area& area);
  void object(const Board& board, Zone& zone);
  void object(const Board& board, Underlay& underlay);
  BoardInfo info(const Board& board);

  std::size_t below(std::size_t n) {
    return n == 0 ? 0 : std::uniform_int_distribution<std::size_t>(0, n - 1)(random_);
  }
  bool oneIn(std::size_t n) { return below(n) == 0; }

  /// An existing id, or none when there is none.
  template <class T> decltype(T::id) anyOf(const Table<T>& table) {
    return table.empty() ? decltype(T::id){} : table[below(table.size())].id;
  }

private:
  Origin origin();
  Length length();
  Point point();
  Size size();
  Ring ring();
  Polygon polygon();
  std::string text();
  double number();

  template <class T> Fact<T> fact(T value) {
    const Origin from = origin();
    return from == Origin::unknown ? Fact<T>{} : Fact<T>{std::move(value), from};
  }
  template <class E> E any(E last) { return static_cast<E>(below(static_cast<std::size_t>(last) + 1)); }
  template <class T> decltype(T::id) anyOrNone(const Table<T>& table) {
    return oneIn(4) ? decltype(T::id){} : anyOf(table);
  }

  std::mt19937 random_;
};

} // namespace netmend::test
