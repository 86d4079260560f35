#pragma once

#include <cstddef>
#include <numeric>
#include <span>
#include <vector>

namespace netmend::copper {

/// Things 0 to n - 1 dealt out to groups, in order within each.
class Dealt {
public:
  template <class GroupOf>
  Dealt(std::size_t groups, std::size_t n, GroupOf groupOf) : first_(groups + 1, 0), order_(n) {
    for (std::size_t i = 0; i < n; ++i)
      ++first_[groupOf(i) + 1];
    std::partial_sum(first_.begin(), first_.end(), first_.begin());
    std::vector<std::size_t> next(first_.begin(), first_.end() - 1);
    for (std::size_t i = 0; i < n; ++i)
      order_[next[groupOf(i)]++] = i;
  }
  [[nodiscard]] std::span<const std::size_t> of(std::size_t group) const {
    return {order_.data() + first_[group], first_[group + 1] - first_[group]};
  }

private:
  std::vector<std::size_t> first_;
  std::vector<std::size_t> order_;
};

} // namespace netmend::copper
