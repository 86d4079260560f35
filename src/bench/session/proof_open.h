#pragma once

#include <vector>

#include <QStringList>

#include "bench_job.h"
#include "netmend/casework/proof.h"

/// Whether what was measured again proves, all together, that the repair holds.
namespace netmend {

/// Of the open job; there must be one.
[[nodiscard]] ProofBasis proofBasis(const BenchJob& job);

/// What still stands against "proved", in whole sentences; empty: proved. `skipped` are indices into
/// `points`: a neighbour may be left out, anything else not. `places` may be null.
[[nodiscard]] QStringList openForProof(const std::vector<ProofPoint>& points, const Job& job,
                                       const std::vector<std::size_t>& skipped, const PlaceNames* places);

} // namespace netmend
