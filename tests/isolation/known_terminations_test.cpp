#include "one_resistor.h"

// Bayes by hand: shares, evidence, slips and predictions (one_resistor.h).

using namespace netmend;
using namespace netmend::test;

TEST_CASE("each reading changes the shares of sound, none of these and each break as Bayes says, by hand") {
  const OneResistor line;
  const auto start = line.isolation();
  checkShares(start, prior);
  CHECK(start.classes[jointOfJ].places.front().pin == line.drawn.pins[0]);
  CHECK(start.classes[jointOfU].places.front().pin == line.drawn.pins[1]);
  CHECK(start.classes[track].places.front().edgeKind == EdgeKind::track);
  CHECK(start.samplingError == Approx(0.0).margin(1e-12)); // nothing is uncertain but which

  struct Step {
    Reading reading;
    Says says;
  };
  const auto& d = line.drawn;
  for (const std::optional<double> volts :
       {std::optional<double>{}, std::optional(across470), std::optional(across470 + 0.006),
        std::optional(0.45), std::optional(1.2), std::optional(0.0)})
    for (const std::string place : {"J1.1", "pad of J1.1", "pad of U1.1", "U1.1"}) {
      INFO(place << " " << volts.value_or(-1.0));
      const auto isolation = update(start, d.diode(place, volts));
      CHECK(isolation.setAside.empty());
      checkShares(isolation, after(prior, {diodeAt(place, volts)}));
    }
  for (const std::optional<double> ohms : {std::optional<double>{}, std::optional(0.0), std::optional(0.05),
                                           std::optional(0.4), std::optional(30.0)}) {
    INFO("continuity " << ohms.value_or(-1.0));
    checkShares(update(start, d.continuity("J1.1", "U1.1", ohms)),
                after(prior, {continuityThroughout(ohms)}));
    checkShares(update(start, d.continuity("U1.1", "J1.1", ohms)),
                after(prior, {continuityThroughout(ohms)}));
  }
  for (const std::optional<double> ohms : {std::optional<double>{}, std::optional(0.0), std::optional(455.0),
                                           std::optional(470.0), std::optional(9e3)})
    for (const std::string place : {"J1.1", "pad of J1.1", "U1.1"}) {
      INFO("ohms at " << place << " " << ohms.value_or(-1.0));
      checkShares(update(start, inMode(d.diode(place, ohms), ReadingMode::ohms)),
                  after(prior, {ohmsAt(place, ohms)}));
    }
}

