#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include "netmend/base/quantity.h"
#include "netmend/isolation/fault_priors.h"

/// What is not known of junctions: densities of forward drops at the meter's test current.
namespace netmend {

/// Of one junction, or of several in parallel, in equal bins; beside them what is above the last bin, and
/// nothing at all. Sums to 1.
struct DropDensity {
  static constexpr double first = 0.05; ///< V, lower edge of the first bin
  static constexpr double step = 0.006; ///< V
  static constexpr std::size_t bins = 200;
  static constexpr double last = first + step * static_cast<double>(bins);

  std::array<float, bins> mass{};
  float high = 0.0F; ///< a drop above `last`
  float none = 1.0F; ///< no junction

  static constexpr double middle(std::size_t bin) { return first + step * (static_cast<double>(bin) + 0.5); }
};

/// Two junctions in parallel read lower than the lower one, by how much depends on how far apart they are.
class SoftMinimum {
public:
  /// Both of emission coefficient `emission` and this series resistance, fed `current` together.
  SoftMinimum(double emission, Ohms series, Amperes current, Celsius temperature);

  /// How far below the lower one, V.
  [[nodiscard]] double below(double apart) const {
    const double at = apart * 1e3;
    const auto i = static_cast<std::size_t>(at);
    if (i + 1 >= table_.size()) return 0.0;
    const double share = at - static_cast<double>(i);
    return table_[i] + share * (table_[i + 1] - table_[i]);
  }
  /// What `count` equal ones read below one.
  [[nodiscard]] double belowOne(std::size_t count) const;

  static constexpr std::size_t reach = 240; ///< mV apart: the upper one no longer counts

private:
  double slope_;
  double seriesDrop_;
  std::vector<double> table_; ///< by millivolt apart
};

/// Of the parallel connection of what two densities say, independent of each other.
[[nodiscard]] DropDensity composed(const DropDensity& a, const DropDensity& b,
                                   const SoftMinimum& softMinimum);

/// The same with all drops lower by this much.
[[nodiscard]] DropDensity lowered(const DropDensity& density, double by);

/// How the chips of a line come by their drops: each its own technology, or all alike about one centre.
struct Technology {
  double weight = 1.0;
  bool alike = false;
  double centre = 0.0; ///< V, `alike` only
  double spread = 0.0;
};
[[nodiscard]] std::vector<Technology> technologies(const FaultPriors& priors);

/// One clamp of a chip, at the meter's test current.
[[nodiscard]] DropDensity clampDensity(const FaultPriors& priors, const Technology& technology,
                                       Amperes current);
/// An input that looks like a resistor: any value per decade.
[[nodiscard]] DropDensity resistiveDensity(const FaultPriors& priors, Amperes current, Volts limit);
[[nodiscard]] DropDensity mixed(double shareA, const DropDensity& a, double shareB, const DropDensity& b);

} // namespace netmend
