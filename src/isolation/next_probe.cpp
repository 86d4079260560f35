#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <numeric>
#include <set>
#include <tuple>

#include "entropy.h"
#include "likelihood.h"
#include "netmend/isolation/isolation.h"
#include "outcome_rows.h"
#include "posterior.h"
#include "statistics.h"

namespace netmend {

namespace {

constexpr double negligible = 1e-7;    ///< classes below this probability do not change the choice
constexpr double leastBits = 0.004;    ///< what is below is nothing but rounding and slips
constexpr std::size_t mostPaired = 64; ///< places considered as ends of a reading from point to point

struct Reachable {
  std::size_t place;
  std::size_t cell;
  double seconds;
};

/// Classes that still count, in the groups that the caller's repairs make of them.
struct Field {
  bool lifts = false; ///< the likeliest repair takes a part off
  std::vector<std::size_t> classes;
  std::vector<double> probability; ///< parallel, sums to 1
  std::vector<std::size_t> group;  ///< parallel, dense
  std::vector<double> groupProbability;
  std::vector<std::size_t> groupSize;

  [[nodiscard]] double bestGuess() const {
    return *std::max_element(groupProbability.begin(), groupProbability.end());
  }
};

Field fieldOf(const Isolation& isolation, const std::vector<double>& shares, const RepairView& repairs) {
  Field field;
  std::vector<std::size_t> order(isolation.classes.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return shares[a] > shares[b]; });
  std::map<std::size_t, std::size_t> dense;
  double held = 0.0;
  for (const std::size_t c : order) {
    if (held > 1.0 - negligible || !(shares[c] > 0.0)) break;
    held += shares[c];
    const bool given = c < repairs.groupOf.size();
    const std::size_t key = given ? repairs.groupOf[c] : c + (std::size_t{1} << 40);
    const std::size_t group = dense.try_emplace(key, dense.size()).first->second;
    if (group == field.groupProbability.size()) {
      field.groupProbability.push_back(0.0);
      field.groupSize.push_back(0);
    }
    field.classes.push_back(c);
    field.probability.push_back(shares[c]);
    field.group.push_back(group);
    field.groupProbability[group] += shares[c];
    ++field.groupSize[group];
  }
  double sum = 0.0;
  for (const double p : field.probability)
    sum += p;
  for (auto& p : field.probability)
    p /= sum;
  for (auto& p : field.groupProbability)
    p /= sum;
  const auto best = static_cast<std::size_t>(
      std::max_element(field.groupProbability.begin(), field.groupProbability.end()) -
      field.groupProbability.begin());
  const auto first = std::find(field.group.begin(), field.group.end(), best) - field.group.begin();
  field.lifts = isolation.classes[field.classes[static_cast<std::size_t>(first)]].kind == FaultKind::deadPin;
  return field;
}

/// How often a reading was taken at a cell, or between two; ground is `noCell`.
using TimesRead = std::map<std::tuple<std::size_t, std::size_t, ReadingMode>, int>;
TimesRead timesRead(const Isolation& isolation) {
  TimesRead result;
  const auto& cellOf = isolation.model->cellOfPlace;
  for (const auto& observation : isolation.observations) {
    const auto ends =
        std::minmax(cellOf[observation.place], observation.other ? cellOf[*observation.other] : noCell);
    ++result[{ends.first, ends.second, observation.reading.mode}];
  }
  return result;
}

constexpr int mostTimes = 2; ///< that one place is asked for: what was read twice is so

bool readEnough(const TimesRead& times, std::size_t a, std::size_t b, ReadingMode mode) {
  const auto found = times.find({std::min(a, b), std::max(a, b), mode});
  return found != times.end() && found->second >= mostTimes;
}

/// Of places that read the same under every hypothesis the one that costs least.
std::vector<Reachable> reachable(const Isolation& isolation, const ProbeLimits& limits) {
  const std::set<std::string> refused(limits.unreachable.begin(), limits.unreachable.end());
  std::map<std::size_t, Reachable> best;
  for (std::size_t i = 0; i < isolation.places.size(); ++i) {
    const auto& place = isolation.places[i];
    if (!place.effort || refused.contains(place.label)) continue;
    const Reachable here{i, isolation.model->cellOfPlace[i], place.effort->value};
    const auto [it, fresh] = best.try_emplace(here.cell, here);
    if (!fresh && here.seconds < it->second.seconds) it->second = here;
  }
  std::vector<Reachable> result;
  result.reserve(best.size());
  for (const auto& [cell, here] : best)
    result.push_back(here);
  return result;
}

struct Worth {
  double bits = 0.0;
  double betterGuess = 0.0;
};

template <class Row> Worth worthOf(TestWorth<Row>& test, const Field& field) {
  const auto sum = test.sum();
  return {sum.bits, std::max(0.0, sum.bestGuess - field.bestGuess())};
}

/// The work per place is classes × bins.
class DiodeWorth {
public:
  DiodeWorth(const Isolation& isolation, const Field& field)
      : field_(field), rows_(isolation, field.classes), test_(field.groupSize) {}

