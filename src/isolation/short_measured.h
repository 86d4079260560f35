#pragma once

#include "netmend/isolation/short_places.h"
#include "short_evidence.h"
#include "short_model.h"

namespace netmend {

/// Readings of one line as equations for a short at any of its places.
class ShortReadings {
public:
  ShortReadings(const ShortModel& model, const std::vector<ShortObservation>& observations);

  [[nodiscard]] const MeasuredOhms& measured() const { return measured_; }
  /// The last place is none of these: there each point has a resistance of its own.
  [[nodiscard]] ShortEquations equations(std::size_t place) const;

  /// What a fit foretells of points: mean and variance, in ohms, the meter's own error left out.
  struct Expected {
    double mean = 0.0;
    double variance = 0.0;
  };
  [[nodiscard]] std::vector<Expected> foretell(std::size_t place, const std::vector<std::size_t>& points,
                                               bool drop) const;

private:
  [[nodiscard]] bool isNone(std::size_t place) const { return place == model_.placeNode.size(); }
  [[nodiscard]] PositivePrior priorOfWire(std::size_t place, std::size_t wire) const;
  [[nodiscard]] CopperResponse responseAt(std::size_t place, std::size_t point, bool drop) const;
  /// Unknown wires that the readings know of, in the order of the fit.
  [[nodiscard]] std::vector<std::size_t> wiresOf(std::size_t place) const;

  const ShortModel& model_;
  std::vector<std::size_t> points_;
  std::vector<bool> drops_;
  MeasuredOhms measured_;
};

/// One standard deviation of reading one place again, in ohms.
[[nodiscard]] double repeatOf(const ShortModel& model, double ohms, std::optional<Amperes> injected);

} // namespace netmend
