#pragma once

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <optional>
#include <utility>
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

  /// An id and the object that stands there, or nothing.
  using Slot = std::pair<IdType, std::optional<T>>;
  /// Fills or empties many slots at once and gives back what they held. `slots` are in rising order of
  /// id, each id once. O(n + k log n), whatever the order of the table's and the new ids.
  std::vector<Slot> exchange(std::vector<Slot> slots) {
    const auto shifts = std::count_if(slots.begin(), slots.end(), [&](const Slot& slot) {
      const bool held = find(slot.first) != nullptr;
      const bool atEnd = items_.empty() || items_.back().id < slot.first;
      return slot.second ? !held && !atEnd : held;
    });
    // Each shift moves half the table on average; from a few on a merge is cheaper.
    if (shifts > 2) return mergeWith(std::move(slots));
    for (Slot& slot : slots) {
      const std::size_t index = indexOf(slot.first);
      std::optional<T> old;
      if (index < items_.size()) old = std::move(items_[index]);
      if (slot.second && old)
        items_[index] = std::move(*slot.second);
      else if (slot.second)
        put(std::move(*slot.second));
      else if (old)
        items_.erase(items_.begin() + static_cast<std::ptrdiff_t>(index));
      slot.second = std::move(old);
    }
    return slots;
  }

  friend bool operator==(const Table&, const Table&) = default;

private:
  [[nodiscard]] const_iterator lowerBound(IdType id) const {
    return std::lower_bound(items_.begin(), items_.end(), id,
                            [](const T& item, IdType i) { return item.id < i; });
  }
  std::vector<Slot> mergeWith(std::vector<Slot> slots) {
    std::vector<T> merged;
    merged.reserve(items_.size() + slots.size());
    auto item = items_.begin();
    for (Slot& slot : slots) {
      for (; item != items_.end() && item->id < slot.first; ++item)
        merged.push_back(std::move(*item));
      std::optional<T> old;
      if (item != items_.end() && item->id == slot.first) old = std::move(*item++);
      if (slot.second) merged.push_back(std::move(*slot.second));
      slot.second = std::move(old);
    }
    merged.insert(merged.end(), std::make_move_iterator(item), std::make_move_iterator(items_.end()));
    items_ = std::move(merged);
    return slots;
  }

  std::vector<T> items_;
};

} // namespace netmend
