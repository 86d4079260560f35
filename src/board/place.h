#pragma once

#include <string>
#include <string_view>

#include "netmend/base/json_text.h"

namespace netmend {

/// A place in a JSON document as a chain up to its root. Costs nothing until it is asked for its text.
class Place {
public:
  Place() = default;
  Place(const Place& up, std::string_view key) : up_(&up), key_(key), isKey_(true) {}
  Place(const Place& up, std::size_t index) : up_(&up), index_(index) {}

  /// JSON pointer (RFC 6901).
  [[nodiscard]] std::string pointer() const {
    if (!up_) return {};
    return up_->pointer() + (isKey_ ? jsonPointerStep(key_) : "/" + std::to_string(index_));
  }

private:
  const Place* up_ = nullptr;
  std::string_view key_;
  std::size_t index_ = 0;
  bool isKey_ = false;
};

} // namespace netmend
