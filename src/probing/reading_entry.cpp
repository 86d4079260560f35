#include "netmend/probing/reading_entry.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include <fmt/format.h>

#include "netmend/probing/words.h"
#include "trimmed.h"

namespace netmend {

namespace {

/// What a mode can show; anything outside is a slip of the keyboard.
struct Bounds {
  double lowest;
  double highest;
};

Bounds boundsOf(ReadingMode mode) {
  switch (mode) {
  case ReadingMode::diode:
  case ReadingMode::diodeReverse:
    return {-0.5, 3.5};
  case ReadingMode::ohms:
    return {-1.0, 1e9};
  case ReadingMode::milliohms:
    return {-0.01, 1000.0};
  case ReadingMode::continuity:
    return {-1.0, 1e5};
  case ReadingMode::volts:
    return {-1500.0, 1500.0};
  case ReadingMode::dropUnderCurrent:
    return {-10.0, 10.0};
  case ReadingMode::temperature:
    return {-60.0, 500.0};
  }
  return {0.0, 0.0};
}

bool isDiode(ReadingMode mode) {
  return mode == ReadingMode::diode || mode == ReadingMode::diodeReverse;
}

std::string lower(std::string_view text) {
  std::string out(text);
  for (char& c : out)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return out;
}

tl::unexpected<Error> refused(Said message, std::string_view found, ReadingMode mode) {
  return failure({std::move(message), "", "", fmt::format("\"{}\"", found),
                  said(pattern("core", "a value in {} or OL, for {}"), unitOf(mode), word(mode))});
}

/// Digits with at most one point or comma, taken from the front of `text`.
std::string takeNumber(std::string_view& text) {
  std::string number;
  bool point = false;
  while (!text.empty()) {
    const char c = text.front();
    if (c >= '0' && c <= '9') {
      number += c;
    } else if ((c == '.' || c == ',') && !point) {
      number += '.';
      point = true;
    } else {
      break;
    }
    text.remove_prefix(1);
  }
  return number;
}

struct Scale {
  double factor = 1.0;
  bool prefix = false; ///< there was one
};

/// A prefix letter at the front. Only `m` and `M` differ in meaning by case.
Scale takePrefix(std::string_view& text) {
  static constexpr std::array<std::pair<std::string_view, double>, 9> prefixes{{{"m", 1e-3},
                                                                                {"M", 1e6},
                                                                                {"k", 1e3},
                                                                                {"K", 1e3},
                                                                                {"u", 1e-6},
                                                                                {"U", 1e-6},
                                                                                {"\u00b5", 1e-6},
                                                                                {"\u03bc", 1e-6},
                                                                                {"G", 1e9}}};
  for (const auto& [letter, factor] : prefixes) {
    if (text.substr(0, letter.size()) != letter) continue;
    text.remove_prefix(letter.size());
    return {factor, true};
  }
  return {};
}

enum class Unit { none, volt, ohm, celsius, other };

Unit unitFrom(std::string_view text) {
  if (text.empty()) return Unit::none;
  const std::string t = lower(text);
  if (t == "v" || t == "volt" || t == "volts") return Unit::volt;
  if (t == "r" || t == "ohm" || t == "ohms" || text == "\u03a9" || text == "\u2126" || text == "\u03c9")
    return Unit::ohm;
  if (t == "c" || text == "\u00b0C" || text == "\u00b0c" || text == "\u2103") return Unit::celsius;
  return Unit::other;
}

Unit unitWanted(ReadingMode mode) {
  const auto unit = unitOf(mode);
  return unit == "V" ? Unit::volt : unit == "Ω" ? Unit::ohm : Unit::celsius;
}

std::optional<double> asDouble(const std::string& digits) {
  if (digits.empty() || digits == ".") return std::nullopt;
  const std::string padded = digits.front() == '.' ? "0" + digits : digits;
  double value = 0.0;
  const auto [end, error] = std::from_chars(padded.data(), padded.data() + padded.size(), value);
  if (error != std::errc() || end != padded.data() + padded.size() || !std::isfinite(value))
    return std::nullopt;
  return value;
}

struct Number {
  double value = 0.0;
  Scale scale;
  bool whole = false; ///< written without point, comma or letter
  Unit unit = Unit::none;
};

/// Sign, number, prefix, unit; also `4k7` and `4R7`.
std::optional<Number> parseNumber(std::string_view text) {
  double sign = 1.0;
  if (!text.empty() && (text.front() == '-' || text.front() == '+')) {
    sign = text.front() == '-' ? -1.0 : 1.0;
    text.remove_prefix(1);
  } else if (text.starts_with("\u2212")) {
    sign = -1.0;
    text.remove_prefix(3);
  }
  Number number;
  std::string digits = takeNumber(text);
  number.whole = !digits.empty() && digits.find('.') == std::string::npos;
  text = trimmed(text);
  const std::string_view before = text;
  number.scale = takePrefix(text);
  // The letter stands for the point only between digits.
  std::string_view rest = text;
  bool ohmLetter = false;
  if (!number.scale.prefix && (rest.starts_with("R") || rest.starts_with("r"))) {
    rest.remove_prefix(1);
    ohmLetter = true;
  }
  if ((number.scale.prefix || ohmLetter) && number.whole && !rest.empty() && rest.front() >= '0' &&
      rest.front() <= '9') {
    const std::string decimals = takeNumber(rest);
    if (decimals.find('.') != std::string::npos) return std::nullopt;
    digits += "." + decimals;
    text = trimmed(rest);
    if (ohmLetter) number.unit = Unit::ohm;
    number.whole = false;
  }
  text = trimmed(text);
  if (number.unit == Unit::none || !text.empty()) number.unit = unitFrom(text);
  if (number.unit == Unit::other && number.scale.prefix) {
    number.scale = {};
    number.unit = unitFrom(before);
  }
  const auto value = asDouble(digits);
  if (!value) return std::nullopt;
  number.value = sign * *value * number.scale.factor;
  return number;
}

} // namespace

Result<EnteredValue> parseReadingValue(std::string_view text, ReadingMode mode) {
  const auto entry = trimmed(text);
  if (entry.size() > 64) return refused(pattern("core", "too long for a value"), entry.substr(0, 64), mode);
  if (entry.empty()) return refused(pattern("core", "no value"), "", mode);
  const std::string small = lower(entry);
  if (small == "ol" || small == "o.l" || small == "o.l." || small == "0l" || small == ".ol") {
    if (mode == ReadingMode::temperature)
      return refused(pattern("core", "a thermometer shows no OL"), entry, mode);
    return EnteredValue{};
  }
  const auto number = parseNumber(entry);
  if (!number) return refused(pattern("core", "not a value"), entry, mode);
  if (number->unit == Unit::other) return refused(pattern("core", "not a value"), entry, mode);
  if (number->unit != Unit::none && number->unit != unitWanted(mode))
    return refused(pattern("core", "a unit of another mode"), entry, mode);
  double value = number->value;
  const bool bare = number->unit == Unit::none && !number->scale.prefix;
  if (bare && isDiode(mode) && number->whole) value /= 1000.0;
  if (bare && mode == ReadingMode::milliohms) value /= 1000.0;
  const auto [lowest, highest] = boundsOf(mode);
  if (value < lowest || value > highest) {
    return refused(
        said(pattern("core", "no meter shows that in this mode (it means {})"), readingText(value, mode)),
        entry, mode);
  }
  return EnteredValue{value};
}

namespace {

/// A value's figures as they stand before a unit.
struct Figures {
  double scale; ///< of the unit
  const char* unit;
  int decimals; ///< 0: four significant digits
};

Figures figuresOf(double size, ReadingMode mode) {
  switch (mode) {
  case ReadingMode::diode:
  case ReadingMode::diodeReverse:
    return {1.0, "V", 3};
  case ReadingMode::temperature:
    return {1.0, "°C", 1};
  case ReadingMode::volts:
    return size < 1.0 ? Figures{1e-3, "mV", 1} : Figures{1.0, "V", 0};
  case ReadingMode::dropUnderCurrent:
    if (size < 1e-3) return {1e-6, "µV", 0};
    return size < 1.0 ? Figures{1e-3, "mV", 0} : Figures{1.0, "V", 0};
  case ReadingMode::milliohms:
    if (size < 1.0) return {1e-3, "mΩ", 0};
    break;
  default:
    break;
  }
  if (size >= 0.9995e6) return {1e6, "MΩ", 0};
  if (size >= 0.9995e3) return {1e3, "kΩ", 0};
  return {1.0, "Ω", 0};
}

std::string digitsOf(double value, const Figures& figures) {
  const double shown = value / figures.scale;
  return figures.decimals > 0 ? fmt::format("{:.{}f}", shown, figures.decimals)
                              : fmt::format("{:.4g}", shown);
}

} // namespace

double asShown(double value, ReadingMode mode) {
  const Figures figures = figuresOf(std::abs(value), mode);
  const std::string digits = digitsOf(value, figures);
  double shown = 0.0;
  std::from_chars(digits.data(), digits.data() + digits.size(), shown);
  return shown * figures.scale;
}

std::string readingText(std::optional<double> value, ReadingMode mode) {
  if (!value) return "OL";
  const Figures figures = figuresOf(std::abs(*value), mode);
  return digitsOf(*value, figures) + " " + figures.unit;
}

} // namespace netmend
