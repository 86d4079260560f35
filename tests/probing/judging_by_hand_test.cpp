#include <array>
#include <cmath>
#include <numbers>

#include <boost/math/distributions/students_t.hpp>

#include "netmend/probing/comparison.h"
#include "support.h"

// The judge's arithmetic once more, written down from docs/methods/probing.md and not from its source: what
// good and faulty boards read as densities on the comparison scale, their ratio, and by summing up thousands
// of small cells the share of good boards that read anything at least as telling.

using namespace netmend;

namespace {

/// One part of what good boards read, on the comparison scale.
struct GoodPart {
  double weight, centre, scale, dof;
  [[nodiscard]] double density(double y) const {
    const double z = (y - centre) / scale;
    return weight / scale *
           std::exp(std::lgamma((dof + 1) / 2) - std::lgamma(dof / 2) -
                    (dof + 1) / 2 * std::log1p(z * z / dof)) /
           std::sqrt(dof * std::numbers::pi);
  }
  [[nodiscard]] double above(double y) const {
    return weight * cdf(complement(boost::math::students_t(dof), (y - centre) / scale));
  }
};

struct Model {
  ReadingMode mode;
  FaultReadings faults;
  std::vector<GoodPart> parts;
  double overLimit = 0.0; ///< of good boards, as shown by this meter
  double spreadEvenly = 0.0;

