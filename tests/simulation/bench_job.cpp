#include "simulation/bench_job.h"

#include <algorithm>
#include <cmath>

#include "netmend/board/access.h"

namespace netmend::simulation {

namespace {

/// A fresh stream for each purpose, so that one thing drawn more moves no other.
Random stream(std::uint64_t seed, std::uint64_t purpose) {
  std::seed_seq mixed{static_cast<std::uint32_t>(seed), static_cast<std::uint32_t>(seed >> 32),
                      static_cast<std::uint32_t>(purpose), 0x5eedU};
  return Random(mixed);
}

bool reachable(const Lookup& lookup, PinId pin) {
  for (const PadId pad : lookup.padsOf(pin)) {
    const auto access = accessOf(lookup.board(), *lookup.board().pads.find(pad));
    if (access.known() && access.value == Access::open) return true;
  }
  return false;
}

/// Walks of one to three good boards at one to three pins.
void walkGoodBoards(BenchJob& job, const Lookup& lookup, const MeterProfile& meter, Random& random) {
  const MeterMode& mode = *meter.mode(ReadingMode::diode);
  const Source source = sourceOf(mode);
  std::vector<PinId> pins;
  for (const LinePin& pin : job.line->pins) {
    const double volts = idealDiode(*job.line, job.design, {}, 25.0, pin.spot, source);
    if (volts < 0.95 * mode.displayLimit() && reachable(lookup, pin.pin)) pins.push_back(pin.pin);
  }
  std::shuffle(pins.begin(), pins.end(), random);
  const double several = between(random, 0.0, 1.0);
  const std::size_t most = several < 0.5 ? 1 : several < 0.8 ? 2 : 3;
  pins.resize(std::min(pins.size(), most));
  job.known = pins;
  const int boards = std::uniform_int_distribution<int>(1, 3)(random);
  for (int board = 0; board < boards; ++board) {
    Walk walk;
    walk.specimen = Specimen::good;
    walk.meter = meter.id;
    walk.boardUuid = lookup.board().info.uuid;
    const Design good = onOneBoard(job.design, job.population, random);
    for (const PinId pin : pins) {
      Reading reading;
      reading.point = {pin, pinLabel(lookup.board(), pin)};
      reading.meter = meter.id;
      reading.settling = Settling::settled;
      const double volts = idealDiode(*job.line, good, {}, 25.0, *job.line->copper.leg(pin), source);
      reading.value = shown(mode, volts, job.goodBias, normal(random, job.readingSpread));
      walk.points.push_back(reading.point);
      walk.readings.push_back(reading);
    }
    job.good.push_back(std::move(walk));
  }
}

/// Ohms between two spots, ground being whatever the circuit makes of it.
double ohmsBetween(const BenchJob& job, std::size_t red, std::size_t black, const Source& source,
                   std::size_t taken) {
  const LineCircuit at = circuitOf(*job.line, job.specimen, job.fault, job.celsius, taken);
  const auto a = at.nodeOf[red], b = at.nodeOf[black];
  if (a == b) return 0.0;
  const auto volts = operatingPoint(at.circuit, source, a, b);
  return volts[a] / std::max(meterCurrent(source, volts[a]), 1e-12);
}

} // namespace

std::optional<double> shown(const MeterMode& mode, double value, const MeterBias& bias, double noise) {
  if (value > mode.displayLimit()) return std::nullopt;
  const auto range = std::find_if(mode.ranges.begin(), mode.ranges.end(),
                                  [&](const MeterRange& r) { return std::abs(value) <= r.fullScale; });
  const double off = value * (1.0 + 0.01 * range->percent * bias.gain) +
                     range->digits * range->resolution * bias.zero + noise;
  if (off > mode.displayLimit()) return std::nullopt;
  return std::max(0.0, range->resolution * std::round(off / range->resolution));
}

MeterBias drawBias(Random& random) {
  const double gain = between(random, -1.0, 1.0);
  return {gain, between(random, -1.0, 1.0)};
}

BenchTemperature drawTemperature(Random& random) {
  BenchTemperature out;
  out.told = chance(random, 0.5);
  out.celsius = out.told ? between(random, 15.0, 35.0) : 25.0 + normal(random, untoldSpread);
  return out;
}

Source sourceOf(const MeterMode& mode) {
  Source out;
  out.testCurrent = mode.testCurrent ? mode.testCurrent->value : 1e-3;
  out.openVolts = mode.compliance ? mode.compliance->value : 3.0;
  // So that the test current holds up to two thirds of the open voltage.
  out.outputOhms = out.openVolts / (3.0 * out.testCurrent);
  return out;
}

double idealDiode(const BoardLine& line, const Design& specimen, const Fault& fault, double celsius,
                  std::size_t spot, const Source& source, std::size_t taken) {
  const LineCircuit at = circuitOf(line, specimen, fault, celsius, taken);
  return operatingPoint(at.circuit, source, at.nodeOf[spot])[at.nodeOf[spot]];
}

std::optional<BenchJob> drawJob(const Lookup& lookup, std::shared_ptr<const BoardLine> line,
                                const FaultShares& shares, const MeterProfile& meter, std::uint64_t seed,
                                Seeding seeding) {
  BenchJob job;
  job.seed = seed;
  job.net = line->nets.front();
  job.line = std::move(line);
  Random random = stream(seed, 1);
  job.population = drawPopulation(random);
  job.design = drawDesign(lookup, *job.line, job.population, shares, random);
  job.specimen = onOneBoard(job.design, job.population, random);
  Random meters = stream(seed, 2);
  job.bias = drawBias(meters);
  job.goodBias = chance(meters, sameMeterShare) ? job.bias : drawBias(meters);
  const BenchTemperature bench = drawTemperature(meters);
  job.celsius = bench.celsius;
  job.toldCelsius = bench.told;
  job.slipped = shares.slipped;
  job.readingSpread = shares.readingSpread;
  Random walks = stream(seed, 3);
  walkGoodBoards(job, lookup, meter, walks);
  if (job.known.empty()) return std::nullopt;
  Random faults = stream(seed, 4);
  job.fault = drawFault(*job.line, job.design, shares, faults, seeding);
  return job;
}

BenchJob withoutErrors(BenchJob job, const Lookup& lookup, const MeterProfile& meter) {
  job.specimen = job.design;
  job.population.boardSpread = 0.0;
  job.slipped = job.readingSpread = 0.0;
  job.bias = job.goodBias = {};
  job.celsius = 25.0;
  job.toldCelsius = true;
  job.good.clear();
  Random walks = stream(job.seed, 3);
  walkGoodBoards(job, lookup, meter, walks);
  return job;
}

std::optional<std::size_t> spotAt(const BoardLine& line, const Lookup& lookup, const CopperObject& object,
                                  std::optional<Point> at, int layer, const std::optional<Crack>& crack) {
  const Copper& copper = line.copper;
  if (const auto* pin = std::get_if<PinId>(&object)) return spotOf(copper, lookup, *pin);
  if (const auto* pad = std::get_if<PadId>(&object)) return spotOfPad(copper, *pad);
  if (const auto* via = std::get_if<ViaId>(&object)) return spotOfVia(copper, *via, layer);
  if (const auto* track = std::get_if<TrackId>(&object); track && at)
    return spotOfTrack(copper, lookup.board(), *track, *at, crack);
  return std::nullopt;
}

std::optional<Shown> read(const BenchJob& job, const Lookup& lookup, const MeterProfile& meter,
                          const ProbePlace& place, const ProbePlace* other, ReadingMode mode,
                          std::size_t taken) {
  const MeterMode* how = meter.mode(mode);
  const auto red = spotAt(*job.line, lookup, place.object, place.at, place.layer, job.fault.crack);
  const auto black = other
                         ? spotAt(*job.line, lookup, other->object, other->at, other->layer, job.fault.crack)
                         : std::optional<std::size_t>(0);
  if (!how || !red || !black) return std::nullopt;
  Random random = stream(job.seed, 100 + taken);
  const bool slip = chance(random, job.slipped);
  const bool missed = chance(random, 0.5);
  const double neighbour = between(random, 0.1, 0.9);
  const double noise = normal(random, 1.0);
  const double contact = between(random, 0.0, 0.3);
  Shown shownHere{{}, place, other ? std::optional(*other) : std::nullopt, slip};
  Reading& out = shownHere.reading;
  out.point = {place.pin, place.label};
  if (other) out.other = {other->pin, other->label};
  out.mode = mode;
  out.meter = meter.id;
  out.settling = Settling::settled;
  if (job.toldCelsius) out.condition.temperature = Celsius(job.celsius);
  const Source source = sourceOf(*how);
  if (mode == ReadingMode::diode && !other) {
    const double volts = idealDiode(*job.line, job.specimen, job.fault, job.celsius, *red, source, taken);
    if (slip && missed) return shownHere;
    out.value = shown(*how, slip ? neighbour : volts, job.bias, job.readingSpread * noise);
    return shownHere;
  }
  if (mode != ReadingMode::ohms && mode != ReadingMode::continuity) return std::nullopt;
  double ohms = 0.0;
  if (other) {
    ohms = ohmsBetween(job, *red, *black, source, taken);
  } else {
    const double volts = idealDiode(*job.line, job.specimen, job.fault, job.celsius, *red, source, taken);
    ohms = volts / std::max(meterCurrent(source, volts), 1e-12);
  }
  if (slip) return shownHere;
  out.value = shown(*how, ohms + 2.0 * meter.leadResistance.value * contact + contact, job.bias, 0.0);
  return shownHere;
}

} // namespace netmend::simulation
