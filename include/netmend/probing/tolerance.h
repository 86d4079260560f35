#pragma once

namespace netmend {

/// What a normal tolerance interval promises: at least `content` of all good boards lie in it, with this
/// confidence.
struct ToleranceAim {
  double content = 0.99;
  double confidence = 0.95;
};

/// Exact two-sided factor k in mean ± k·s by numerical integration. `n` is how many values the mean rests on
/// and `dof` the degrees of freedom of the spread: n − 1, or more where the spread is borrowed. NaN where
/// there is none.
[[nodiscard]] double toleranceFactorExact(double n, double dof, const ToleranceAim& aim);

} // namespace netmend