  [[nodiscard]] double scaled(double value) const {
    return mode == ReadingMode::ohms    ? std::asinh(value)
           : mode == ReadingMode::volts ? std::asinh(value / 0.1)
                                        : value;
  }
  [[nodiscard]] double value(double y) const {
    return mode == ReadingMode::ohms ? std::sinh(y) : mode == ReadingMode::volts ? 0.1 * std::sinh(y) : y;
  }
  [[nodiscard]] double even(double y) const {
    const double low = scaled(faults.lowest), high = scaled(faults.highest);
    return (y >= low && y <= high ? 1.0 : 0.01) / (high - low);
  }
  [[nodiscard]] double good(double y) const {
    double sum = spreadEvenly * even(y);
    for (const auto& part : parts)
      sum += part.density(y);
    return sum;
  }
  [[nodiscard]] double faulty(double y) const {
    // The density of a value turns into one on the scale by d(value)/d(scale).
    const double x = value(y), step = 1e-6 * (1 + std::abs(y));
    const double stretch = (value(y + step) - value(y - step)) / (2 * step);
    double sum = faults.anywhere * even(y) +
                 faults.shorted * std::exp(-std::abs(x) / faults.shortScale) / faults.shortScale * stretch;
    if (parts.empty()) return sum + faults.shift * even(y);
    double weights = 0, shifted = 0;
    for (const auto& part : parts) {
      weights += part.weight;
      shifted +=
          part.weight * std::exp(-std::abs(y - part.centre) / faults.shiftScale) / 2 / faults.shiftScale;
    }
    return sum + faults.shift * shifted / weights;
  }
  [[nodiscard]] double ratio(std::optional<double> y) const {
    return y ? faulty(*y) / good(*y) : faults.open / overLimit;
  }
  /// Good boards whose reading is at least as telling.
  [[nodiscard]] double shareAtLeast(double wanted, double from, double to) const {
    double share = ratio(std::nullopt) >= wanted ? overLimit : 0.0;
    const int cells = 40000;
    const double width = (to - from) / cells;
    double before = ratio(from) - wanted;
    for (int i = 0; i < cells; ++i) {
      const double after = ratio(from + (i + 1) * width) - wanted;
      const double least = std::min(before, after), most = std::max(before, after);
      // The part of the cell in which the ratio, taken as straight, is above the wanted one.
      const double part = least >= 0 ? 1.0 : most < 0 ? 0.0 : most / (most - least);
      const double middle = before >= after ? part / 2 : 1 - part / 2;
      if (part > 0) share += part * width * good(from + (i + middle) * width);
      before = after;
    }
    for (const auto& part : parts) { // beyond the cells everything tells
      share += part.above(to);
      share += part.weight - part.above(from);
    }
    return std::min(share, 1.0);
  }
};

FaultReadings diodeFaults() {
  return {ReadingMode::diode, 0.4, 0.15, 0.3, 0.15, 0.003, 0.06, 0.0, 2.0, ""};
}

VerdictRules rulesWith(FaultReadings faults) {
  VerdictRules rules;
  rules.falseFlagsPerGoodWalk = 0.05;
  rules.faultPrior = 0.02;
  rules.decisiveOdds = 100.0;
  rules.faults = {std::move(faults)};
  return rules;
}

/// Range 2 V in counts of 1 mV, ±(1 % + 3 counts), leads 0.2 Ω at 1 mA, shorts below 10 mV.
MeterProfile handheld() {
  MeterMode diode{ReadingMode::diode, {{2.0, 0.001, 1.0, 3.0}}, Amperes(1e-3), Volts(3.0), 0.010};
  MeterMode ohms{ReadingMode::ohms, {{4000.0, 1.0, 0.8, 3.0}}, Amperes(5e-4), Volts(0.5), 2.0};
  MeterMode volts{ReadingMode::volts, {{40.0, 0.01, 0.5, 2.0}}, {}, {}, {}};
  return {"hand", "Hand", "test", Ohms(0.2), Ohms(1e7), {diode, ohms, volts}};
}

Expected expectedOf(ReadingMode mode, double overLimit, std::vector<ExpectedHump> humps) {
  Expected out;
  out.mode = mode;
  out.overLimitShare = overLimit;
  out.humps = std::move(humps);
  return out;
}

/// A hump with a meter's own standard uncertainty on the comparison scale on top (Welch and Satterthwaite).
GoodPart withMeter(double weight, double centre, double scale, double dof, double own) {
  const double total = scale * scale + own * own, share = total / (scale * scale);
  return {weight, centre, std::sqrt(total), dof * share * share};
}

void checkVerdict(const Model& model, const Expected& expected, const MeterProfile* meter,
                  std::optional<double> value, double from, double to) {
  const auto rules = rulesWith(model.faults);
  Reading reading;
  reading.mode = model.mode;
  reading.value = value;
  const double rate = 1e-9; // so low that no reading is plainly good …
  const auto verdict = judgeReading(reading, &expected, meter, rules, rate);
  const auto y = value ? std::optional(model.scaled(*value)) : std::nullopt;
  CAPTURE(value.value_or(-999.0));
  CHECK(verdict.odds == Approx(0.02 / 0.98 * model.ratio(y)).epsilon(3e-5));
  CHECK(verdict.falseAlarmRate == rate);
  CHECK(verdict.expected == expected);
  // … but those at the very middle of what most boards read.
  if (verdict.rarity)
    CHECK(*verdict.rarity == Approx(model.shareAtLeast(model.ratio(y), from, to)).epsilon(2e-4).margin(1e-8));
  else if (y)
    CHECK(std::any_of(model.parts.begin(), model.parts.end(), [&](const GoodPart& part) {
      return std::abs(*y - part.centre) <= 2 * part.scale && part.weight >= 0.05;
    }));
  else
    CHECK(model.ratio(y) <= 1.0);
  if (!y || model.parts.empty()) {
    CHECK(verdict.offInSpreads == 0.0);
    return;
  }
  double off = 1e300;
  for (const auto& part : model.parts)
    if (std::abs((*y - part.centre) / part.scale) < std::abs(off)) off = (*y - part.centre) / part.scale;
  CHECK(verdict.offInSpreads == Approx(off).epsilon(1e-6).margin(1e-9));
}

} // namespace

TEST_CASE("odds and rarity of a diode reading are those of the two densities, without a meter and with one") {
  const auto expected = expectedOf(ReadingMode::diode, 0.002, {{0.998, 0.45, 0.004, 7.0, 5}});
  Model bare{ReadingMode::diode, diodeFaults(), {{0.998, 0.45, 0.004, 7.0}}, 0.002};
  const double own = std::hypot(0.0045 + 0.003, 0.0005, 0.0002) / std::sqrt(3.0);
  Model metered = bare;
  metered.parts = {withMeter(0.998, 0.45, 0.004, 7.0, own)};
  metered.overLimit = 0.002 + metered.parts[0].above(2.0);
  const auto meter = handheld();
  for (const std::optional<double> value :
       {std::optional<double>{}, std::optional(0.45), std::optional(0.4565), std::optional(0.44),
        std::optional(0.470), std::optional(0.400), std::optional(0.52), std::optional(0.002),
        std::optional(1.5)}) {
    checkVerdict(bare, expected, nullptr, value, -1.0, 3.0);
    checkVerdict(metered, expected, &meter, value, -1.0, 3.0);
  }
}

