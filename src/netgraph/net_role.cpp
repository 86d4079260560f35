#include "netmend/netgraph/net_role.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <string>
#include <vector>

namespace netmend {
namespace {

bool isDigit(char c) {
  return c >= '0' && c <= '9';
}

std::string upperCase(std::string_view text) {
  std::string result(text);
  std::transform(result.begin(), result.end(), result.begin(),
                 [](unsigned char c) { return static_cast<char>(std::toupper(c)); });
  return result;
}

/// `/power/+3V3` is the `+3V3` of a sheet.
std::string_view lastStep(std::string_view name) {
  const auto slash = name.rfind('/');
  return slash == std::string_view::npos ? name : name.substr(slash + 1);
}

std::vector<std::string> words(std::string_view name) {
  std::vector<std::string> result(1);
  for (const char c : name) {
    // A sign belongs to what follows it: -12V.
    const bool isSign = (c == '+' || c == '-') && result.back().empty();
    if (std::isalnum(static_cast<unsigned char>(c)) != 0 || isSign)
      result.back() += c;
    else if (!result.back().empty())
      result.emplace_back();
  }
  if (result.back().empty()) result.pop_back();
  return result;
}

/// A stem followed by nothing but digits or one letter: GND, GND2, GNDA.
bool isStem(std::string_view word, std::string_view stem) {
  if (!word.starts_with(stem)) return false;
  const auto rest = word.substr(stem.size());
  return rest.size() <= 1 || std::all_of(rest.begin(), rest.end(), isDigit);
}

bool isGroundWord(std::string_view word) {
  static constexpr std::array<std::string_view, 4> prefixes{"A", "D", "P", "C"};
  if (isStem(word, "GND") || isStem(word, "VSS") || word == "0V" || word == "EARTH" || word == "GROUND")
    return true;
  return std::any_of(prefixes.begin(), prefixes.end(), [&](std::string_view prefix) {
    return word.starts_with(prefix) && isStem(word.substr(prefix.size()), "GND");
  });
}

bool allDigits(std::string_view text) {
  return std::all_of(text.begin(), text.end(), isDigit);
}

/// A voltage without its decimal point: 3V3, 12V, 12VEXT, 5VA; `word` has no sign.
bool isVoltage(std::string_view word) {
  const auto volt = word.find('V');
  if (volt == std::string_view::npos || volt == 0 || !allDigits(word.substr(0, volt))) return false;
  const auto after = word.substr(volt + 1);
  return allDigits(after) || (after.size() <= 3 && std::none_of(after.begin(), after.end(), isDigit));
}

bool isSupplyWord(std::string_view word) {
  if (word.starts_with('+') || word.starts_with('-')) {
    word.remove_prefix(1);
    // A number with a sign before it is a rail whatever follows: +5, -12BATT.
    if (!word.empty() && isDigit(word.front())) return true;
  }
  static constexpr std::array<std::string_view, 5> prefixes{"VCC", "VDD", "AVCC", "AVDD", "DVDD"};
  static constexpr std::array<std::string_view, 6> stems{"VEE", "VAA", "VBAT", "VBUS", "VSYS", "BATT"};
  static constexpr std::array<std::string_view, 3> whole{"VIN", "VMAIN", "PWR"};
  return isVoltage(word) || std::find(whole.begin(), whole.end(), word) != whole.end() ||
         std::any_of(prefixes.begin(), prefixes.end(), [&](auto p) { return word.starts_with(p); }) ||
         std::any_of(stems.begin(), stems.end(), [&](auto stem) { return isStem(word, stem); });
}

/// The first word says what a net is; what follows says of what (`VDD_IO`, `GND_PWR`). Words after it
/// that say otherwise make it a signal about the supply: `VBAT_SENSE`, `VCC_EN`.
bool isAboutSupply(const std::vector<std::string>& all) {
  static constexpr std::array<std::string_view, 12> about{"SENSE", "SNS", "EN",  "ENABLE", "FB",  "MON",
                                                          "PG",    "OK",  "DET", "GOOD",   "ADC", "CTRL"};
  return std::any_of(all.begin() + 1, all.end(), [&](const std::string& word) {
    return std::find(about.begin(), about.end(), word) != about.end();
  });
}

/// `+1.8V` and `+1,8V`: the dot is part of the number, not an end of a word.
std::string withoutDecimalPoint(std::string text) {
  for (std::size_t i = 1; i + 1 < text.size(); ++i)
    if ((text[i] == '.' || text[i] == ',') && isDigit(text[i - 1]) && isDigit(text[i + 1])) text.erase(i, 1);
  return text;
}

} // namespace

Fact<NetRole> roleFromName(std::string_view name) {
  const auto all = words(withoutDecimalPoint(upperCase(lastStep(name))));
  if (all.empty() || isAboutSupply(all)) return {};
  if (isGroundWord(all.front())) return guessed(NetRole::ground);
  // One of a pair: VIN+ is an amplifier's input.
  const bool isOneOfPair = name.ends_with('+') || name.ends_with('-');
  if (!isOneOfPair && isSupplyWord(all.front())) return guessed(NetRole::supply);
  return {};
}

Fact<NetRole> roleOf(const Net& net) {
  return net.role.known() ? net.role : roleFromName(net.name);
}

} // namespace netmend
