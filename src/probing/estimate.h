#pragma once

#include <map>
#include <vector>

#include "good_readings.h"
#include "netmend/probing/verdict.h"
#include "spread.h"

namespace netmend::probing {

/// Which of the good boards an estimate believes, and how.
struct Believed {
  std::vector<bool> without; ///< by walk: not this one; shorter: the rest counts
  std::vector<bool> parted;  ///< by point: its boards disagree, and neither side is believed alone
  [[nodiscard]] bool counts(std::size_t walk) const { return walk >= without.size() || !without[walk]; }
  [[nodiscard]] bool disagree(std::size_t point) const { return point < parted.size() && parted[point]; }
};

/// What a good board reads at each point, from those believed: points of one kind lend each other their
/// spread.
class Estimate {
public:
  /// `lookup` may be null. All must outlive the estimate.
  Estimate(const GoodReadings& readings, const Lookup* lookup, const ProbingData& data,
           Believed believed = {});

  /// Boards believed here.
  [[nodiscard]] std::size_t boardsAt(std::size_t point) const { return samples_[point].boards; }
  /// Nothing where no board is believed. Without `shown`, which takes long and does not judge.
  [[nodiscard]] std::optional<Expected> at(std::size_t point) const;
  /// The same with what is shown.
  [[nodiscard]] std::optional<Expected> withShown(std::size_t point);

private:
  struct Sample {
    std::vector<const GoodReading*> values; ///< sorted by value; no OL
    std::size_t boards = 0;
  };
  /// Values of one variant: boards that read alike.
  struct Cluster {
    double mean = 0.0;
    double variance = 0.0; ///< over n − 1, less what different meters add to it
    double boards = 0.0;
    std::vector<MeterPart> meters;
  };
  /// The points of one kind, mode and level.
  struct Group {
    Spread fallback;
    Spread prior;
    double least = 0.0;
    std::vector<std::size_t> members;
  };
  using GroupKey = std::pair<std::size_t, PinKind>; ///< setting, kind

  void takeSamples(const Believed& believed);
  void makeGroups();
  void fitGroup(Group& group) const;
  void findVariantShare();
  [[nodiscard]] Cluster clusterOf(const std::vector<const GoodReading*>& values, std::size_t from,
                                  std::size_t to) const;
  [[nodiscard]] std::vector<Cluster> clustersAt(std::size_t point, const Group& group) const;
  [[nodiscard]] Spread spreadOf(const Cluster& cluster, const Group& group) const;
  [[nodiscard]] double toleranceFactor(double boards, double dof);

  const GoodReadings& readings_;
  const ProbingData& data_;
  Believed believed_;
  std::vector<Sample> samples_; ///< by point, as are the next two
  std::vector<PinKind> kindOf_;
  std::vector<GroupKey> groupOf_;
  std::map<GroupKey, Group> groups_;
  double variantShare_ = 0.0;
  std::map<std::pair<double, double>, double> factors_;
};

} // namespace netmend::probing