TEST_CASE("odds and rarity where good boards are a mixture of OL and of two variants") {
  const auto expected =
      expectedOf(ReadingMode::diode, 0.3, {{0.5, 0.45, 0.004, 4.0, 5}, {0.2, 0.62, 0.006, 12.0, 2}});
  const Model model{
      ReadingMode::diode, diodeFaults(), {{0.5, 0.45, 0.004, 4.0}, {0.2, 0.62, 0.006, 12.0}}, 0.3};
  for (const std::optional<double> value :
       {std::optional<double>{}, std::optional(0.463), std::optional(0.50), std::optional(0.535),
        std::optional(0.60), std::optional(0.625), std::optional(0.70), std::optional(0.001)})
    checkVerdict(model, expected, nullptr, value, -1.0, 3.0);
  // A rare variant: nothing within it is plainly good.
  const auto rare =
      expectedOf(ReadingMode::diode, 1e-4, {{0.96, 0.45, 0.004, 4.0, 9}, {0.0399, 0.62, 0.006, 9.0, 1}});
  const Model of{
      ReadingMode::diode, diodeFaults(), {{0.96, 0.45, 0.004, 4.0}, {0.0399, 0.62, 0.006, 9.0}}, 1e-4};
  for (const double value : {0.623, 0.61, 0.53})
    checkVerdict(of, rare, nullptr, value, -1.0, 3.0);
}

TEST_CASE("odds and rarity where good boards read OL and nothing else") {
  const auto expected = expectedOf(ReadingMode::diode, 0.999, {});
  const Model model{ReadingMode::diode, diodeFaults(), {}, 0.999, 0.001};
  const auto rules = rulesWith(diodeFaults());
  Reading reading;
  for (const double value : {0.001, 0.1, 0.52, 2.5}) {
    reading.value = value;
    const auto verdict = judgeReading(reading, &expected, nullptr, rules, 1e-9);
    CHECK(verdict.odds == Approx(0.02 / 0.98 * model.ratio(value)).epsilon(1e-5));
    CHECK(verdict.offInSpreads == 0.0);
  }
  // From 0 V on the ratio falls with the exponential of the shorts: at least as telling is all below.
  reading.value = 0.004;
  CHECK(*judgeReading(reading, &expected, nullptr, rules, 1e-9).rarity ==
        Approx(0.001 * 0.004 / 2.0).epsilon(1e-3));
  reading.value = 0.52;
  CHECK(*judgeReading(reading, &expected, nullptr, rules, 1e-9).rarity == Approx(0.001));
}

TEST_CASE("odds and rarity of a resistance and of a voltage are those on their comparison scales") {
  FaultReadings ohms{ReadingMode::ohms, 0.4, 0.15, 0.3, 0.15, 1.0, 1.0, 0.0, 1e7, ""};
  const auto resistor = expectedOf(ReadingMode::ohms, 0.001, {{0.999, 470.0, 0.02, 6.0, 4}});
  const auto meter = handheld();
  const double own = std::hypot(0.008 * 470 + 3.0, 0.5, 0.2) / std::sqrt(3.0) / std::hypot(470.0, 1.0);
  Model model{ReadingMode::ohms, ohms, {withMeter(0.999, std::asinh(470.0), 0.02, 6.0, own)}, 0.0};
  model.overLimit = 0.001 + model.parts[0].above(std::asinh(4000.0));
  for (const std::optional<double> value :
       {std::optional<double>{}, std::optional(470.0), std::optional(500.0), std::optional(530.0),
        std::optional(300.0), std::optional(0.5), std::optional(3900.0), std::optional(0.0)})
    checkVerdict(model, resistor, &meter, value, -5.0, 18.0);
  FaultReadings volts{ReadingMode::volts, 0.0, 0.3, 0.4, 0.3, 0.02, 0.3, 0.0, 30.0, ""};
  const auto rail = expectedOf(ReadingMode::volts, 1e-5, {{0.99999, 3.3, 0.01, 5.0, 4}});
  const Model of{ReadingMode::volts, volts, {{0.99999, std::asinh(33.0), 0.01, 5.0}}, 1e-5};
  for (const double value : {3.3, 3.38, 3.2, 2.5, 0.01, 5.0})
    checkVerdict(of, rail, nullptr, value, -4.0, 8.0);
}

namespace {

VerdictKind flagged(const Expected& expected, std::optional<double> value, double rate = 0.001,
                    const MeterProfile* meter = nullptr, FaultReadings faults = diodeFaults()) {
  Reading reading;
  reading.mode = expected.mode;
  reading.value = value;
  return judgeReading(reading, &expected, meter, rulesWith(std::move(faults)), rate).kind;
}

bool asked(const Expected& expected, std::optional<double> value, double rate) {
  Reading reading;
  reading.value = value;
  return judgeReading(reading, &expected, nullptr, rulesWith(diodeFaults()), rate).rarity.has_value();
}

} // namespace

