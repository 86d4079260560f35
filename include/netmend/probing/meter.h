#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "netmend/base/error.h"
#include "netmend/probing/reading.h"

namespace netmend {

/// One range of one mode. Values in the mode's SI unit.
struct MeterRange {
  double fullScale = 0.0;  ///< readings up to here
  double resolution = 0.0; ///< one count
  double percent = 0.0;    ///< accuracy limit: per cent of the reading …
  double digits = 0.0;     ///< … plus this many counts
};

/// How a meter measures in one mode. Above the last range's full scale it shows OL.
struct MeterMode {
  ReadingMode mode = ReadingMode::diode;
  std::vector<MeterRange> ranges;     ///< ascending, at least one
  std::optional<Amperes> testCurrent; ///< modes that feed a current
  std::optional<Volts> compliance;    ///< open-circuit voltage of that source
  std::optional<double> shortBelow; ///< what it cannot tell from a short: anything below, in the mode's unit
  [[nodiscard]] double displayLimit() const { return ranges.back().fullScale; }
};

/// A class of meters.
struct MeterProfile {
  std::string id;     ///< as readings name it
  std::string name;   ///< for people
  std::string source; ///< where the figures come from
  Ohms leadResistance;
  Ohms inputResistance; ///< in volts modes
  std::vector<MeterMode> modes;

  /// Nothing when the meter does not have this mode.
  [[nodiscard]] const MeterMode* mode(ReadingMode mode) const;
};

/// Reads `data/meters.json`. Errors name the file and a JSON pointer.
[[nodiscard]] Result<std::vector<MeterProfile>> loadMeters(const std::filesystem::path& path);

/// The profile with this id, or nullptr.
[[nodiscard]] const MeterProfile* findMeter(const std::vector<MeterProfile>& meters, std::string_view id);

/// Standard uncertainty of a quantity known only to lie within ±`halfWidth` (JCGM 100:2008, 4.3.7).
[[nodiscard]] double rectangularUncertainty(double halfWidth);

/// Standard uncertainties of one reading, in the mode's unit.
struct ReadingUncertainty {
  double calibration =
      0.0; ///< the accuracy limit (% of reading + digits) as a rectangle, JCGM 100:2008, 4.3.7
  double resolution = 0.0; ///< half a count to each side, JCGM 100:2008, F.2.2.1
  double leads = 0.0;      ///< lead resistance somewhere between none and twice the stated one
  /// Root of the sum of squares (JCGM 100:2008, 5.1.2, all sensitivities 1).
  [[nodiscard]] double combined() const;
};

/// Nothing when the meter does not have the mode or would show OL.
[[nodiscard]] std::optional<ReadingUncertainty> uncertaintyOf(const MeterProfile& meter, ReadingMode mode,
                                                              double value);

} // namespace netmend
