#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "netmend/base/error.h"
#include "netmend/base/geometry.h"

namespace netmend::kicad {

/// What stands next in a list: an atom, a list (its head already read), or the list's end.
struct Item {
  enum class Kind : std::uint8_t { end, atom, list };
  Kind kind = Kind::end;
  bool quoted = false;
  std::string_view text; ///< the atom without its quotes, or the list's head; a view into the file

  explicit operator bool() const { return kind != Kind::end; }
  [[nodiscard]] bool isList(std::string_view head) const { return kind == Kind::list && text == head; }
  [[nodiscard]] bool isAtom(std::string_view word) const { return kind == Kind::atom && text == word; }
};

/// Walks an s-expression file in one pass without a tree. The first mistake is kept and ends every
/// list at once, so that callers loop `while (auto item = in.next())` and look at `failed()` in the end.
/// A list that `next()` has given must be walked to its end or left by `leave()`.
class Cursor {
public:
  explicit Cursor(std::string_view text) : text_(text) {}

  [[nodiscard]] Item next();
  /// Over the rest of the innermost open list, and out of it.
  void leave();

  /// The next item of the open list, which must be an atom of this kind.
  [[nodiscard]] std::string_view word();
  [[nodiscard]] Length length(); ///< written in millimetres; refused beyond ±10 m
  [[nodiscard]] double number();
  /// Two lengths; the file's y points down and is turned round here.
  [[nodiscard]] Point point();

  /// A whole list of one value: read, and the list left.
  [[nodiscard]] std::string_view onlyWord();
  [[nodiscard]] Length onlyLength();
  [[nodiscard]] double onlyNumber();
  [[nodiscard]] Point onlyPoint();

  /// Keeps the first mistake; the place is where the last item began.
  void fail(Said message, Said found = {}, Said expected = {});
  [[nodiscard]] bool failed() const { return failed_; }
  [[nodiscard]] Error error(std::string file) const;
  /// Only white space may follow the outermost list.
  void expectEnd();
  [[nodiscard]] double share() const {
    return text_.empty() ? 1.0 : static_cast<double>(at_) / static_cast<double>(text_.size());
  }
  /// Where the last item began, for `line`.
  [[nodiscard]] std::size_t place() const { return itemStart_; }
  [[nodiscard]] std::size_t lineAt(std::size_t place) const;

private:
  void skipSpace();
  void readAtom(Item& item);
  [[nodiscard]] std::string_view numberText();

  std::string_view text_;
  std::size_t at_ = 0;
  std::size_t itemStart_ = 0;
  int depth_ = 0;
  bool failed_ = false;
  Error error_{};
};

/// Removes the backslashes of a quoted atom.
[[nodiscard]] std::string unescaped(std::string_view text);

} // namespace netmend::kicad
