#include "netmend/board/value.h"

#include <array>
#include <charconv>

namespace netmend {

namespace {

/// A multiplier or unit at the head of the text.
struct Multiplier {
  std::string_view text;
  int exponent;
  bool pointLetter; ///< may stand for the decimal point: `4k7`
};
constexpr std::array multipliers = {Multiplier{"MEG", 6, false},
                                    Multiplier{"Meg", 6, false},
                                    Multiplier{"meg", 6, false},
                                    Multiplier{"p", -12, true},
                                    Multiplier{"n", -9, true},
                                    Multiplier{"u", -6, true},
                                    Multiplier{"\u00b5", -6, true} /* micro sign */,
                                    Multiplier{"\u03bc", -6, true} /* Greek mu */,
                                    Multiplier{"m", -3, true},
                                    Multiplier{"k", 3, true},
                                    Multiplier{"K", 3, true},
                                    Multiplier{"M", 6, true},
                                    Multiplier{"G", 9, true},
                                    Multiplier{"T", 12, true}};
/// Capitals as typed on old lists; only before a unit, since `1N4148` is a part.
constexpr std::array capitals = {Multiplier{"P", -12, false}, Multiplier{"N", -9, false},
                                 Multiplier{"U", -6, false}};

struct Unit {
  std::string_view text;
  ValueUnit unit;
  bool pointLetter;
};
constexpr std::array units = {Unit{"\u03a9", ValueUnit::ohm, false} /* Greek omega */,
                              Unit{"\u2126", ValueUnit::ohm, false} /* ohm sign */,
                              Unit{"ohms", ValueUnit::ohm, false},
                              Unit{"Ohms", ValueUnit::ohm, false},
                              Unit{"ohm", ValueUnit::ohm, false},
                              Unit{"Ohm", ValueUnit::ohm, false},
                              Unit{"OHM", ValueUnit::ohm, false},
                              Unit{"R", ValueUnit::ohm, true},
                              Unit{"Hz", ValueUnit::hertz, false},
                              Unit{"HZ", ValueUnit::hertz, false},
                              Unit{"hz", ValueUnit::hertz, false},
                              Unit{"F", ValueUnit::farad, true},
                              Unit{"H", ValueUnit::henry, false},
                              Unit{"V", ValueUnit::volt, true},
                              Unit{"v", ValueUnit::volt, true},
                              Unit{"A", ValueUnit::ampere, true}};
/// Small letters that are units only after a multiplier: `10uf`.
constexpr std::array smallUnits = {Unit{"f", ValueUnit::farad, false}, Unit{"h", ValueUnit::henry, false}};

constexpr std::string_view digitChars = "0123456789";

std::string_view takeDigits(std::string_view& text) {
  const auto end = std::min(text.find_first_not_of(digitChars), text.size());
  const auto digits = text.substr(0, end);
  text.remove_prefix(end);
  return digits;
}

bool startsWithDigit(std::string_view text) {
  return !text.empty() && digitChars.find(text[0]) != std::string_view::npos;
}

template <class Entry, std::size_t N>
const Entry* take(const std::array<Entry, N>& table, std::string_view& text) {
  for (const Entry& entry : table) {
    if (!text.starts_with(entry.text)) continue;
    text.remove_prefix(entry.text.size());
    return &entry;
  }
  return nullptr;
}

/// The value is over here, whatever follows.
bool ends(std::string_view text) {
  return text.empty() || std::string_view(" \t/,;").find(text[0]) != std::string_view::npos ||
         text.starts_with("\u00b1");
}

/// What stands after the digits: multiplier, unit, digits after a letter that stood for the point.
struct Tail {
  int exponent = 0;
  ValueUnit unit = ValueUnit::none;
  std::string_view fraction;
};

std::optional<ValueUnit> takeUnit(std::string_view& text, bool afterMultiplier) {
  if (const auto* unit = take(units, text)) return unit->unit;
  if (afterMultiplier)
    if (const auto* unit = take(smallUnits, text)) return unit->unit;
  return std::nullopt;
}

/// IEC 60062 tolerance letters after a multiplier: F is 1 %, J 5 %, K 10 %, M 20 %.
bool isTolerance(std::string_view text) {
  return !text.empty() && std::string_view("BCDFGJKM").find(text[0]) != std::string_view::npos &&
         ends(text.substr(1));
}

std::optional<Tail> readTail(std::string_view text, bool hasPoint) {
  Tail tail;
  if (ends(text)) return tail;
  bool pointLetter = false;
  const Multiplier* multiplier = take(multipliers, text);
  if (multiplier) {
    tail.exponent = multiplier->exponent;
    pointLetter = multiplier->pointLetter;
  } else if (auto rest = text; const auto* capital = take(capitals, rest)) {
    if (!takeUnit(rest, true) || !ends(rest)) return std::nullopt;
    text.remove_prefix(capital->text.size());
    tail.exponent = capital->exponent;
    multiplier = capital;
  } else if (const auto* unit = take(units, text)) {
    tail.unit = unit->unit;
    pointLetter = unit->pointLetter;
  }
  if (pointLetter && !hasPoint && startsWithDigit(text)) tail.fraction = takeDigits(text);
  // More digits than a marking has: a type number that happens to have a letter (`1n4148`).
  if (tail.fraction.size() > 3) return std::nullopt;
  if (ends(text)) return tail;
  if (tail.unit != ValueUnit::none) {
    if (isTolerance(text) || !take(units, text) || !ends(text))
      return isTolerance(text) ? std::optional(tail) : std::nullopt;
    return tail;
  }
  // Kilofarads do not exist: after k and M the letter F is a tolerance.
  if (multiplier && tail.exponent >= 3 && isTolerance(text)) return tail;
  if (const auto unit = takeUnit(text, multiplier != nullptr)) tail.unit = *unit;
  if (ends(text) || isTolerance(text)) return tail;
  return std::nullopt;
}

std::optional<PartValue> assemble(std::string_view whole, const Tail& tail, std::string_view fraction) {
  // As one decimal text, so that 4k7 is 4700 to the last bit.
  std::string text(whole.empty() ? "0" : whole);
  if (!fraction.empty()) text += "." + std::string(fraction);
  text += "e" + std::to_string(tail.exponent);
  PartValue value{0.0, tail.unit};
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value.magnitude);
  if (error != std::errc() || end != text.data() + text.size()) return std::nullopt;
  return value;
}

/// `R47`, `p33`, `n47`, `u1`: the letter stands for the point and nothing before it.
std::optional<PartValue> readLeadingLetter(std::string_view text) {
  Tail tail;
  if (text[0] == 'R') {
    tail.unit = ValueUnit::ohm;
    text.remove_prefix(1);
  } else if (text[0] == 'p' || text[0] == 'n' || text[0] == 'u' || text.starts_with("\u00b5")) {
    tail.exponent = take(multipliers, text)->exponent;
  } else {
    return std::nullopt;
  }
  const auto fraction = takeDigits(text);
  if (fraction.empty() || fraction.size() > 4 || !(ends(text) || isTolerance(text))) return std::nullopt;
  return assemble({}, tail, fraction);
}

} // namespace

std::optional<PartValue> parsePartValue(std::string_view text) {
  const auto start = text.find_first_not_of(" \t");
  if (start == std::string_view::npos) return std::nullopt;
  text.remove_prefix(start);
  if (!startsWithDigit(text) && text[0] != '.') return readLeadingLetter(text);
  const auto whole = takeDigits(text);
  std::string_view fraction;
  const bool hasPoint =
      text.size() > 1 && (text[0] == '.' || text[0] == ',') && startsWithDigit(text.substr(1));
  if (hasPoint) {
    text.remove_prefix(1);
    fraction = takeDigits(text);
  }
  if (whole.empty() && !hasPoint) return std::nullopt;
  // A unit may stand apart (`4.7 kΩ`); other words after a space are not the value's business (`33 0603`).
  if (text.size() > 1 && text[0] == ' ' && !startsWithDigit(text.substr(1))) {
    const auto apart = readTail(text.substr(1), true);
    return assemble(whole, apart ? *apart : Tail{}, fraction);
  }
  const auto tail = readTail(text, hasPoint);
  if (!tail) return std::nullopt;
  return assemble(whole, *tail, hasPoint ? fraction : tail->fraction);
}

} // namespace netmend