TEST_CASE("readings one after the other multiply, and each is evidence by its bits against all others") {
  const OneResistor line;
  const auto& d = line.drawn;
  const std::vector<Reading> readings{d.diode("J1.1", std::nullopt), d.diode("pad of J1.1", 0.473),
                                      inMode(d.diode("J1.1", std::nullopt), ReadingMode::ohms),
                                      d.continuity("J1.1", "U1.1", std::nullopt)};
  const std::vector<Says> says{diodeAt("J1.1", std::nullopt), diodeAt("pad of J1.1", 0.473),
                               ohmsAt("J1.1", std::nullopt), continuityThroughout(std::nullopt)};
  const auto isolation = update(line.isolation(), readings);
  const auto shares = after(prior, says);
  checkShares(isolation, shares);
  const auto found = suspects(isolation);
  CHECK(found.entropyBits == Approx(bitsOf({shares.begin(), shares.end()})).epsilon(1e-5));
  REQUIRE(found.ranked.front().faultClass == jointOfJ);
  CHECK(found.ranked.front().prior == Approx(prior[jointOfJ]));
  for (const auto& suspect : found.ranked) {
    if (suspect.faultClass == shorted) continue;
    REQUIRE(suspect.evidence.size() == says.size());
    for (std::size_t i = 1; i < suspect.evidence.size(); ++i)
      CHECK(std::abs(suspect.evidence[i - 1].bits) >= std::abs(suspect.evidence[i].bits));
    for (const auto& evidence : suspect.evidence) {
      const auto before =
          after(prior, {says.begin(), says.begin() + static_cast<std::ptrdiff_t>(evidence.observation)});
      double others = 0.0, weight = 0.0;
      for (std::size_t c = 0; c < before.size(); ++c) {
        if (c == suspect.faultClass) continue;
        others += before[c] * says[evidence.observation][c];
        weight += before[c];
      }
      const double own = says[evidence.observation][suspect.faultClass];
      INFO("class " << suspect.faultClass << ", reading " << evidence.observation);
      CHECK(evidence.bits == Approx(std::log2(own * weight / others)).epsilon(1e-5).margin(1e-8));
    }
  }
  // What was foretold of them under the connector's joint: OL, the resistor, no figure, parted.
  for (const auto& evidence : found.ranked.front().evidence) {
    const auto& foretold = evidence.foretold;
    if (evidence.observation == 0) {
      CHECK(foretold.what == Foretold::What::volts);
      CHECK(foretold.prediction.overLimit == Approx(1.0));
    } else if (evidence.observation == 1) {
      CHECK(foretold.what == Foretold::What::volts);
      CHECK(foretold.prediction.overLimit == Approx(0.0).margin(1e-12));
      CHECK(foretold.prediction.mean.value == Approx(across470).epsilon(1e-6));
      CHECK(foretold.prediction.spread.value == Approx(diodeSigma(across470)).epsilon(1e-4));
    } else {
      CHECK(foretold.what ==
            (evidence.observation == 2 ? Foretold::What::notSaid : Foretold::What::overLimit));
    }
  }
  for (const auto& suspect : found.ranked)
    for (const auto& evidence : suspect.evidence) {
      if (suspect.faultClass == none) CHECK(evidence.foretold.what == Foretold::What::anything);
      if (suspect.faultClass != sound || evidence.observation != 3) continue;
      CHECK(evidence.foretold.what == Foretold::What::ohms);
      const double ohms = copperResistivity * 20e-3 / (0.15e-3 * 35e-6);
      CHECK(evidence.foretold.ohms.value == Approx(ohms));
      CHECK(evidence.foretold.ohmsSpread.value ==
            Approx(std::hypot(std::hypot((0.01 * ohms + 0.5), 0.05, 0.2) / rectangle, 0.1 * ohms, 0.3)));
    }
}

TEST_CASE("a reading that the leading suspect can only explain by a slip is named with its probability") {
  const OneResistor line;
  const auto& d = line.drawn;
  // The joint of J is lost beyond doubt; then 0.62 V at its pad, where 0.47 V should be.
  auto isolation = line.isolation();
  for (int i = 0; i < 4; ++i)
    isolation = update(isolation, {d.diode("J1.1", std::nullopt), d.diode("pad of J1.1", across470)});
  CHECK(suspects(isolation).contradictions.empty());
  const auto found = suspects(update(isolation, d.diode("pad of J1.1", 0.62)));
  REQUIRE(found.contradictions.size() == 1);
  const auto& odd = found.contradictions.front();
  CHECK(odd.observation == 8);
  CHECK(odd.slipped == 0.999); // a slip and nothing else, said with reserve
  CHECK(odd.foretold.prediction.mean.value == Approx(across470).epsilon(1e-6));
  // OL there is a slip as well; and where both may be, the share is that of the slip.
  CHECK(suspects(update(isolation, d.diode("pad of J1.1", std::nullopt))).contradictions.size() == 1);
  double off = across470;
  const double sigma = diodeSigma(across470);
  const auto share = [&](double volts) { return slips / 2 / 2.0 / ofDiode(volts, across470); };
  while (share(off) < 0.5)
    off += 0.01 * sigma;
  CHECK(suspects(update(isolation, d.diode("pad of J1.1", off - 0.02 * sigma))).contradictions.empty());
  const auto doubtful = suspects(update(isolation, d.diode("pad of J1.1", off + 0.02 * sigma)));
  REQUIRE(doubtful.contradictions.size() == 1);
  CHECK(doubtful.contradictions.front().slipped == Approx(share(off + 0.02 * sigma)).epsilon(1e-5));
}

