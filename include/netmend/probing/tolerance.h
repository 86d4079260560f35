#pragma once

namespace netmend {

/// What a normal tolerance interval promises: at least `content` of all good boards lie in it, with this
/// confidence.
struct ToleranceAim {
  double content = 0.99;
  double confidence = 0.95;
};

/// Howe's two-sided factor k in mean ± k·s for n values (Howe, J. Am. Stat. Assoc. 64, 1969; NIST/SEMATECH
/// e-Handbook 7.2.6.3). NaN below two values, as for all factors here that need a spread.
[[nodiscard]] double toleranceFactorHowe(double n, const ToleranceAim& aim);
/// One-sided factor by Natrella's approximation, as the same page gives it.
[[nodiscard]] double toleranceFactorOneSided(double n, const ToleranceAim& aim);
/// Exact two-sided factor by numerical integration. `n` is how many values the mean rests on and `dof` the
/// degrees of freedom of the spread: n − 1, or more where the spread is borrowed.
[[nodiscard]] double toleranceFactorExact(double n, double dof, const ToleranceAim& aim);

} // namespace netmend
