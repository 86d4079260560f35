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

/// The prior s0², d0 that the points' sample variances point to: s² ~ s0²·F(d, d0). How well few boards tell
/// s0 and d0 counts: Bayes over a grid of both, and given back is the one Student's t (scale s0, d0 degrees
/// of freedom) that matches the average over that grid at one spread and at one in a thousand. Before the
/// samples, ln s0² is normal about `fallback` with standard deviation 1, ln d0 with 0.5; without any,
/// `fallback` comes back. Variances below `least` (what the meter's resolution hides), or below a millionth
/// of the fallback's, count as that.
[[nodiscard]] Spread fitSpread(std::span<const Spread> samples, const Spread& fallback, double least);

/// Prior and one point's own variance together: (d0·s0² + d·s²)/(d0 + d) with d0 + d degrees of freedom.
[[nodiscard]] Spread moderated(const Spread& prior, const Spread& own);

} // namespace netmend
