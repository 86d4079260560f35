#include "scpi.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include <fmt/format.h>

#include "line_framer.h"

namespace netmend {

namespace {

constexpr double scpiInfinity = 9.9e37;
constexpr double scpiNotANumber = 9.91e37;
constexpr double beyondAnyMeter = 1e15;

bool isDigit(char c) {
  return c >= '0' && c <= '9';
}

std::string_view withoutBlanks(std::string_view text) {
  const auto first = text.find_first_not_of(" \t");
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

std::size_t countDigits(std::string_view text) {
  return static_cast<std::size_t>(std::find_if_not(text.begin(), text.end(), isDigit) - text.begin());
}

/// `E+05` at the front of `text`, the sign not required; nothing if it is no exponent, 0 if there is no text.
std::optional<int> exponentOf(std::string_view text) {
  if (text.empty()) return 0;
  if (text.front() != 'E' && text.front() != 'e') return std::nullopt;
  text.remove_prefix(1);
  if (text.starts_with('+')) {
    text.remove_prefix(1);
    if (text.starts_with('-')) return std::nullopt;
  }
  int exponent = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), exponent);
  if (error != std::errc() || end != text.data() + text.size()) return std::nullopt;
  return exponent;
}

tl::unexpected<Error> notThat(Said message, std::string_view line, Said expected) {
  return failure({std::move(message), "", "", fmt::format("\"{}\"", printable(line)), std::move(expected)});
}

/// The inside of a string in quotes, which both kinds may enclose (IEEE 488.2, string response data).
std::optional<std::string_view> unquoted(std::string_view text) {
  if (text.size() < 2 || (text.front() != '"' && text.front() != '\'') || text.back() != text.front())
    return std::nullopt;
  return text.substr(1, text.size() - 2);
}

bool isPrintable(std::string_view text) {
  return std::all_of(text.begin(), text.end(), [](char c) { return c >= 0x20 && c < 0x7F; });
}

} // namespace

std::optional<SentNumber> parseNrf(std::string_view text) {
  text = withoutBlanks(text);
  if (text.empty() || text.size() > 64) return std::nullopt;
  const bool negative = text.front() == '-';
  if (text.front() == '+') text.remove_prefix(1); // from_chars knows no plus
  std::string_view rest = text;
  if (negative) rest.remove_prefix(1);
  const std::size_t whole = countDigits(rest);
  rest.remove_prefix(whole);
  std::size_t decimals = 0;
  if (rest.starts_with('.')) {
    rest.remove_prefix(1);
    decimals = countDigits(rest);
    rest.remove_prefix(decimals);
  }
  if (whole + decimals == 0) return std::nullopt;
  const auto exponent = exponentOf(rest);
  if (!exponent || std::abs(*exponent) > 300) return std::nullopt;
  SentNumber number;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number.value);
  if (error != std::errc() || end != text.data() + text.size() || !std::isfinite(number.value))
    return std::nullopt;
  number.lastDigit = std::pow(10.0, *exponent - static_cast<int>(decimals));
  return number;
}

Result<ScpiValue> parseScpiValue(std::string_view line) {
  const auto number = parseNrf(line);
  if (!number) return notThat(pattern("core", "not a value"), line, pattern("core", "one number"));
  const double size = std::abs(number->value);
  if (size == scpiInfinity) return ScpiValue{};
  if (size == scpiNotANumber) return ScpiValue{{}, true};
  if (size > beyondAnyMeter)
    return notThat(pattern("core", "a number no meter measures"), line,
                   pattern("core", "at most 1E15, or 9.9E37"));
  return ScpiValue{{number->value, number->lastDigit}, false};
}

