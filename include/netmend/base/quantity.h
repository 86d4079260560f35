#pragma once

#include <compare>

namespace netmend {

/// A physical quantity in its SI unit. `Tag` keeps volts from being added to ohms.
template <class Tag> struct Quantity {
  double value = 0.0;

  constexpr Quantity() = default;
  constexpr explicit Quantity(double v) : value(v) {}

  friend constexpr auto operator<=>(Quantity, Quantity) = default;
  friend constexpr Quantity operator+(Quantity a, Quantity b) { return Quantity(a.value + b.value); }
  friend constexpr Quantity operator-(Quantity a, Quantity b) { return Quantity(a.value - b.value); }
  friend constexpr Quantity operator-(Quantity a) { return Quantity(-a.value); }
  friend constexpr Quantity operator*(Quantity a, double f) { return Quantity(a.value * f); }
  friend constexpr Quantity operator*(double f, Quantity a) { return Quantity(a.value * f); }
  friend constexpr Quantity operator/(Quantity a, double f) { return Quantity(a.value / f); }
  friend constexpr double operator/(Quantity a, Quantity b) { return a.value / b.value; }
  constexpr Quantity& operator+=(Quantity b) {
    value += b.value;
    return *this;
  }
};

using Volts = Quantity<struct VoltTag>;
using Ohms = Quantity<struct OhmTag>;
using Amperes = Quantity<struct AmpereTag>;
using Farads = Quantity<struct FaradTag>;
using Seconds = Quantity<struct SecondTag>;
/// Temperature in degrees Celsius.
using Celsius = Quantity<struct CelsiusTag>;
/// Difference of two temperatures.
using Kelvins = Quantity<struct KelvinTag>;
/// Angle in degrees, counter-clockwise as seen from the top side with y up.
using Degrees = Quantity<struct DegreeTag>;
/// In a photo.
using Pixels = Quantity<struct PixelTag>;
/// A part of one, without unit.
using Share = Quantity<struct ShareTag>;

constexpr Volts operator*(Amperes i, Ohms r) {
  return Volts(i.value * r.value);
}
constexpr Volts operator*(Ohms r, Amperes i) {
  return i * r;
}
constexpr Amperes operator/(Volts v, Ohms r) {
  return Amperes(v.value / r.value);
}
constexpr Ohms operator/(Volts v, Amperes i) {
  return Ohms(v.value / i.value);
}

} // namespace netmend
