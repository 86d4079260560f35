#pragma once

#include <map>
#include <memory>
#include <optional>
#include <vector>

#include "foreseen.h"
#include "likelihood.h"
#include "reading_table.h"

namespace netmend {

/// What a class says of readings, and of those still to come.
struct Weighed {
  double log = 0.0;               ///< likelihood of all readings
  std::vector<Foreseen> foreseen; ///< by circuit; none of these: by cell that was read, then of any other
  double unresolved = 0.0;        ///< share of `log`'s likelihood that was not worked out to the end
};

/// Readings of a job, weighed class by class.
class Weighing {
public:
  Weighing(const IsolationModel& model, std::vector<PlacedReading> readings);

  /// Without one of them, where `skip` says so.
  /// Below `giveUpBelow` a likelihood does not count any more, and an upper bound will do.
  [[nodiscard]] Weighed of(std::size_t faultClass, std::optional<std::size_t> skip = {},
                           double giveUpBelow = -1e300);

private:
  using Set = std::vector<std::size_t>; ///< of readings, ascending

  [[nodiscard]] bool isToGround(std::size_t reading) const {
    return readings_[reading].sort != ReadingSort::ohmsBetween;
  }
  [[nodiscard]] bool isVolts(std::size_t reading) const {
    return readings_[reading].sort == ReadingSort::voltsToGround;
  }
  const ReadingProduct& product(const Set& set);
  [[nodiscard]] double between(std::size_t faultClass, std::optional<std::size_t> skip) const;
  [[nodiscard]] double betweenIfNone(std::optional<std::size_t> skip) const;
  [[nodiscard]] Weighed byCircuits(std::size_t faultClass, std::optional<std::size_t> skip,
                                   double giveUpBelow);
  [[nodiscard]] Weighed ifNone(std::optional<std::size_t> skip);

  const IsolationModel& model_;
  std::vector<PlacedReading> readings_;
  std::vector<ReadingTable> tables_; ///< parallel; empty ones for readings from point to point
  std::map<Set, ReadingProduct> products_;
};

/// Cells that were read to ground, ascending: what is foreseen by none of these is by them.
[[nodiscard]] std::vector<std::size_t> cellsRead(const IsolationModel& model,
                                                 const std::vector<PlacedReading>& readings);

/// What a class foresees at a cell.
[[nodiscard]] const Foreseen& foreseenAt(const Isolation& isolation, std::size_t faultClass,
                                         std::size_t cell);

} // namespace netmend
