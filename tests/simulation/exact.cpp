#include "simulation/exact.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <map>
#include <numbers>
#include <set>

namespace netmend::simulation {

namespace {

constexpr std::size_t mostThings = 5; ///< with a fair chance of something behind
constexpr double fairChance = 0.05;
constexpr std::size_t wantedDraws = 20000; ///< that read what good boards read
constexpr std::size_t mostTries = 300000;
constexpr double fewestEffective = 25.0;
constexpr double crackEvery = 6.0; ///< mm
constexpr double slipLow = 0.1, slipHigh = 0.9;

double density(double off, double spread) {
  return std::exp(-0.5 * off * off / (spread * spread)) / (spread * std::sqrt(2.0 * std::numbers::pi));
}

double spreadOf(const MeterMode& mode, double readingSpread) {
  const double count = mode.ranges.front().resolution;
  return std::sqrt(readingSpread * readingSpread + count * count / 12.0);
}

/// What a meter with that bias shows of volts, before noise and whole counts.
double biased(const MeterMode& mode, const MeterBias& bias, double volts) {
  const MeterRange& range = mode.ranges.front();
  return volts * (1.0 + 0.01 * range.percent * bias.gain) + range.digits * range.resolution * bias.zero;
}

/// Things as a node sees them.
struct Node {
  std::vector<JunctionLaw> laws;
  double siemens = 0.0;
  void add(const Behind& behind, double celsius) {
    if (behind.kind == Behind::Kind::junction) laws.push_back(lawAt(behind.junction, celsius));
    if (behind.kind == Behind::Kind::resistance) siemens += 1.0 / behind.ohms;
  }
};

} // namespace

double oneNode(const std::vector<JunctionLaw>& laws, double siemens, const Source& source) {
  const double load = siemens + 1.0 / source.inputOhms;
  double low = 0.0, high = source.openVolts;
  double volts = std::min(high, source.testCurrent / load);
  if (!laws.empty()) volts = std::min(volts, 0.6);
  for (int round = 0; round < 80; ++round) {
    double into = meterCurrent(source, volts) - load * volts;
    double slope =
        load +
        (volts > source.openVolts - source.testCurrent * source.outputOhms ? 1.0 / source.outputOhms : 0.0);
    for (const JunctionLaw& law : laws) {
      const JunctionFlow flow = flowThrough(law, volts);
      into -= flow.amperes;
      slope += flow.slope;
    }
    (into > 0.0 ? low : high) = volts;
    double next = volts + into / slope;
    if (!(next > low && next < high)) next = 0.5 * (low + high);
    if (std::abs(next - volts) < 1e-7) return next;
    volts = next;
  }
  return volts;
}

struct ExactDraws::Effect {
  std::vector<std::uint64_t> touched; ///< by reading: things on its piece
  std::vector<int> joined;            ///< by reading: -1 to ground, 0 parted, 1 joined
  bool shorted = false;
  std::uint64_t dead = 0; ///< thing that is dead
  friend auto operator<=>(const Effect&, const Effect&) = default;
};

struct ExactDraws::Suspected {
  std::vector<Fault> faults; ///< the first is none
  std::vector<double> weight;
  double weightOfAll = 0.0; ///< but dead pins
  std::map<Effect, std::vector<std::size_t>> byEffect;
};

/// What an ideal meter finds across things, each set worked out once.
class ExactDraws::Volts {
public:
  Volts(const Draw& draw, const Source& source) : draw_(draw), source_(source) {}
  double of(const Effect& effect, std::size_t reading) {
    const std::uint64_t things = effect.touched[reading] & ~effect.dead;
    if (effect.shorted) return source_.testCurrent * draw_.shortOhms;
    const auto [found, fresh] = known_.emplace(things, 0.0);
    if (fresh) {
      Node node;
      for (std::size_t i = 0; i < draw_.behind.size(); ++i)
        if (things >> i & 1U) node.add(draw_.behind[i], draw_.celsius);
      found->second = oneNode(node.laws, node.siemens, source_);
    }
    return found->second;
  }

private:
  const Draw& draw_;
  const Source& source_;
  std::map<std::uint64_t, double> known_;
};

ExactDraws::ExactDraws(const BenchJob& job, const Lookup& lookup, const FaultShares& shares,
                       const MeterProfile& meter)
    : job_(job), lookup_(lookup), shares_(shares), mode_(*meter.mode(ReadingMode::diode)),
      source_(sourceOf(mode_)) {
  std::size_t likely = job.line->exits.size();
  for (const LinePin& pin : job.line->pins) {
    const TerminationShare share = shares.of(pin.kind);
    if (share.junction + share.resistive > fairChance) ++likely;
    spots_.push_back(pin.spot);
  }
  std::set<NetId> beyond;
  bool apart = true; // two exits to one rail hang together there
  for (const LineExit& exit : job.line->exits) {
    spots_.push_back(exit.spot);
    if (exit.to != LineExit::To::ground) apart = apart && beyond.insert(exit.net).second;
  }
  small_ = job.line->oneNode() && apart && likely <= mostThings && spots_.size() <= 64;
  if (small_) drawAll();
}

std::vector<Behind> ExactDraws::thingsOf(const Design& design) const {
  std::vector<Behind> out = design.behind;
  for (std::size_t i = 0; i < job_.line->exits.size(); ++i) {
    const LineExit& exit = job_.line->exits[i];
    Behind behind{Behind::Kind::resistance, {}, design.exitOhms[i]};
    if (exit.to == LineExit::To::supply) behind.ohms += design.rail.at(exit.net);
    if (exit.to == LineExit::To::signal) {
      const Behind& far = design.far.at(exit.net);
      if (far.kind == Behind::Kind::nothing) behind = {};
      if (far.kind == Behind::Kind::resistance) behind.ohms += far.ohms;
      if (far.kind == Behind::Kind::junction) {
        // The drop that a milliampere would make, resistor included.
        behind = far;
        behind.junction.drop += 1e-3 * design.exitOhms[i];
        behind.junction.series += design.exitOhms[i];
      }
    }
    out.push_back(behind);
  }
  return out;
}

/// A design with the chance that good boards read what they read; accepted by the exponent of that.
std::optional<ExactDraws::Draw> ExactDraws::drawOne(Random& random) const {
  const Design design = drawDesign(lookup_, *job_.line, job_.population, shares_, random);
  Draw out;
  out.bias = drawBias(random);
  const MeterBias goodBias = chance(random, sameMeterShare) ? out.bias : drawBias(random);
  Node node;
  double slopes = 0.0, squares = 0.0;
  const auto things = thingsOf(design);
  for (const Behind& thing : things)
    node.add(thing, 25.0);
  const double volts = oneNode(node.laws, node.siemens, source_);
  for (const JunctionLaw& law : node.laws) {
    const double slope = flowThrough(law, volts).slope;
    slopes += slope;
    squares += slope * slope;
  }
  const double moved =
      job_.population.boardSpread * std::sqrt(squares) / (slopes + node.siemens + 1e-9); // V, by board
  const double noise = spreadOf(mode_, job_.readingSpread);
  double exponent = 0.0, scale = 1.0;
  for (const Walk& walk : job_.good) {
    // Readings of one board share its own move; how they lie about their mean is the same for all draws.
    double sum = 0.0;
    for (const Reading& reading : walk.readings) {
      if (!reading.value || volts > mode_.displayLimit()) return std::nullopt;
      sum += *reading.value - biased(mode_, goodBias, volts);
    }
    const auto n = static_cast<double>(walk.readings.size());
    const double variance = moved * moved + noise * noise / n;
    exponent += 0.5 * sum * sum / (n * n) / variance;
    scale *= noise / std::sqrt(n * variance);
  }
  if (!chance(random, std::exp(-exponent))) return std::nullopt;
  out.weight = scale;
  out.shortOhms = std::pow(10.0, normal(random, shortDecades));
  out.behind = thingsOf(onOneBoard(design, job_.population, random));
  out.celsius = job_.toldCelsius ? job_.celsius : 25.0 + normal(random, untoldSpread);
  return out;
}

void ExactDraws::drawAll() {
  Random random(job_.seed ^ 0xe8ac7ULL);
  for (std::size_t attempt = 0; attempt < mostTries && draws_.size() < wantedDraws; ++attempt)
    if (auto draw = drawOne(random)) draws_.push_back(std::move(*draw));
  if (draws_.size() < 500) draws_.clear();
}

std::optional<ExactDraws::Effect> ExactDraws::effectOf(const Fault& fault,
                                                       const std::vector<Taken>& taken) const {
  Effect out;
  std::vector<std::size_t> without;
  if (fault.crack) without.push_back(fault.crack->bond);
  const auto label = pieces(job_.line->copper, without);
  out.shorted = fault.family == FaultFamily::shortToGround;
  if (fault.family == FaultFamily::deadPin) out.dead = std::uint64_t{1} << fault.pin;
  for (const Taken& one : taken) {
    const auto spot = [&](const ProbePlace& place) {
      return spotAt(*job_.line, lookup_, place.object, place.at, place.layer, fault.crack);
    };
    const auto red = spot(one.shown.red);
    const auto black = one.shown.black ? spot(*one.shown.black) : red;
    if (!red || !black) return std::nullopt;
    std::uint64_t touched = 0;
    for (std::size_t thing = 0; thing < spots_.size(); ++thing)
      if (label[spots_[thing]] == label[*red]) touched |= std::uint64_t{1} << thing;
    out.touched.push_back(touched);
    out.joined.push_back(!one.shown.black ? -1 : label[*red] == label[*black] ? 1 : 0);
  }
  return out;
}

namespace {

/// Chance (or density) of a diode reading where an ideal meter would find these volts.
double likelihoodOf(const MeterMode& mode, const MeterBias& bias, double volts, double noise, double slipped,
                    const Reading& reading) {
  const bool over = volts > mode.displayLimit();
  if (!reading.value) return 0.5 * slipped + (over ? 1.0 - slipped : 0.0);
  const bool neighbour = *reading.value > slipLow - 0.01 && *reading.value < slipHigh + 0.02;
  const double slip = neighbour ? 0.5 * slipped / (slipHigh - slipLow) : 1e-6;
  if (over) return slip;
  const double off = *reading.value - biased(mode, bias, volts);
  const double count = mode.ranges.front().resolution;
  // Below zero the display shows zero.
  const double proper = *reading.value < count / 2
                            ? std::erfc(-(off + count / 2) / (noise * std::numbers::sqrt2)) / (2 * count)
                            : density(off, noise);
  return slip + (1.0 - slipped) * proper;
}

bool understood(const Taken& one) {
  const Reading& r = one.shown.reading;
  const bool between = one.shown.black.has_value();
  if (!between) return r.mode == ReadingMode::diode;
  return r.mode == ReadingMode::continuity || !r.value || *r.value <= 100.0;
}

} // namespace

std::optional<ExactDraws::Suspected> ExactDraws::suspected(const std::vector<Taken>& taken) const {
  if (!std::all_of(taken.begin(), taken.end(), understood)) return std::nullopt;
  Design everything = job_.design; // any pin may be dead; whether it is a junction each draw says
  for (Behind& behind : everything.behind)
    behind.kind = Behind::Kind::junction;
  Suspected out;
  const auto add = [&](const Fault& fault, double share) {
    const auto effect = effectOf(fault, taken);
    if (!effect) return;
    out.byEffect[*effect].push_back(out.faults.size());
    out.faults.push_back(fault);
    out.weight.push_back(share);
    if (fault.family != FaultFamily::deadPin) out.weightOfAll += share;
  };
  add({}, 0.0); // sound, whose share is its own
  for (const auto& [fault, share] : allFaults(*job_.line, everything, shares_)) {
    if (!fault.crack) {
      add(fault, share);
      continue;
    }
    const Bond& bond = job_.line->copper.bonds[fault.crack->bond];
    const double from = job_.line->copper.spots[bond.a].along, to = job_.line->copper.spots[bond.b].along;
    const int cracks = std::max(1, static_cast<int>(std::ceil(bond.mm / crackEvery)));
    for (int i = 0; i < cracks; ++i) {
      Fault part = fault;
      part.crack->along = from + (i + 0.5) / cracks * (to - from);
      add(part, share / cracks);
    }
  }
  return out;
}

std::uint64_t ExactDraws::junctionsOf(const Draw& draw) const {
  std::uint64_t out = 0;
  for (std::size_t i = 0; i < job_.line->pins.size(); ++i)
    if (draw.behind[i].kind == Behind::Kind::junction) out |= std::uint64_t{1} << i;
  return out;
}

double ExactDraws::likelihood(const Draw& draw, const Effect& effect, const std::vector<Taken>& taken,
                              Volts& volts) const {
  const double noise = spreadOf(mode_, job_.readingSpread);
  double out = draw.weight;
  for (std::size_t i = 0; i < taken.size() && out > 1e-40; ++i) {
    const Reading& reading = taken[i].shown.reading;
    if (effect.joined[i] < 0)
      out *= likelihoodOf(mode_, draw.bias, volts.of(effect, i), noise, job_.slipped, reading);
    else if (effect.joined[i] == 1)
      out *= reading.value ? 1.0 - job_.slipped : job_.slipped;
    else
      out *= reading.value ? 1e-6 : 1.0;
  }
  return out;
}

std::optional<ExactAnswer> ExactDraws::after(const std::vector<Taken>& taken) const {
  const auto all = suspected(taken);
  if (!all) return std::nullopt;
  ExactAnswer out{all->faults, std::vector<double>(all->faults.size(), 0.0), 0.0};
  double total = 0.0, square = 0.0;
  for (const Draw& draw : draws_) {
    const std::uint64_t junctions = junctionsOf(draw);
    const double weights = all->weightOfAll + shares_.deadPin * std::popcount(junctions);
    Volts volts(draw, source_);
    double ofDraw = 0.0;
    for (const auto& [effect, members] : all->byEffect) {
      if (effect.dead & ~junctions) continue;
      const double likely = likelihood(draw, effect, taken, volts);
      for (const std::size_t f : members) {
        const double prior = f == 0 ? shares_.sound : (1.0 - shares_.sound) * all->weight[f] / weights;
        out.probability[f] += prior * likely;
        ofDraw += prior * likely;
      }
    }
    total += ofDraw;
    square += ofDraw * ofDraw;
  }
  if (total <= 0.0) return std::nullopt;
  for (double& p : out.probability)
    p /= total;
  out.effective = total * total / square;
  return out.effective >= fewestEffective ? std::optional(std::move(out)) : std::nullopt;
}

std::optional<double> ExactDraws::contradiction(const std::vector<Taken>& taken) const {
  const auto all = suspected(taken);
  if (!all || draws_.empty()) return std::nullopt;
  const double noise = spreadOf(mode_, job_.readingSpread);
  constexpr double never = 1e3; ///< sigmas of a reading that a fault rules out
  double least = never;
  for (const Draw& draw : draws_) {
    const std::uint64_t junctions = junctionsOf(draw);
    Volts volts(draw, source_);
    for (const auto& [effect, members] : all->byEffect) {
      if (effect.dead & ~junctions) continue;
      double worst = 0.0;
      for (std::size_t i = 0; i < taken.size() && worst < least; ++i) {
        const Reading& reading = taken[i].shown.reading;
        if (effect.joined[i] >= 0) {
          worst = std::max(worst, (effect.joined[i] == 1) == reading.value.has_value() ? 0.0 : never);
          continue;
        }
        const double v = volts.of(effect, i);
        const bool over = v > mode_.displayLimit();
        if (over || !reading.value)
          worst = std::max(worst, over == !reading.value ? 0.0 : never);
        else
          worst = std::max(worst, std::abs(*reading.value - biased(mode_, draw.bias, v)) / noise);
      }
      least = std::min(least, worst);
    }
  }
  return least;
}

double ExactAnswer::of(const BoardLine& line, const Mending& mending) const {
  double out = 0.0;
  for (std::size_t f = 0; f < faults.size(); ++f)
    if (probability[f] > 1e-7 && restores(line, faults[f], mending)) out += probability[f];
  return out;
}

} // namespace netmend::simulation
