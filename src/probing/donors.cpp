#include "netmend/probing/donors.h"

#include <algorithm>
#include <cmath>

#include "densities.h"
#include "estimate.h"

namespace netmend {

using probing::Believed;
using probing::Densities;
using probing::Estimate;
using probing::GoodReading;
using probing::GoodReadings;

namespace {

constexpr std::size_t vouchers = 3; ///< other boards that it takes to set one aside

/// What one board read at a point, held against what the others make expect there.
struct Held {
  std::size_t point = 0;
  const GoodReading* good = nullptr;
  std::size_t others = 0;
  double logRatio = 0.0; ///< of the likelihoods, faulty against good
};

class Donors {
public:
  Donors(const GoodReadings& readings, const Lookup* lookup, const ProbingData& data)
      : readings_(readings), lookup_(lookup), data_(data) {
    believed_.without.resize(readings.walks().size());
    believed_.parted.resize(readings.size());
    for (std::size_t w = 0; w < readings.walks().size(); ++w)
      if (readings.walks()[w].specimen == Specimen::good) donors_.push_back(w);
    findOthers();
  }

  /// The worst first, until those left vouch for each other.
  std::vector<DonorSetAside> setAside() {
    std::vector<DonorSetAside> out;
    while (const auto worst = worstDonor()) {
      believed_.without[worst->walk] = true;
      std::erase(donors_, worst->walk);
      findOthers();
      out.push_back(*worst);
    }
    return out;
  }

  /// Where a board reads as none beside the others does, at a rate of one such point in so many sets of good
  /// boards as there is one flag in good walks.
  void findDisagreements() {
    std::size_t tests = 0;
    for (std::size_t d = 0; d < others_.size(); ++d)
      for (std::size_t i = 0; i < readings_.size(); ++i)
        if (others_[d].boardsAt(i) > 0 && readBy(donors_[d], i) != nullptr) ++tests;
    const double rate = ratePerPoint(tests, data_.rules);
    for (std::size_t d = 0; d < others_.size(); ++d)
      for (std::size_t i = 0; i < readings_.size(); ++i)
        if (const GoodReading* good = readBy(donors_[d], i); good != nullptr) {
          const auto expected = others_[d].at(i);
          if (!expected) continue;
          const Reading& reading = readings_.readingOf(*good);
          const auto* meter = findMeter(data_.meters, reading.meter);
          if (isFlag(judgeReading(reading, &*expected, meter, data_.rules, rate).kind))
            believed_.parted[i] = true;
        }
  }

  [[nodiscard]] const Believed& believed() const { return believed_; }

private:
  /// What is expected from the others, for each donor.
  void findOthers() {
    others_.clear();
    if (donors_.size() < 2) return;
    for (const std::size_t walk : donors_) {
      Believed others = believed_;
      others.without[walk] = true;
      others_.emplace_back(readings_, lookup_, data_, std::move(others));
    }
  }

  [[nodiscard]] const GoodReading* readBy(std::size_t walk, std::size_t point) const {
    const auto& all = readings_.at(point);
    const auto it = std::find_if(all.begin(), all.end(), [&](const auto& g) { return g.walk == walk; });
    return it == all.end() ? nullptr : &*it;
  }

  /// The donor's readings at points where enough others were read.
  [[nodiscard]] std::vector<Held> heldAgainst(std::size_t walk, const Estimate& others) const {
    std::vector<Held> out;
    for (std::size_t i = 0; i < readings_.size(); ++i) {
      const GoodReading* good = readBy(walk, i);
      if (good == nullptr || others.boardsAt(i) < vouchers) continue;
      const Reading& reading = readings_.readingOf(*good);
      const FaultReadings* faults = data_.rules.find(reading.mode);
      if (faults == nullptr) continue;
      const Densities densities(*others.at(i), findMeter(data_.meters, reading.meter), *faults);
      const double ratio = good->value ? densities.ratio(*good->value) : densities.ratioOverLimit();
      out.push_back({i, good, others.boardsAt(i), std::log(ratio)});
    }
    return out;
  }