TEST_CASE(
    "nobody asks how rare a reading is within two spreads of enough boards, on both sides of each limit") {
  const auto one = expectedOf(ReadingMode::diode, 0.001, {{0.999, 0.45, 0.004, 7.0, 5}});
  for (const double side : {-1.0, 1.0}) {
    CHECK_FALSE(asked(one, 0.45 + side * 0.00799, 0.001));
    CHECK(asked(one, 0.45 + side * 0.00801, 0.001));
  }
  // 2.27 % of a normal lies beyond two spreads: with a rate above that even such a reading is asked about.
  CHECK_FALSE(asked(one, 0.45, 0.999 * 0.0226));
  CHECK(asked(one, 0.45, 0.999 * 0.0228));
  const auto with = [](double weight) {
    return expectedOf(ReadingMode::diode, 1e-4,
                      {{0.9999 - weight, 0.45, 0.004, 7.0, 5}, {weight, 0.62, 0.004, 7.0, 1}});
  };
  CHECK_FALSE(asked(with(0.0501), 0.62, 1e-6));
  CHECK(asked(with(0.0499), 0.62, 1e-6));
  // OL: by its share against the rate, and only while it speaks for a good board: 0.4 of the faults read OL.
  const auto overLimit = [](double share) {
    return expectedOf(ReadingMode::diode, share, {{1 - share, 0.45, 0.004, 7.0, 5}});
  };
  CHECK_FALSE(asked(overLimit(0.401), std::nullopt, 0.1));
  CHECK(asked(overLimit(0.399), std::nullopt, 0.1));
  CHECK_FALSE(asked(overLimit(0.5), std::nullopt, 0.499));
  CHECK(asked(overLimit(0.5), std::nullopt, 0.501));
}

TEST_CASE("a reading is flagged where it is rarer than the rate, or where the odds are decisive") {
  const auto expected = expectedOf(ReadingMode::diode, 0.001, {{0.999, 0.45, 0.004, 7.0, 5}});
  Reading reading;
  reading.value = 0.467;
  auto rules = rulesWith(diodeFaults());
  const auto verdict = judgeReading(reading, &expected, nullptr, rules, 1e-9);
  REQUIRE(verdict.rarity);
  CHECK(verdict.kind == VerdictKind::inRange);
  CHECK(judgeReading(reading, &expected, nullptr, rules, 1.01 * *verdict.rarity).kind == VerdictKind::high);
  CHECK(judgeReading(reading, &expected, nullptr, rules, 0.99 * *verdict.rarity).kind ==
        VerdictKind::inRange);
  CHECK(judgeReading(reading, &expected, nullptr, rules, *verdict.rarity).kind == VerdictKind::high);
  rules.decisiveOdds = 1.01 * verdict.odds;
  CHECK(judgeReading(reading, &expected, nullptr, rules, 1e-9).kind == VerdictKind::inRange);
  rules.decisiveOdds = verdict.odds;
  CHECK(judgeReading(reading, &expected, nullptr, rules, 1e-9).kind == VerdictKind::high);
}

