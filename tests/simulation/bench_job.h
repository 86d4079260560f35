#pragma once

#include <memory>
#include <string>
#include <vector>

#include "netmend/isolation/isolation.h"
#include "netmend/probing/meter.h"
#include "netmend/probing/walk.h"
#include "simulation/fault.h"

namespace netmend::simulation {

/// What is common to all readings that one meter takes, by mode: shares of the reading and of a count's
/// limit, each between -1 and 1.
struct MeterBias {
  double gain = 0.0;
  double zero = 0.0;
};

/// One board on the bench: line, what is behind it, fault, and what good boards read. Everything comes from
/// the seed.
struct BenchJob {
  std::uint64_t seed = 0;
  NetId net;
  std::shared_ptr<const BoardLine> line;
  Population population;
  Design design;   ///< of all boards of the kind
  Design specimen; ///< this board
  Fault fault;
  MeterBias bias;
  MeterBias goodBias; ///< of the meter that read the good boards
  double celsius = 25.0;
  bool toldCelsius = false;
  double slipped = 0.02;
  double readingSpread = 0.0015;
  std::vector<PinId> known; ///< pins that good boards were read at
  std::vector<Walk> good;
};

[[nodiscard]] MeterBias drawBias(Random& random);
/// Celsius of a bench, and whether anybody told it.
struct BenchTemperature {
  double celsius = 25.0;
  bool told = false;
};
[[nodiscard]] BenchTemperature drawTemperature(Random& random);
inline constexpr double untoldSpread = 2.0;   ///< K, about 25 degrees
inline constexpr double sameMeterShare = 0.5; ///< of jobs, for the good boards and this one

/// What the display makes of a value: bias, range, whole counts; nothing is OL.
[[nodiscard]] std::optional<double> shown(const MeterMode& mode, double value, const MeterBias& bias,
                                          double noise);

/// The same job in a world without errors: no slip, no noise, no bias, good boards and this one as designed.
[[nodiscard]] BenchJob withoutErrors(BenchJob job, const Lookup& lookup, const MeterProfile& meter);

/// Nothing where the line has no reachable pin at which a good board reads a value.
[[nodiscard]] std::optional<BenchJob> drawJob(const Lookup& lookup, std::shared_ptr<const BoardLine> line,
                                              const FaultShares& shares, const MeterProfile& meter,
                                              std::uint64_t seed, Seeding seeding = Seeding::byShares);

/// A reading as the simulator knows it.
struct Shown {
  Reading reading;
  ProbePlace red;
  std::optional<ProbePlace> black; ///< empty: ground
  bool slipped = false;
};
/// What the meter shows where the program asks. `taken`: how many readings were taken before. Nothing in a
/// mode that this bench does not have, or at a place that is not on the simulator's board.
[[nodiscard]] std::optional<Shown> read(const BenchJob& job, const Lookup& lookup, const MeterProfile& meter,
                                        const ProbePlace& place, const ProbePlace* other, ReadingMode mode,
                                        std::size_t taken);

/// The spot that a lead touches there.
[[nodiscard]] std::optional<std::size_t> spotAt(const BoardLine& line, const Lookup& lookup,
                                                const CopperObject& object, std::optional<Point> at,
                                                int layer, const std::optional<Crack>& crack);

/// Volts that an ideal meter in diode mode finds at a spot; above the limit where nothing conducts.
[[nodiscard]] double idealDiode(const BoardLine& line, const Design& specimen, const Fault& fault,
                                double celsius, std::size_t spot, const Source& source,
                                std::size_t taken = 0);
[[nodiscard]] Source sourceOf(const MeterMode& mode);

} // namespace netmend::simulation
