#pragma once

#include <compare>
#include <cstddef>
#include <cstdint>
#include <functional>

namespace netmend {

/// Permanent opaque id of an object of one kind on one board. Never reused, never a label;
/// zero means "none". Unique over all kinds of one board.
template <class Tag> struct Id {
  std::uint64_t value = 0;

  constexpr Id() = default;
  constexpr explicit Id(std::uint64_t v) : value(v) {}
  constexpr explicit operator bool() const { return value != 0; }
  friend constexpr auto operator<=>(Id, Id) = default;
};

} // namespace netmend

template <class Tag> struct std::hash<netmend::Id<Tag>> {
  std::size_t operator()(netmend::Id<Tag> id) const noexcept { return std::hash<std::uint64_t>{}(id.value); }
};
