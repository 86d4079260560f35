#pragma once

#include <cstddef>
#include <numeric>
#include <vector>

namespace netmend::copper {

/// Disjoint sets of 0 to n - 1; the smallest member stands for its set.
class UnionFind {
public:
  explicit UnionFind(std::size_t n) : parent_(n) {
    std::iota(parent_.begin(), parent_.end(), std::size_t{0});
  }

  std::size_t find(std::size_t i) {
    while (parent_[i] != i)
      i = parent_[i] = parent_[parent_[i]];
    return i;
  }
  /// False if they were one set already.
  bool unite(std::size_t a, std::size_t b) {
    a = find(a);
    b = find(b);
    if (a == b) return false;
    if (b < a) std::swap(a, b);
    parent_[b] = a;
    return true;
  }

private:
  std::vector<std::size_t> parent_;
};

} // namespace netmend::copper
