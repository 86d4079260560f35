#pragma once

#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <QRegularExpression>

#include "netmend/base/error.h"
#include "netmend/meter/meter_function.h"

namespace netmend {

enum class Parity { none, even, odd };

/// One value as a line gives it.
struct LineReading {
  MeterValue reading;
  std::optional<MeterFunction> function; ///< if the line names it
  std::string unit;                      ///< `V`, `Ω`, `°C`, another if so sent; empty: the line has none
  friend bool operator==(const LineReading&, const LineReading&) = default;
};

/// How a class of serial meters writes its lines.
struct LinePattern {
  std::string id;
  std::string name;   ///< for people
  std::string source; ///< where the format comes from
  int baud = 9600;
  int dataBits = 8;
  int stopBits = 1;
  Parity parity = Parity::none;
  bool raisesDtr = true; ///< the port's DTR line feeds some adapters
  QRegularExpression expression;
  std::map<std::string, MeterFunction, std::less<>> modes; ///< what words in the group `mode` mean
  std::vector<std::string> examples;                       ///< lines that it reads
};

/// Reads `data/meter_lines.json`. Errors name the file and a JSON pointer: an expression that is none or has
/// no group `value`, an example that it does not read …
[[nodiscard]] Result<std::vector<LinePattern>> loadLinePatterns(const std::filesystem::path& path);
/// The pattern with this id, or nullptr.
[[nodiscard]] const LinePattern* findLinePattern(const std::vector<LinePattern>& patterns,
                                                 std::string_view id);

/// Reads one line, without its end. Errors: not UTF-8 or with control characters, no match, a number that is
/// none, an unknown prefix or word of mode, a unit that does not go with the function.
[[nodiscard]] Result<LineReading> parseMeterLine(const LinePattern& pattern, std::string_view line);

/// Why a value from a meter at this line's function may not be taken for `wanted`; nothing when it may. A
/// line that tells neither function nor unit, or only `V` where diode and volts differ, cannot be held
/// against it.
[[nodiscard]] std::optional<Said> mismatch(const LineReading& line, MeterFunction wanted);

} // namespace netmend
