#pragma once

#include <filesystem>
#include <map>

#include "netmend/base/error.h"
#include "netmend/base/length.h"
#include "netmend/base/quantity.h"
#include "netmend/board/board.h"

namespace netmend {

/// What holds of shorts before any reading: the part `shorts` of data/fault_priors.json, where each entry has
/// its source. Weights count against each other only. A `…Factor` is one standard deviation of the logarithm,
/// as a factor.
struct ShortPriors {
  double noneOfTheseShare = 0.0;
  double slippedShare = 0.0; ///< of readings
  std::map<PartKind, double> parts;
  double unknownPart = 0.0;
  double otherPart = 0.0;    ///< kinds without an entry
  double partToSupply = 0.0; ///< factor for parts that do not reach ground

  double bridge = 0.0; ///< from one pin to the next, over a gap of `usualBridgeGap` or less
  Length usualBridgeGap;
  Length mostBridgeGap;
  double nearGroundPerMm = 0.0; ///< over a gap of `usualGap` or less
  Length usualGap;
  Length mostGap;

  Ohms shortResistance;
  double shortFactor = 1.0;
  double thicknessFactor = 1.0; ///< of all copper together
  double trackFactor = 1.0;     ///< of one track
  double viaFactor = 1.0;       ///< of one barrel
  Ohms unknownWayPerMm;
  double unknownWayFactor = 1.0;  ///< of one way against the others of its line
  double unknownLineFactor = 1.0; ///< of all of them together
  Length unknownWayLength;        ///< where not even the ends are known
  Ohms unknownPartOhms;           ///< along a part that the line goes on through
  double unknownPartFactor = 1.0;

  Ohms repeatOhms; ///< between readings of one place, one standard deviation
  Volts repeatVolts;
  Ohms mostShort; ///< above this a line is not short

  double warmFactor = 1.0;
  Length warmReach;
  Kelvins leastRise;
  double damageFactor = 1.0;

  [[nodiscard]] double weightOf(const Fact<PartKind>& kind) const;
};

/// Errors name the file and the JSON pointer of what is missing or out of range.
[[nodiscard]] Result<ShortPriors> readShortPriors(const std::filesystem::path& path);

} // namespace netmend