Result<MeterFunction> parseScpiFunction(std::string_view line) {
  const auto inside = unquoted(withoutBlanks(line));
  if (!inside)
    return notThat(pattern("core", "not a function"), line,
                   pattern("core", "a name in quotes such as \"DIOD\""));
  std::string name(inside->substr(0, inside->find_first_of(" ,")));
  const auto letter = [](char c) { return (c >= 'A' && c <= 'Z') || c == ':' || (c >= '0' && c <= '9'); };
  std::transform(name.begin(), name.end(), name.begin(),
                 [](char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c; });
  if (name.empty() || !std::all_of(name.begin(), name.end(), letter))
    return notThat(pattern("core", "not a function"), line,
                   pattern("core", "a name in quotes such as \"DIOD\""));
  for (const std::string_view root : {"SENSE:", "SENS:"})
    if (name.starts_with(root)) name.erase(0, root.size());
  static constexpr std::array<std::pair<std::string_view, MeterFunction>, 16> names{
      {{"DIOD", MeterFunction::diode},
       {"DIODE", MeterFunction::diode},
       {"RES", MeterFunction::ohms},
       {"RESISTANCE", MeterFunction::ohms},
       {"FRES", MeterFunction::fourWireOhms},
       {"FRESISTANCE", MeterFunction::fourWireOhms},
       {"CONT", MeterFunction::continuity},
       {"CONTINUITY", MeterFunction::continuity},
       {"VOLT", MeterFunction::dcVolts},
       {"VOLT:DC", MeterFunction::dcVolts},
       {"VOLTAGE", MeterFunction::dcVolts},
       {"VOLTAGE:DC", MeterFunction::dcVolts},
       {"TEMP", MeterFunction::temperature},
       {"TEMPERATURE", MeterFunction::temperature},
       {"TEMP:RTD", MeterFunction::temperature},
       {"TEMP:FRTD", MeterFunction::temperature}}};
  const auto found =
      std::find_if(names.begin(), names.end(), [&](const auto& entry) { return entry.first == name; });
  return found == names.end() ? MeterFunction::other : found->second;
}

Result<ScpiErrorEntry> parseScpiErrorEntry(std::string_view line) {
  constexpr Pattern expected = pattern("core", "a number and a text such as 0,\"No error\"");
  const auto comma = line.find(',');
  if (comma == std::string_view::npos)
    return notThat(pattern("core", "not an entry of the error queue"), line, expected);
  std::string_view digits = withoutBlanks(line.substr(0, comma));
  if (digits.starts_with('+')) digits.remove_prefix(1);
  ScpiErrorEntry entry;
  const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), entry.code);
  const auto inside = unquoted(withoutBlanks(line.substr(comma + 1)));
  if (digits.empty() || error != std::errc() || end != digits.data() + digits.size() || !inside ||
      !isPrintable(*inside))
    return notThat(pattern("core", "not an entry of the error queue"), line, expected);
  entry.text = *inside;
  return entry;
}

Result<std::string> parseScpiIdentity(std::string_view line) {
  const bool shape = isPrintable(line) && std::count(line.begin(), line.end(), ',') >= 3 &&
                     line.front() != '"' && !parseScpiErrorEntry(line) &&
                     !parseNrf(line.substr(0, line.find(',')));
  if (!shape)
    return notThat(pattern("core", "not an identity"), line,
                   pattern("core", "maker, model, serial number and firmware"));
  const auto first = line.find(',');
  const auto maker = withoutBlanks(line.substr(0, first));
  const auto rest = line.substr(first + 1);
  const auto model = withoutBlanks(rest.substr(0, rest.find(',')));
  return std::string(maker) + (maker.empty() || model.empty() ? "" : " ") + std::string(model);
}

std::string_view scpiCommandFor(MeterFunction function) {
  switch (function) {
  case MeterFunction::diode:
    return "CONF:DIOD";
  case MeterFunction::ohms:
    return "CONF:RES";
  case MeterFunction::fourWireOhms:
    return "CONF:FRES";
  case MeterFunction::continuity:
    return "CONF:CONT";
  case MeterFunction::dcVolts:
    return "CONF:VOLT:DC";
  case MeterFunction::temperature:
    return "CONF:TEMP";
  case MeterFunction::other:
    return {};
  }
  return {};
}

} // namespace netmend
