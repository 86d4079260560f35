#pragma once

#include <algorithm>
#include <cstddef>
#include <vector>

namespace netmend {

/// The objects of one kind, ordered by id. Ids grow, so that adding is an append and
/// walking is an array; `T` has a member `id`.
template <class T> class Table {
public:
  using IdType = decltype(T::id);
  using const_iterator = typename std::vector<T>::const_iterator;

  [[nodiscard]] const_iterator begin() const { return items_.begin(); }
  [[nodiscard]] const_iterator end() const { return items_.end(); }
  [[nodiscard]] std::size_t size() const { return items_.size(); }
  [[nodiscard]] bool empty() const { return items_.empty(); }
  /// By position, 0 to size() - 1: the dense index that algorithms use.
  [[nodiscard]] const T& operator[](std::size_t index) const { return items_[index]; }

  /// The object with this id, or nullptr. O(log n).
  [[nodiscard]] const T* find(IdType id) const {
    const auto it = lowerBound(id);
    return it != items_.end() && it->id == id ? &*it : nullptr;
  }
  /// The dense index of this id, or size() if there is none. O(log n).
  [[nodiscard]] std::size_t indexOf(IdType id) const {
    const auto it = lowerBound(id);
    return it != items_.end() && it->id == id ? static_cast<std::size_t>(it - items_.begin()) : items_.size();
  }

  /// Adds the object, or replaces the one with the same id.
  void put(T item) {
    if (items_.empty() || items_.back().id < item.id) {
      items_.push_back(std::move(item));
      return;
    }
    const auto it = items_.begin() + (lowerBound(item.id) - items_.begin());
    if (it != items_.end() && it->id == item.id)
      *it = std::move(item);
    else
      items_.insert(it, std::move(item));
  }
  bool erase(IdType id) {
    const auto it = lowerBound(id);
    if (it == items_.end() || it->id != id) return false;
    items_.erase(it);
    return true;
  }
  void reserve(std::size_t n) { items_.reserve(n); }

  friend bool operator==(const Table&, const Table&) = default;

private:
  [[nodiscard]] const_iterator lowerBound(IdType id) const {
    return std::lower_bound(items_.begin(), items_.end(), id,
                            [](const T& item, IdType i) { return item.id < i; });
  }
  std::vector<T> items_;
};

} // namespace netmend
