#include <algorithm>
#include <bit>
#include <cmath>

#include "fault_classes.h"

namespace netmend {

namespace {

constexpr std::size_t mostBranches = 7; ///< 2^6 − 1 − 7 = 56 splits

struct Hub {
  std::size_t cell = 0;
  std::vector<std::size_t> children; ///< cells below it over an unknown way
  bool hasParentBranch = false;
  [[nodiscard]] std::size_t branches() const { return children.size() + (hasParentBranch ? 1 : 0); }
};

bool isUnknown(const LineCells& cells, std::size_t cell) {
  return !cells.isRoot(cell) && cells.edgeAbove(cell).kind == EdgeKind::unknownWay;
}

std::vector<Hub> hubs(const LineView& view) {
  std::vector<Hub> result;
  for (NodeIndex node = 0; node < num_vertices(view.line.graph); ++node) {
    if (view.line.graph[node].kind != NodeKind::unknownWay) continue;
    Hub hub;
    hub.cell = view.cells.cellOfNode[node];
    hub.hasParentBranch = isUnknown(view.cells, hub.cell);
    for (std::size_t child = hub.cell + 1; child < view.cells.end[hub.cell]; child = view.cells.end[child])
      if (isUnknown(view.cells, child)) hub.children.push_back(child);
    result.push_back(std::move(hub));
  }
  return result;
}

/// (2k − 3)!!: rooted binary trees of k leaves.
double trees(std::size_t leaves) {
  double product = 1.0;
  for (std::size_t odd = 3; odd + 3 <= 2 * leaves; odd += 2)
    product *= static_cast<double>(odd);
  return product;
}

FaultCandidate split(const LineView& view, const Hub& hub, unsigned mask) {
  FaultCandidate result;
  result.effect.kind = FaultKind::open;
  for (std::size_t i = 0; i < hub.children.size(); ++i)
    if (mask >> i & 1u) {
      const std::size_t cell = hub.children[i];
      result.effect.below.emplace_back(cell, view.cells.end[cell]);
    }
  const std::size_t root = view.cells.root[hub.cell];
  result.place.edgeKind = EdgeKind::unknownWay;
  result.place.beyond = pinsOf(view, result.effect, true, root);
  result.place.before = pinsOf(view, result.effect, false, root);
  return result;
}

/// Copper between k points is supposed to branch like a binary tree, all trees being equally likely: k edges
/// lead to one point each, k − 3 lie inside, and a split in a and b points stands in (2a−3)!!·(2b−3)!! trees.
void addSplits(const LineView& view, const Hub& hub, std::vector<FaultCandidate>& candidates) {
  const std::size_t k = hub.branches();
  std::vector<FaultCandidate*> own;
  double total = 0.0;
  for (auto& candidate : candidates) {
    if (candidate.place.edgeKind != EdgeKind::unknownWay || candidate.effect.below.size() != 1) continue;
    const std::size_t cell = candidate.effect.below.front().first;
    const bool branch =
        cell == hub.cell || std::find(hub.children.begin(), hub.children.end(), cell) != hub.children.end();
    if (!branch) continue;
    own.push_back(&candidate);
    total += candidate.weight;
  }
  const double inside = static_cast<double>(k - 3) / static_cast<double>(2 * k - 3);
  for (FaultCandidate* candidate : own)
    candidate->weight *= 1.0 - inside;
  // Without a branch upwards the first child stays above, so that no split comes twice.
  const unsigned first = hub.hasParentBranch ? 0u : 1u;
  const unsigned all = 1u << hub.children.size();
  std::vector<FaultCandidate> splits;
  double sum = 0.0;
  for (unsigned mask = 1; mask < all; ++mask) {
    const auto below = static_cast<std::size_t>(std::popcount(mask));
    if ((mask & first) != 0 || below < 2 || k - below < 2) continue;
    splits.push_back(split(view, hub, mask));
    sum += splits.back().weight = trees(below) * trees(k - below);
  }
  for (auto& candidate : splits) {
    candidate.weight *= inside * total / sum;
    candidates.push_back(std::move(candidate));
  }
}

} // namespace

void addUnknownWaySplits(const LineView& view, std::vector<FaultCandidate>& candidates,
                         std::vector<LineNotice>& notices) {
  for (const Hub& hub : hubs(view)) {
    const std::size_t k = hub.branches();
    if (k < 4) continue;
    if (k > mostBranches) {
      notices.push_back({LineNotice::Kind::manyBranches, k});
      continue;
    }
    addSplits(view, hub, candidates);
  }
}

} // namespace netmend