  /// ln of how much likelier a board with faults, or of another variant, reads so than a good one: the share
  /// q of its points that read otherwise is anything from one of them to all, even on the scale of its
  /// logarithm.
  [[nodiscard]] static double evidence(const std::vector<Held>& held) {
    constexpr int steps = 12;
    const auto points = static_cast<double>(held.size());
    std::vector<double> logs;
    for (int step = 0; step <= steps; ++step) {
      const double share = std::pow(points, -static_cast<double>(step) / steps);
      double sum = 0.0;
      for (const Held& h : held) { // ln(1 − q + q·ratio), whatever the ratio's size
        const double odd = std::log(share) + h.logRatio;
        const double even = share < 1.0 ? std::log1p(-share) : -1e300;
        sum += std::max(odd, even) + std::log1p(std::exp(-std::abs(odd - even)));
      }
      logs.push_back(sum);
    }
    const double best = *std::max_element(logs.begin(), logs.end());
    double mean = 0.0;
    for (const double each : logs)
      mean += std::exp(each - best) / (steps + 1);
    return best + std::log(mean);
  }

  [[nodiscard]] std::optional<DonorSetAside> worstDonor() const {
    const DonorRules& rules = data_.rules.donors;
    const double prior = std::log(rules.badShare / (1.0 - rules.badShare));
    std::optional<DonorSetAside> worst;
    if (donors_.size() <= vouchers) return worst;
    for (std::size_t d = 0; d < donors_.size(); ++d) {
      const std::size_t walk = donors_[d];
      const Estimate& others = others_[d];
      const auto held = heldAgainst(walk, others);
      if (held.empty()) continue;
      const double logOdds = prior + evidence(held);
      if (logOdds < std::log(rules.setAsideOdds) || (worst && logOdds <= worst->logOdds)) continue;
      worst = reasons(walk, held, others, logOdds);
    }
    return worst;
  }

  /// The points that tell it, the most telling first.
  [[nodiscard]] DonorSetAside reasons(std::size_t walk, std::vector<Held> held, const Estimate& others,
                                      double logOdds) const {
    DonorSetAside out{
        walk, readings_.walks()[walk].title, readings_.walks()[walk].serial, logOdds, held.size(), {}};
    std::stable_sort(held.begin(), held.end(),
                     [](const Held& a, const Held& b) { return a.logRatio > b.logRatio; });
    for (const Held& h : held) {
      if (!out.odd.empty() && h.logRatio < std::log(tellingRatio)) break;
      out.odd.push_back({readings_.readingOf(*h.good), *others.at(h.point)});
    }
    return out;
  }

  static constexpr double tellingRatio = 10.0; ///< at which a point tells by itself

  const GoodReadings& readings_;
  const Lookup* lookup_;
  const ProbingData& data_;
  Believed believed_;
  std::vector<std::size_t> donors_; ///< walks of good boards that are still believed
  std::vector<Estimate> others_;    ///< parallel to them
};

std::string boardOf(std::span<const Walk> walks, const Lookup* lookup) {
  if (lookup != nullptr) return lookup->board().info.uuid;
  return walks.empty() ? std::string() : walks.front().boardUuid;
}

void putEntered(ExpectedTable& table, std::span<const Walk> walks, const Lookup* lookup) {
  for (const auto& walk : walks) {
    for (auto entry : walk.entered) {
      if (walk.boardUuid != table.boardUuid) entry.point.pin = entry.other.pin = PinId{};
      const auto kind =
          lookup != nullptr && entry.point.pin ? pinKind(*lookup, entry.point.pin) : PinKind::unknown;
      table.put(entry.point, {entry.mode, entry.other, entry.condition, std::nullopt},
                expectedFromEntry(entry, kind));
    }
  }
}

} // namespace

ExpectedTable expectedFromWalks(std::span<const Walk> walks, const Lookup* lookup, const ProbingData& data) {
  ExpectedTable table;
  table.boardUuid = boardOf(walks, lookup);
  const GoodReadings readings(walks, data.meters, table.boardUuid);
  Donors donors(readings, lookup, data);
  table.setAside = donors.setAside();
  donors.findDisagreements();
  Estimate estimate(readings, lookup, data, donors.believed());
  for (std::size_t i = 0; i < readings.size(); ++i)
    if (auto expected = estimate.withShown(i))
      table.put(readings.points()[i].point, readings.points().setting(readings.points()[i].setting),
                std::move(*expected));
  putEntered(table, walks, lookup);
  return table;
}

} // namespace netmend
