#pragma once

#include <optional>
#include <vector>

#include "foreseen.h"
#include "line_networks.h"
#include "reading_table.h"

/// How likely readings are under one class, summed over all that is not known of the line.
namespace netmend {

struct IntegralRequest {
  const LineNetworks& networks;
  const ClassNetwork& network;
  const LineBench& bench;
  const LineBench* ohmsBench = nullptr;
  std::vector<const ReadingProduct*> good;     ///< parallel to `network.good`
  std::vector<const ReadingProduct*> readings; ///< by circuit; null: none taken there
  std::vector<const ReadingProduct*> ohms;     ///< the same of readings in ohms
  const std::vector<CommonError>& errors;
  double giveUpBelow = -1e300; ///< log of a sum that does not count any more: then its bound is given back
  bool wantsForeseen = true;
};

struct LineIntegral {
  double log = 0.0;               ///< of the sum, scales of the products included
  std::vector<Foreseen> foreseen; ///< by circuit
  double unresolved = 0.0;        ///< share of the sum in cells that were not cut as far as wanted
};

/// Adaptive cubature: what is not known is cut into cells as long as what a cell may hold at most (products
/// of greatest likelihoods) is more than what it is taken to hold (products of means) by a share that counts.
/// Voltages grow with every unknown, so that two corners bound them.
[[nodiscard]] LineIntegral integrate(const IntegralRequest& request);

} // namespace netmend