TEST_CASE(
    "the word for a flag: low and high by the nearest variant, a short below what the meter tells apart") {
  const auto one = expectedOf(ReadingMode::diode, 0.001, {{0.999, 0.45, 0.004, 7.0, 5}});
  const auto meter = handheld(); // shorts below 10 mV
  CHECK(flagged(one, 0.0099, 0.01, &meter) == VerdictKind::shorted);
  CHECK(flagged(one, 0.0100, 0.01, &meter) == VerdictKind::low);
  // Without a meter three times the scale of the shorts: 9 mV.
  CHECK(flagged(one, 0.0089, 0.01) == VerdictKind::shorted);
  CHECK(flagged(one, 0.00901, 0.01) == VerdictKind::low);
  auto mute = meter;
  mute.modes[0].shortBelow.reset();
  CHECK(flagged(one, 0.0089, 0.01, &mute) == VerdictKind::shorted);
  CHECK(flagged(one, 0.00901, 0.01, &mute) == VerdictKind::low);
  auto other = meter;
  other.modes.erase(other.modes.begin());
  CHECK(flagged(one, 0.0095, 0.01, &other) == VerdictKind::low);
  const auto two =
      expectedOf(ReadingMode::diode, 0.001, {{0.6, 0.62, 0.004, 7.0, 3}, {0.399, 0.45, 0.004, 7.0, 2}});
  CHECK(flagged(two, 0.52) == VerdictKind::high);
  CHECK(flagged(two, 0.55) == VerdictKind::low);
  CHECK(flagged(two, 0.70) == VerdictKind::high);
  CHECK(flagged(two, 0.40) == VerdictKind::low);
  CHECK(flagged(two, 0.001) == VerdictKind::shorted);
  // Below a variant near zero nothing is a short; between one near zero and another neither.
  const auto ground = expectedOf(ReadingMode::diode, 0.001, {{0.999, 0.005, 0.0002, 9.0, 9}});
  CHECK(flagged(ground, 0.0085) == VerdictKind::high);
  CHECK(flagged(ground, 0.0010) == VerdictKind::shorted);
  const auto both =
      expectedOf(ReadingMode::diode, 0.001, {{0.5, 0.001, 0.0001, 9.0, 9}, {0.499, 0.008, 0.0001, 9.0, 9}});
  CHECK(flagged(both, 0.0065) == VerdictKind::low);
  const auto open = expectedOf(ReadingMode::diode, 0.999, {});
  CHECK(flagged(open, 0.0089, 0.01) == VerdictKind::shorted);
  CHECK(flagged(open, 0.0091, 0.01) == VerdictKind::readsWhereOverLimitExpected);
  // Only a fed current makes an open or a short.
  for (const auto mode :
       {ReadingMode::diode, ReadingMode::diodeReverse, ReadingMode::ohms, ReadingMode::milliohms,
        ReadingMode::continuity, ReadingMode::volts, ReadingMode::dropUnderCurrent}) {
    auto faults = diodeFaults();
    faults.mode = mode;
    auto expected = one;
    expected.mode = mode;
    const bool feeds = mode != ReadingMode::volts && mode != ReadingMode::dropUnderCurrent;
    CHECK(flagged(expected, std::nullopt, 0.01, nullptr, faults) ==
          (feeds ? VerdictKind::open : VerdictKind::high));
    CHECK(flagged(expected, 0.0001, 0.01, nullptr, faults) ==
          (feeds ? VerdictKind::shorted : VerdictKind::low));
  }
}

TEST_CASE("what still climbs is not yet low or short; high and open it is") {
  const auto one = expectedOf(ReadingMode::diode, 0.001, {{0.999, 0.45, 0.004, 7.0, 5}});
  Reading reading;
  const auto kind = [&](std::optional<double> value, Settling settling) {
    reading.value = value;
    reading.settling = settling;
    return judgeReading(reading, &one, nullptr, rulesWith(diodeFaults()), 0.01).kind;
  };
  for (const auto settling : {Settling::settled, Settling::unknown}) {
    CHECK(kind(0.3, settling) == VerdictKind::low);
    CHECK(kind(0.001, settling) == VerdictKind::shorted);
  }
  CHECK(kind(0.3, Settling::rising) == VerdictKind::nothingToCompare);
  CHECK(kind(0.001, Settling::rising) == VerdictKind::nothingToCompare);
  CHECK(kind(0.45, Settling::rising) == VerdictKind::inRange);
  CHECK(kind(0.7, Settling::rising) == VerdictKind::high);
  CHECK(kind(std::nullopt, Settling::rising) == VerdictKind::open);
}

TEST_CASE("the words of verdicts are as files have them, and all but two are flags") {
  const std::array<std::pair<VerdictKind, const char*>, 7> words{
      {{VerdictKind::inRange, "in range"},
       {VerdictKind::open, "open"},
       {VerdictKind::shorted, "short"},
       {VerdictKind::low, "low"},
       {VerdictKind::high, "high"},
       {VerdictKind::readsWhereOverLimitExpected, "reads where OL is expected"},
       {VerdictKind::nothingToCompare, "nothing to compare"}}};
  JudgedWalk judged;
  for (const auto& [kind, text] : words) {
    CHECK(word(kind) == text);
    CHECK(verdictKindFrom(text) == kind);
    CHECK(isFlag(kind) == (kind != VerdictKind::inRange && kind != VerdictKind::nothingToCompare));
    judged.verdicts.emplace_back().kind = kind;
  }
  CHECK_FALSE(verdictKindFrom("odd"));
  CHECK(judged.flags() == 5);
}
