#pragma once

#include <cmath>
#include <compare>
#include <cstdint>

namespace netmend {

/// A length or coordinate in whole nanometres: exact to store, compare and add.
/// The range of ±9.2e18 nm leaves room for squares of any board in `double`.
struct Length {
  std::int64_t nm = 0;

  constexpr Length() = default;
  constexpr explicit Length(std::int64_t nanometres) : nm(nanometres) {}

  /// Rounds to the nearest nanometre, halves away from zero.
  static Length fromMm(double mm) { return Length(std::llround(mm * 1e6)); }
  [[nodiscard]] constexpr double mm() const { return static_cast<double>(nm) * 1e-6; }

  friend constexpr auto operator<=>(Length, Length) = default;
  friend constexpr Length operator+(Length a, Length b) { return Length(a.nm + b.nm); }
  friend constexpr Length operator-(Length a, Length b) { return Length(a.nm - b.nm); }
  friend constexpr Length operator-(Length a) { return Length(-a.nm); }
  friend constexpr Length operator*(Length a, std::int64_t f) { return Length(a.nm * f); }
  friend constexpr Length operator/(Length a, std::int64_t d) { return Length(a.nm / d); }
  constexpr Length& operator+=(Length b) {
    nm += b.nm;
    return *this;
  }
  constexpr Length& operator-=(Length b) {
    nm -= b.nm;
    return *this;
  }
};

} // namespace netmend