TEST_CASE("what a place should read is the mixture of what the suspects say, in OL, mean and spread") {
  const OneResistor line;
  const auto isolation = line.isolation();
  const auto wanted = [&](double partedShare) {
    const double known = 1.0 - prior[none];
    Prediction out;
    out.overLimit = partedShare / known;
    out.mean = Volts(across470);
    out.spread = Volts(diodeSigma(across470));
    return out;
  };
  const std::array<std::pair<const char*, double>, 4> shares{
      {{"J1.1", prior[jointOfJ] + prior[jointOfU] + prior[track]},
       {"pad of J1.1", prior[jointOfU] + prior[track]},
       {"pad of U1.1", prior[jointOfU]},
       {"U1.1", 0.0}}};
  for (const auto& [label, parted] : shares) {
    INFO(label);
    const auto found = predictDiode(isolation, placeCalled(isolation, label));
    const auto should = wanted(parted);
    CHECK(found.overLimit == Approx(should.overLimit).epsilon(1e-6).margin(1e-12));
    CHECK(found.mean.value == Approx(should.mean.value).epsilon(1e-6));
    CHECK(found.spread.value == Approx(should.spread.value).epsilon(1e-4));
  }
  const auto none = predictDiode(isolation, placeCalled(isolation, "J1.1"), Class::none);
  CHECK(none == Prediction{0.35, Volts(0), Volts(0)});
  // Two resistors, of which a break leaves one: the spread is that of the mixture.
  DrawnLine two;
  const auto a = two.pinOnLine(two.part("U1", PartKind::chip), "1", mm(0, 0));
  const auto b = two.pinOnLine(two.part("U2", PartKind::chip), "1", mm(25, 0), Access::underPart);
  two.track(a, b, 25);
  PinTermination first, second;
  first.pin = two.pins[0];
  second.pin = two.pins[1];
  first.shares = second.shares = {0.0, 1.0, 0.0};
  first.resistance = second.resistance = Ohms(1000);
  auto priors = test::priorsFromData();
  priors.shortToGround = 0.0;
  const auto both = two.isolation({}, priors, test::effortsFromData(), {first, second});
  // At U1.1 itself: 500 Ω where sound; 1000 Ω where the joint of U1, the track or the joint of U2 is open
  // (the last two are one class, for nobody reaches U2.1; each has a weight of 1).
  const double sound = 0.06, parted = 0.90, low = 1e-3 / (1.0 / 500 + 1e-7),
               high = 1e-3 / (1.0 / 1000 + 1e-7);
  const double mean = (sound * low + parted * high) / 0.96;
  const double square = (sound * (low * low + std::pow(diodeSigma(low), 2)) +
                         parted * (high * high + std::pow(diodeSigma(high), 2))) /
                        0.96;
  const auto found = predictDiode(both, placeCalled(both, "U1.1"));
  CHECK(found.overLimit == Approx(0.0).margin(1e-12));
  CHECK(found.mean.value == Approx(mean).epsilon(1e-6));
  CHECK(found.spread.value == Approx(std::sqrt(square - mean * mean)).epsilon(1e-5));
}

TEST_CASE("evidence that leaves no doubt is said as 999 bits, not as infinitely many") {
  OneResistor line;
  line.priors.slippedShare = 0.0;
  // 1.9 V where 470 Ω are behind the lead whatever is broken: only none of these is left.
  const auto found = suspects(update(line.isolation(), line.drawn.diode("U1.1", 1.9)));
  REQUIRE(found.ranked.front().faultClass == none);
  for (const auto& suspect : found.ranked) {
    if (suspect.faultClass == shorted) continue;
    const double bits = suspect.evidence.front().bits;
    // Of the others nothing is left but the least that is counted: 1e-300 over their 0.96.
    CHECK(bits == Approx(suspect.faultClass == none ? std::log2(0.96 / 1e-300) : -999.0).epsilon(1e-6));
  }
}