  Worth at(std::size_t cell) {
    test_.begin();
    for (std::size_t i = 0; i < field_.classes.size(); ++i)
      test_.add(field_.group[i], field_.probability[i], rows_.row(i, cell), rows_.rowBits(i, cell));
    return worthOf(test_, field_);
  }

private:
  const Field& field_;
  OutcomeRows rows_;
  TestWorth<OutcomeRows::Row> test_;
};

/// From point to point there are three outcomes: as along sound copper, OL, something else.
class BetweenWorth {
public:
  BetweenWorth(const Isolation& isolation, const Field& field)
      : isolation_(isolation), field_(field), test_(field.groupSize) {
    const double slipped = isolation.model->priors.slippedShare;
    joined_ = caseOf(1.0 - slipped, 0.5 * slipped);
    parted_ = caseOf(1e-3, (1.0 - slipped) * openReadsOverLimit + 0.5 * slipped);
    none_ = caseOf(noneJoined, noneParted);
  }

  [[nodiscard]] Worth of(std::size_t cellA, std::size_t cellB) {
    test_.begin();
    for (std::size_t i = 0; i < field_.classes.size(); ++i) {
      const std::size_t c = field_.classes[i];
      const Case& says = isolation_.model->effects[c].kind == FaultKind::noneOfThese ? none_
                         : together(*isolation_.model, c, cellA, cellB)              ? joined_
                                                                                     : parted_;
      test_.add(field_.group[i], field_.probability[i], says.chance, says.bits);
    }
    return worthOf(test_, field_);
  }

private:
  using Row = std::array<double, 3>;
  struct Case {
    Row chance{};
    double bits = 0.0;
  };
  static Case caseOf(double asSound, double overLimit) {
    const Row row{asSound, overLimit, 1.0 - asSound - overLimit};
    return {row, rowBits(row)};
  }

