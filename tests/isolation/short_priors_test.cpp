#include <catch2/catch.hpp>

#include "short_bench.h"
#include "support/ranged_figures.h"

using namespace netmend;
using namespace netmend::test;

TEST_CASE("every figure of the priors of shorts is read within its range, and into its own field") {
  using S = ShortPriors;
  const std::vector<RangedFigure<S>> figures{
      {"/shares/slippedProbe/share", 0.0, 0.5, [](const S& p) { return p.slippedShare; }},
      {"/shorts/noneOfThese/share", 0.0, 0.9, [](const S& p) { return p.noneOfTheseShare; }},
      {"/shorts/partToSupply/factor", 0.0, 1.0, [](const S& p) { return p.partToSupply; }},
      {"/shorts/bridge/perPlace", 0.0, 1e6, [](const S& p) { return p.bridge; }},
      {"/shorts/bridge/usualGap_mm", 0.001, 10.0, [](const S& p) { return p.usualBridgeGap.mm(); }},
      {"/shorts/bridge/mostGap_mm", 0.001, 10.0, [](const S& p) { return p.mostBridgeGap.mm(); }},
      {"/shorts/nearGround/perMm", 0.0, 1e6, [](const S& p) { return p.nearGroundPerMm; }},
      {"/shorts/nearGround/usualGap_mm", 0.001, 10.0, [](const S& p) { return p.usualGap.mm(); }},
      {"/shorts/nearGround/mostGap_mm", 0.001, 10.0, [](const S& p) { return p.mostGap.mm(); }},
      {"/shorts/resistance/short_ohm", 1e-9, 1e6, [](const S& p) { return p.shortResistance.value; }},
      {"/shorts/resistance/factor", 1.0, 1000.0, [](const S& p) { return p.shortFactor; }},
      {"/shorts/copper/thicknessFactor", 1.0, 1000.0, [](const S& p) { return p.thicknessFactor; }},
      {"/shorts/copper/trackFactor", 1.0, 1000.0, [](const S& p) { return p.trackFactor; }},
      {"/shorts/copper/viaFactor", 1.0, 1000.0, [](const S& p) { return p.viaFactor; }},
      {"/shorts/unknownWay/perMm_ohm", 1e-9, 1e6, [](const S& p) { return p.unknownWayPerMm.value; }},
      {"/shorts/unknownWay/factor", 1.0, 1000.0, [](const S& p) { return p.unknownWayFactor; }},
      {"/shorts/unknownWay/lineFactor", 1.0, 1000.0, [](const S& p) { return p.unknownLineFactor; }},
      {"/shorts/unknownWay/mmWhenUnknown", 0.001, 1e4, [](const S& p) { return p.unknownWayLength.mm(); }},
      {"/shorts/unknownPart/ohm", 1e-9, 1e6, [](const S& p) { return p.unknownPartOhms.value; }},
      {"/shorts/unknownPart/factor", 1.0, 1000.0, [](const S& p) { return p.unknownPartFactor; }},
      {"/shorts/reading/repeat_ohm", 1e-9, 1e6, [](const S& p) { return p.repeatOhms.value; }},
      {"/shorts/reading/repeat_V", 1e-9, 1.0, [](const S& p) { return p.repeatVolts.value; }},
      {"/shorts/mostShort_ohm/value", 1e-9, 1e6, [](const S& p) { return p.mostShort.value; }},
      {"/shorts/warmSpot/factor", 1.0, 1e6, [](const S& p) { return p.warmFactor; }},
      {"/shorts/warmSpot/reach_mm", 0.001, 100.0, [](const S& p) { return p.warmReach.mm(); }},
      {"/shorts/warmSpot/leastRise_K", 0.1, 100.0, [](const S& p) { return p.leastRise.value; }},
      {"/shorts/damage/factor", 1.0, 1e6, [](const S& p) { return p.damageFactor; }},
  };
  checkRanges<S>("fault_priors.json", figures, readShortPriors);
}

TEST_CASE("a part weighs what its kind does, or what is said of all others") {
  const ShortPriors priors = shortPriors();
  CHECK(priors.weightOf(fromUser(PartKind::capacitor)) == 1.0);
  CHECK(priors.weightOf(guessed(PartKind::chip)) == 0.8);
  CHECK(priors.weightOf(fromUser(PartKind::mechanical)) == 0.05);
  CHECK(priors.weightOf({}) == 0.4);
}
