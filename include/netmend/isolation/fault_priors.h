#pragma once

#include <filesystem>
#include <map>
#include <optional>
#include <string_view>
#include <vector>

#include "netmend/base/error.h"
#include "netmend/base/length.h"
#include "netmend/base/quantity.h"
#include "netmend/board/board.h"

namespace netmend {

/// How likely it is that a meter finds a junction, a resistance or nothing behind a pin. Sums to 1.
struct TerminationShares {
  double junction = 0.0;
  double resistive = 0.0;
  double none = 1.0;
};

/// Forward drops of ground clamps, any between two ends as likely.
struct DropRange {
  Volts from;
  Volts to;
  double share = 1.0;
};

/// Boards whose chips are of one technology.
struct AlikeDrops {
  Volts spread; ///< between their chips, one standard deviation
  double share = 0.0;
};

/// What holds before any reading. Weights count against each other only; shares are probabilities.
/// Read from data/fault_priors.json, where each entry has its source.
struct FaultPriors {
  double soundShare = 0.0;
  double noneOfTheseShare = 0.0;
  double slippedShare = 0.0; ///< of readings: contact missed, or a neighbour touched

  double solderJoint = 0.0;
  double connectorJoint = 0.0;
  double trackPerMm = 0.0;
  double via = 0.0;
  double part = 0.0;
  double unknownWayPerMm = 0.0;
  Length unknownWayLength; ///< assumed where not even the ends are known
  double deadPin = 0.0;
  double shortToGround = 0.0; ///< for a whole line

  std::map<PartKind, TerminationShares> terminations;
  TerminationShares unknownPart;
  TerminationShares otherPart; ///< kinds without an entry

  Ohms mostPullUp;   ///< above this a resistor to a rail is nothing
  Ohms railOhms;     ///< what a rail looks like at about a milliampere
  double railFactor; ///< one standard deviation of it, as a factor

  std::vector<DropRange> drops;  ///< of chips that differ in technology; the first is the usual one
  std::vector<AlikeDrops> alike; ///< the rest of the boards: each chip its own technology
  double ownInAlike = 0.0;       ///< of chips on boards whose chips are alike: of a technology of their own
  Amperes dropCurrent;           ///< at which drops are given
  double emission = 1.0;
  double emissionSpread = 0.0;
  Ohms junctionSeries;
  Ohms leastInput; ///< of an input that looks like a resistor

  Volts boardSpread;   ///< between good boards, at one point
  Volts readingSpread; ///< between readings of one point
};

/// Seconds of bench time for a reading, by how its place can be reached. Read from data/efforts.json.
struct ProbeEfforts {
  std::map<Access, std::optional<Seconds>> reach; ///< empty: not reachable
  Seconds unknownReach;
  std::optional<Seconds> scrapedTrack;
  Seconds secondLead;
  Length scrapeEvery;  ///< an outer track is divided into places to scrape about this far apart
  Seconds wrongRepair; ///< a wire that mends nothing comes off again
  Seconds wrongLift;   ///< a part taken off for nothing is seldom put back as it was

  /// Of one place; empty: not reachable.
  [[nodiscard]] std::optional<Seconds> of(const Fact<Access>& access) const;
};

/// Errors name the file and the JSON pointer of what is missing or out of range.
[[nodiscard]] Result<FaultPriors> readFaultPriors(const std::filesystem::path& path);
[[nodiscard]] Result<ProbeEfforts> readProbeEfforts(const std::filesystem::path& path);

} // namespace netmend