  const Isolation& isolation_;
  const Field& field_;
  Case joined_;
  Case parted_;
  Case none_;
  TestWorth<Row> test_;
};

ProbeProposal proposal(ReadingMode mode, std::size_t place, std::optional<std::size_t> other, double seconds,
                       Worth worth) {
  return {mode, place, other, Seconds(seconds), worth.bits, 60.0 * worth.bits / seconds, worth.betterGuess};
}

/// Evenly over the line, the cheap places first.
std::vector<Reachable> pairable(std::vector<Reachable> places) {
  if (places.size() <= mostPaired) return places;
  std::vector<double> seconds;
  seconds.reserve(places.size());
  for (const auto& here : places)
    seconds.push_back(here.seconds);
  std::nth_element(seconds.begin(), seconds.begin() + mostPaired, seconds.end());
  const double enough = seconds[mostPaired];
  std::erase_if(places, [&](const Reachable& here) { return here.seconds > enough; });
  std::vector<Reachable> result;
  for (std::size_t i = 0; i < mostPaired; ++i)
    result.push_back(places[i * places.size() / mostPaired]);
  return result;
}

/// The mode that shows this resistance: continuity where it does, else ohms.
std::optional<ReadingMode> betweenMode(const MeterProfile& meter, double ohms) {
  for (const ReadingMode mode : {ReadingMode::continuity, ReadingMode::ohms})
    if (const MeterMode* found = meter.mode(mode); found && 0.8 * found->displayLimit() > ohms) return mode;
  return std::nullopt;
}

void addBetween(const Isolation& isolation, const Field& field, const std::vector<Reachable>& places,
                const TimesRead& times, std::vector<ProbeProposal>& result) {
  const auto& model = *isolation.model;
  BetweenWorth worth(isolation, field);
  const auto ends = pairable(places);
  for (std::size_t a = 0; a < ends.size(); ++a)
    for (std::size_t b = a + 1; b < ends.size(); ++b) {
      const auto path = pathBetween(model, ends[a].cell, ends[b].cell, ReadingMode::ohms);
      const auto mode = betweenMode(model.meter, path.ohms);
      if (!mode || readEnough(times, ends[a].cell, ends[b].cell, *mode)) continue;
      const double seconds = ends[a].seconds + ends[b].seconds + model.efforts.secondLead.value;
      result.push_back(
          proposal(*mode, ends[a].place, ends[b].place, seconds, worth.of(ends[a].cell, ends[b].cell)));
    }
}

bool wasRead(const Isolation& isolation, const ProbeProposal& probe) {
  return std::any_of(
      isolation.observations.begin(), isolation.observations.end(), [&](const Observation& before) {
        const bool same = before.place == probe.place && before.other == probe.other;
        const bool turned = probe.other && before.other == probe.place && before.place == *probe.other;
        return before.reading.mode == probe.mode && (same || turned);
      });
}

/// Best first by what a minute brings. To take a reading again comes last, unless that alone is worth its
/// time.
void rank(const Isolation& isolation, Seconds wrongRepair, std::vector<ProbeProposal>& probes) {
  const auto last = [&](const ProbeProposal& probe) {
    return probe.again && wrongRepair.value * probe.betterGuess <= probe.effort.value;
  };
  for (auto& probe : probes)
    probe.again = wasRead(isolation, probe);
  std::stable_sort(probes.begin(), probes.end(), [&](const ProbeProposal& a, const ProbeProposal& b) {
    const bool lastA = last(a);
    return lastA != last(b) ? !lastA : a.bitsPerMinute > b.bitsPerMinute;
  });
}

/// Is going on worth its time? One probe may pay by itself; or it takes several, and their time, at the pace
/// of the best one, is less than what a wrong repair would cost on average.
void decide(const Field& field, Seconds wrongRepair, NextProbe& result) {
  result.bestGuess = field.bestGuess();
  result.openBits = entropyBits(field.groupProbability);
  result.wrongRepair = wrongRepair;
  result.stop = true;
  if (result.ranked.empty()) return;
  const auto& first = result.ranked.front();
  if (first.bits < leastBits) {
    result.why = ProbeAdvice::nothingTelling;
    return;
  }
  const double loss = wrongRepair.value * (1.0 - result.bestGuess);
  double gain = -1e300;
  for (const auto& probe : result.ranked)
    gain = std::max(gain, wrongRepair.value * probe.betterGuess - probe.effort.value);
  // No line is followed to its end by taking the same readings again.
  const double toTheEnd = first.again ? 1e300 : 60.0 * result.openBits / first.bitsPerMinute;
  result.stop = gain <= 0.0 && toTheEnd >= loss;
  result.why = result.stop ? ProbeAdvice::notWorthItsTime : ProbeAdvice::worthItsTime;
}

/// Between a sound line and a fault stands a single OL, which may be a slip: that reading comes first, at its
/// own place, which need not be the cheapest of its cell.
void askAgain(const Isolation& isolation, const StandingOverLimit& standing, NextProbe& result) {
  const auto& cellOf = isolation.model->cellOfPlace;
  const std::size_t place = isolation.observations[standing.observation].place;
  const auto again =
      std::find_if(result.ranked.begin(), result.ranked.end(), [&](const ProbeProposal& probe) {
        return cellOf[probe.place] == cellOf[place] && !probe.other;
      });
  const auto effort = isolation.places[place].effort;
  if (again == result.ranked.end() || !effort) return;
  const Worth worth{again->bits, again->betterGuess};
  *again = proposal(ReadingMode::diode, place, std::nullopt, effort->value, worth);
  again->again = true;
  std::rotate(result.ranked.begin(), again, again + 1);
  result.stop = false;
  result.why = ProbeAdvice::readAgain;
  result.standing = standing;
}

} // namespace

NextProbe nextProbe(const Isolation& isolation, const RepairView& repairs, const ProbeLimits& limits) {
  NextProbe result;
  auto doubtful = againstSound(isolation);
  if (doubtful && doubtful->repeated) doubtful = std::nullopt;
  const Field field = fieldOf(isolation, doubtful ? posteriorOf(isolation) : isolation.probability, repairs);
  const auto places = reachable(isolation, limits);
  const auto times = timesRead(isolation);
  if (isolation.model->bench && !places.empty()) {
    DiodeWorth worth(isolation, field);
    for (const auto& here : places)
      if (!readEnough(times, here.cell, noCell, ReadingMode::diode))
        result.ranked.push_back(
            proposal(ReadingMode::diode, here.place, std::nullopt, here.seconds, worth.at(here.cell)));
  }
  addBetween(isolation, field, places, times, result.ranked);
  const auto& efforts = isolation.model->efforts;
  const Seconds wrongRepair =
      repairs.wrongRepair.value_or(field.lifts ? efforts.wrongLift : efforts.wrongRepair);
  rank(isolation, wrongRepair, result.ranked);
  decide(field, wrongRepair, result);
  if (doubtful) askAgain(isolation, *doubtful, result);
  if (result.ranked.size() > limits.most) result.ranked.resize(limits.most);
  for (auto& probe : result.ranked)
    if (!probe.other) probe.expected = predictDiode(isolation, probe.place);
  return result;
}

} // namespace netmend
