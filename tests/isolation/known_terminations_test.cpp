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
  CHECK(start.shareError == 0.0); // nothing is uncertain but which

  struct Step {
    Reading reading;
    Says says;
  };
  const auto& d = line.drawn;
  for (const std::optional<double> volts :
       {std::optional<double>{}, std::optional(across470), std::optional(across470 + 0.006),
        std::optional(0.462), std::optional(0.45), std::optional(1.2), std::optional(0.0)})
    for (const std::string place : {"J1.1", "pad of J1.1", "pad of U1.1", "U1.1"}) {
      INFO(place << " " << volts.value_or(-1.0));
      const auto isolation = update(start, d.diode(place, volts));
      CHECK(isolation.setAside.empty());
      // More than four deviations off, what is cut off of the common error's bell tells.
      checkShares(isolation, after(prior, {diodeAt(place, volts)}), volts == 0.45 ? 0.1 : 0.02);
    }
  for (const std::optional<double> ohms : {std::optional<double>{}, std::optional(0.0), std::optional(0.05),
                                           std::optional(0.4), std::optional(30.0)}) {
    INFO("continuity " << ohms.value_or(-1.0));
    checkShares(update(start, d.continuity("J1.1", "U1.1", ohms)), after(prior, {continuityThroughout(ohms)}),
                1e-5);
    checkShares(update(start, d.continuity("U1.1", "J1.1", ohms)), after(prior, {continuityThroughout(ohms)}),
                1e-5);
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
  // The meter's error is common to the first two, and none of these may read alike at both.
  const std::vector<DiodeReading> diodes{{"J1.1", std::nullopt}, {"pad of J1.1", 0.473}};
  const std::vector<Says> others{ohmsAt("J1.1", std::nullopt), continuityThroughout(std::nullopt)};
  const auto without = [&](std::size_t reading) -> std::vector<Says> {
    if (reading < 2) return {ofDiodes({diodes[1 - reading]}), others[0], others[1]};
    return {ofDiodes(diodes), others[3 - reading]};
  };
  const std::vector<Says> all{ofDiodes(diodes), others[0], others[1]};
  const auto isolation = update(line.isolation(), readings);
  const auto shares = after(prior, all);
  checkShares(isolation, shares);
  const auto found = suspects(isolation);
  CHECK(found.entropyBits == Approx(bitsOf({shares.begin(), shares.end()})).epsilon(0.02));
  REQUIRE(found.ranked.front().faultClass == jointOfJ);
  CHECK(found.ranked.front().prior == Approx(prior[jointOfJ]));
  for (const auto& suspect : found.ranked) {
    if (suspect.faultClass == shorted) continue;
    REQUIRE(suspect.evidence.size() == readings.size());
    for (std::size_t i = 1; i < suspect.evidence.size(); ++i)
      CHECK(std::abs(suspect.evidence[i - 1].bits) >= std::abs(suspect.evidence[i].bits));
    // Odds against all others with the reading over those without it.
    const auto odds = [&](const std::array<double, 6>& p) {
      return p[suspect.faultClass] / (1.0 - p[suspect.faultClass]);
    };
    for (const auto& evidence : suspect.evidence) {
      INFO("class " << suspect.faultClass << ", reading " << evidence.observation);
      const double wanted = std::log2(odds(shares) / odds(after(prior, without(evidence.observation))));
      CHECK(evidence.bits == Approx(wanted).epsilon(5e-3).margin(0.03));
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
      CHECK(foretold.prediction.mean.value == Approx(across470).margin(3e-4)); // kept by the millivolt
      CHECK(foretold.prediction.spread.value == Approx(diodeSpread).epsilon(0.015));
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
  // The readings before have told what the meter is off by.
  CHECK(odd.foretold.prediction.mean.value == Approx(across470).margin(6e-4));
  CHECK(odd.foretold.prediction.spread.value < 0.6 * diodeSpread);
  CHECK(odd.foretold.prediction.spread.value > freshSigma);
  // OL there is a slip as well; and where both may be, the share is that of the slip.
  CHECK(suspects(update(isolation, d.diode("pad of J1.1", std::nullopt))).contradictions.size() == 1);
  std::vector<DiodeReading> taken;
  for (int i = 0; i < 4; ++i) {
    taken.push_back({"J1.1", std::nullopt});
    taken.push_back({"pad of J1.1", across470});
  }
  const double before = ofDiodesUnder(jointOfJ, taken);
  const auto share = [&](double volts) {
    auto all = taken;
    all.push_back({"pad of J1.1", volts});
    return slips / 2 / 2.0 / (ofDiodesUnder(jointOfJ, all) / before);
  };
  double off = across470;
  while (share(off) < 0.5)
    off += 0.0005;
  CHECK(off < across470 + 0.030);
  CHECK(suspects(update(isolation, d.diode("pad of J1.1", off - 0.001))).contradictions.empty());
  const auto doubtful = suspects(update(isolation, d.diode("pad of J1.1", off + 0.001)));
  REQUIRE(doubtful.contradictions.size() == 1);
  CHECK(doubtful.contradictions.front().slipped == Approx(share(off + 0.001)).epsilon(0.02));
}

TEST_CASE("what a place should read is the mixture of what the suspects say, in OL, mean and spread") {
  const OneResistor line;
  const auto isolation = line.isolation();
  const auto wanted = [&](double partedShare) {
    const double known = 1.0 - prior[none];
    Prediction out;
    out.overLimit = partedShare / known;
    out.mean = Volts(across470);
    out.spread = Volts(diodeSpread);
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
    CHECK(found.mean.value == Approx(should.mean.value).margin(3e-4)); // kept by the millivolt
    CHECK(found.spread.value == Approx(should.spread.value).epsilon(0.015));
  }
  const auto none = predictDiode(isolation, placeCalled(isolation, "J1.1"), Class::none);
  CHECK(none.overLimit == Approx(0.35));
  CHECK(none.mean.value == Approx(1.0).margin(1e-3)); // or anything up to 2 V
  CHECK(none.spread.value == Approx(2.0 / std::sqrt(12.0)).epsilon(1e-3));
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
  const double square = (sound * low * low + parted * high * high) / 0.96 + diodeSpread * diodeSpread;
  const auto found = predictDiode(both, placeCalled(both, "U1.1"));
  CHECK(found.overLimit == Approx(0.0).margin(1e-12));
  CHECK(found.mean.value == Approx(mean).margin(3e-4));
  CHECK(found.spread.value == Approx(std::sqrt(square - mean * mean)).epsilon(5e-3));
}

TEST_CASE("where no slip is allowed for, evidence is as strong as the tails of the readings say") {
  OneResistor line;
  line.priors.slippedShare = 0.0;
  // 1.9 V where 470 Ω are behind the lead whatever is broken: only none of these is left.
  const auto found = suspects(update(line.isolation(), line.drawn.diode("U1.1", 1.9)));
  REQUIRE(found.ranked.front().faultClass == none);
  const double fits = overCommonError([](double off) { return student(1.9, across470 + off, freshSigma); });
  constexpr double anything = 0.65 / 2.0;
  for (const auto& suspect : found.ranked) {
    if (suspect.faultClass == shorted) continue;
    // All known faults say the same: against them and none of these, by their chances.
    const double own = prior[suspect.faultClass];
    const double others =
        suspect.faultClass == none ? fits : ((0.96 - own) * fits + 0.04 * anything) / (1.0 - own);
    const double wanted = std::log2((suspect.faultClass == none ? anything : fits) / others);
    CHECK(std::abs(wanted) > 30.0);
    CHECK(suspect.evidence.front().bits == Approx(wanted).epsilon(5e-3));
  }
}

TEST_CASE("what cannot be is said in bits that have an end, twice over too") {
  OneResistor line;
  line.priors.slippedShare = 0.0;
  const auto& d = line.drawn;
  // A line that does not hang together with itself: OL from J1.1 to J1.1.
  const auto once = update(line.isolation(), d.continuity("J1.1", "J1.1", std::nullopt));
  for (const auto& isolation : {once, update(once, d.continuity("J1.1", "J1.1", std::nullopt))}) {
    CHECK(isolation.probability[none] == Approx(1.0));
    const auto found = suspects(isolation);
    REQUIRE(found.ranked.front().faultClass == none);
    for (const auto& suspect : found.ranked)
      for (const auto& evidence : suspect.evidence) {
        CHECK(std::abs(evidence.bits) <= 999.0);
        if (suspect.faultClass == shorted) continue;
        // The least that is counted is 1e-300; none of these says that 3 in 10 are parted.
        if (suspect.faultClass == none) CHECK(evidence.bits > 900.0);
        if (suspect.faultClass != none) CHECK(evidence.bits < -900.0);
      }
  }
}
