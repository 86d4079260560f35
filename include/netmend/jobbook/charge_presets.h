#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "netmend/base/error.h"
#include "netmend/jobbook/money.h"

namespace netmend {

/// A charge that is put on the bill by one key.
struct ChargePreset {
  std::string what;
  Decimal quantity{10000}; ///< one
  Decimal price;           ///< of one
  friend bool operator==(const ChargePreset&, const ChargePreset&) = default;
};

/// Reads data/charges.json. Fails naming file and JSON pointer.
[[nodiscard]] Result<std::vector<ChargePreset>> loadChargePresets(const std::filesystem::path& path);

/// What this shop charges for: from its last two hundred charges, each kind with its last price, most used
/// first, of equally often used ones the one used last. A book that cannot be read has none.
[[nodiscard]] std::vector<ChargePreset> usualCharges(const std::filesystem::path& book, std::size_t most);

/// The shop's own first, then defaults for what it has not charged yet.
[[nodiscard]] std::vector<ChargePreset>
presetsFrom(std::vector<ChargePreset> usual, const std::vector<ChargePreset>& defaults, std::size_t most);

} // namespace netmend
