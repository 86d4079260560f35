#pragma once

#include <span>

/// Empirical Bayes on variances: points of one kind lend each other their spread. Model and estimates as in
/// G. K. Smyth, "Linear models and empirical Bayes methods for assessing differential expression in
/// microarray experiments", Stat. Appl. Genet. Mol. Biol. 3 (2004), art. 3. All variances are on the
/// comparison scale.
namespace netmend {

/// A variance and how many degrees of freedom it rests on.
struct Spread {
  double variance = 0.0;
  double dof = 0.0;
};

/// The prior s0², d0 that fits the points' sample variances: s² ~ s0²·F(d, d0). `fallback` is what holds
/// without any; while the samples have fewer than 8 degrees of freedom altogether it is pooled with them. d0
/// is never above the samples' degrees of freedom: more certain than its own evidence it cannot be. Variances
/// below `least` (what the meter's resolution hides) count as `least`.
[[nodiscard]] Spread fitSpread(std::span<const Spread> samples, const Spread& fallback, double least);

/// Prior and one point's own variance together: (d0·s0² + d·s²)/(d0 + d) with d0 + d degrees of freedom.
[[nodiscard]] Spread moderated(const Spread& prior, const Spread& own);

} // namespace netmend
