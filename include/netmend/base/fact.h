#pragma once

#include <utility>

namespace netmend {

/// Where a fact comes from. Anything below `user` is not certain.
enum class Origin { unknown, guessed, user, file, measured };

/// A value that may be unknown or only guessed. When unknown, `value` is meaningless.
template <class T> struct Fact {
  T value{};
  Origin origin = Origin::unknown;

  [[nodiscard]] bool known() const { return origin != Origin::unknown; }
  [[nodiscard]] bool certain() const { return known() && origin != Origin::guessed; }
  [[nodiscard]] T valueOr(T fallback) const { return known() ? value : fallback; }
  friend bool operator==(const Fact&, const Fact&) = default;
};

template <class T> [[nodiscard]] Fact<T> fromFile(T value) {
  return {std::move(value), Origin::file};
}
template <class T> [[nodiscard]] Fact<T> fromUser(T value) {
  return {std::move(value), Origin::user};
}
template <class T> [[nodiscard]] Fact<T> guessed(T value) {
  return {std::move(value), Origin::guessed};
}
template <class T> [[nodiscard]] Fact<T> measured(T value) {
  return {std::move(value), Origin::measured};
}

} // namespace netmend
