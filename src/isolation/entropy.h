#pragma once

#include <cstddef>
#include <vector>

/// Shannon's measure, in bits. What "the next probe" is chosen by, and nothing else: no words of boards here.
namespace netmend {

/// H = −Σ p·log2 p. Weights need not sum to 1; negative ones count as 0. 0 for an empty list.
[[nodiscard]] double entropyBits(const std::vector<double>& weights);

/// What each hypothesis says of one test: `outcome[h][k]` is the probability of outcome k under hypothesis h.
using OutcomeTable = std::vector<std::vector<double>>;

/// Expected fall of the entropy over groups of hypotheses when the test is made (Lindley, "On a measure of
/// the information provided by an experiment", Ann. Math. Statist. 27, 1956): Σ_k P(k) · [H(G) − H(G | k)] =
/// H(K) − Σ_g P(g)·H(K | g). `groupOf[h]` says which hypotheses need no telling apart; empty: all do.
[[nodiscard]] double expectedInformation(const std::vector<double>& probability, const OutcomeTable& outcome,
                                         const std::vector<std::size_t>& groupOf = {});

/// Probability of being right when the best group is picked after the test: Σ_k max_g P(g, k).
[[nodiscard]] double expectedBestGuess(const std::vector<double>& probability, const OutcomeTable& outcome,
                                       const std::vector<std::size_t>& groupOf = {});

} // namespace netmend
