#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "netmend/probing/reading.h"

namespace netmend {

/// Numbers pairs of point and setting from 0. Points are the same where their pins are; where one of them has
/// no pin, where their labels are.
class PointIndex {
public:
  struct Entry {
    ProbePoint point;
    std::size_t setting = 0;
  };

  /// The number of this point, a new one if need be.
  std::size_t add(const ProbePoint& point, const ReadingSetting& setting);
  std::size_t add(const Reading& reading) { return add(reading.point, settingIndexOf(reading)); }
  [[nodiscard]] std::optional<std::size_t> find(const ProbePoint& point, const ReadingSetting& setting) const;
  [[nodiscard]] std::optional<std::size_t> find(const Reading& reading) const;

  [[nodiscard]] std::size_t size() const { return entries_.size(); }
  /// Points of this setting.
  [[nodiscard]] std::size_t count(const ReadingSetting& setting) const;
  [[nodiscard]] const Entry& operator[](std::size_t index) const { return entries_[index]; }
  [[nodiscard]] const ReadingSetting& setting(std::size_t index) const { return settings_[index]; }

private:
  std::size_t add(const ProbePoint& point, std::size_t setting);
  std::size_t settingIndexOf(const Reading& reading);
  [[nodiscard]] std::optional<std::size_t> find(const ProbePoint& point, std::size_t setting) const;

  struct Names {
    std::unordered_map<std::uint64_t, std::size_t> byPin;
    std::unordered_map<std::string, std::size_t> byLabel;
    std::size_t entries = 0;
  };
  std::vector<ReadingSetting> settings_;
  std::vector<Names> names_; ///< parallel to settings_
  std::vector<Entry> entries_;
};

} // namespace netmend
