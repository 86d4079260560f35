#include "netmend/meter/line_pattern.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

#include <QString>
#include <QStringDecoder>
#include <fmt/format.h>

#include "line_framer.h"
#include "netmend/base/json_reader.h"
#include "netmend/base/words.h"
#include "scpi.h"

namespace netmend {

namespace {

constexpr std::array<Word<Parity>, 3> parityWords{
    {{Parity::none, "none"}, {Parity::even, "even"}, {Parity::odd, "odd"}}};

/// An expression that tries too many ways is given up rather than waited for.
constexpr const char* tryLimit = "(*LIMIT_MATCH=20000)";

constexpr std::size_t longestMeterLine = 256;

tl::unexpected<Error> notRead(Said message, std::string_view line, Said expected = {}) {
  return failure({std::move(message), "", "", fmt::format("\"{}\"", printable(line)), std::move(expected)});
}

std::optional<double> factorOf(const std::string& prefix) {
  static constexpr std::array<std::pair<std::string_view, double>, 9> factors{{{"", 1.0},
                                                                               {"m", 1e-3},
                                                                               {"k", 1e3},
                                                                               {"K", 1e3},
                                                                               {"M", 1e6},
                                                                               {"u", 1e-6},
                                                                               {"\u00b5", 1e-6},
                                                                               {"\u03bc", 1e-6},
                                                                               {"n", 1e-9}}};
  for (const auto& [letter, factor] : factors)
    if (letter == prefix) return factor;
  return std::nullopt;
}

/// The unit as `unitOf` writes it; one that is none of ours stays as it is.
std::string unitFrom(const std::string& sent) {
  static constexpr std::array<std::pair<std::string_view, std::string_view>, 11> units{{{"VDC", "V"},
                                                                                        {"\u2126", "Ω"},
                                                                                        {"Ohm", "Ω"},
                                                                                        {"ohm", "Ω"},
                                                                                        {"OHM", "Ω"},
                                                                                        {"Ohms", "Ω"},
                                                                                        {"ohms", "Ω"},
                                                                                        {"OHMS", "Ω"},
                                                                                        {"C", "°C"},
                                                                                        {"degC", "°C"},
                                                                                        {"\u2103", "°C"}}};
  for (const auto& [from, to] : units)
    if (from == sent) return std::string(to);
  return sent;
}

/// Whether the expression has a group of this name.
bool hasGroup(const QRegularExpression& expression, const char* name) {
  return expression.namedCaptureGroups().contains(QLatin1String(name));
}

class GroupsOfLine {
public:
  GroupsOfLine(const QRegularExpression& expression, const QRegularExpressionMatch& match)
      : expression_(&expression), match_(&match) {}
  /// What the group has caught; empty if it has caught nothing or is not there.
  [[nodiscard]] std::string operator[](const char* name) const {
    if (!hasGroup(*expression_, name)) return {};
    return match_->captured(QLatin1String(name)).trimmed().toStdString();
  }

private:
  const QRegularExpression* expression_;
  const QRegularExpressionMatch* match_;
};

std::optional<SentNumber> numberFrom(std::string text) {
  // A decimal comma, unless there is a point: then nobody can tell what the comma means.
  if (std::count(text.begin(), text.end(), ',') == 1 && text.find('.') == std::string::npos)
    std::replace(text.begin(), text.end(), ',', '.');
  return parseNrf(text);
}

Result<LineReading> readingFrom(const LinePattern& pattern, const GroupsOfLine& groups,
                                std::string_view line) {
  LineReading reading;
  reading.unit = unitFrom(groups["unit"]);
  if (const auto mode = groups["mode"]; !mode.empty()) {
    const auto found = pattern.modes.find(mode);
    if (found == pattern.modes.end())
      return notRead(netmend::pattern("core", "an unknown word of mode"), line);
    reading.function = found->second;
    const auto unit = unitOf(*reading.function);
    if (!reading.unit.empty() && !unit.empty() && reading.unit != unit)
      return notRead(netmend::pattern("core", "a unit that does not go with the function"), line);
  }
  const auto factor = factorOf(groups["prefix"]);
  if (!factor) return notRead(netmend::pattern("core", "an unknown prefix of the unit"), line);
  const auto value = groups["value"];
  const bool overLimit = !groups["overload"].empty();
  if (overLimit && value.empty()) return reading;
  if (overLimit || value.empty())
    return notRead(netmend::pattern("core", "not one value"), line,
                   netmend::pattern("core", "either a value or an overload"));
  const auto number = numberFrom(value);
  if (!number) return notRead(netmend::pattern("core", "not a value"), line);
  if (std::abs(number->value) > 1e15)
    return notRead(netmend::pattern("core", "a number no meter measures"), line);
  reading.reading = {number->value * *factor, number->lastDigit * *factor};
  return reading;
}

int oneOfNumbers(const JsonReader::Node& node, std::initializer_list<int> allowed, const Pattern& expected) {
  const auto number = node.whole();
  for (const int value : allowed)
    if (number == static_cast<std::uint64_t>(value)) return value;
  node.wrong(netmend::pattern("core", "a setting that no serial port has"), fmt::format("{}", number),
             expected);
  return *allowed.begin();
}

void readExpression(const JsonReader::Node& node, LinePattern& pattern) {
  const auto text = node.text();
  if (text.starts_with("(*")) {
    node.wrong(netmend::pattern("core", "no orders to the matcher"), text,
               netmend::pattern("core", "a regular expression"));
    return;
  }
  pattern.expression.setPattern(QLatin1String(tryLimit) + QLatin1String("\\A(?:") +
                                QString::fromStdString(text) + QLatin1String(")\\z"));
  pattern.expression.setPatternOptions(QRegularExpression::NoPatternOption);
  if (!pattern.expression.isValid())
    node.wrong(netmend::pattern("core", "not a regular expression"),
               pattern.expression.errorString().toStdString(),
               netmend::pattern("core", "one in Perl's manner"));
  else if (!hasGroup(pattern.expression, "value"))
    node.wrong(netmend::pattern("core", "no group for the value"), text, asItIs("(?<value>…)"));
}

void readExamples(const JsonReader::Node& list, LinePattern& pattern) {
  for (const auto& item : list.items()) {
    pattern.examples.push_back(item.text());
    if (!pattern.expression.isValid()) continue;
    const auto reading = parseMeterLine(pattern, pattern.examples.back());
    if (!reading)
      item.wrong(netmend::pattern("core", "the expression does not read its example"), reading.error().said(),
                 {});
  }
  if (pattern.examples.empty())
    list.wrong(netmend::pattern("core", "a pattern needs an example"), netmend::pattern("core", "none"),
               netmend::pattern("core", "at least one"));
}

LinePattern readPattern(const JsonReader::Node& node) {
  node.onlyKeys({"id", "name", "source", "baud", "data_bits", "stop_bits", "parity", "raises_dtr", "pattern",
                 "modes", "examples"});
  LinePattern pattern;
  pattern.id = node.at("id").text();
  const bool good =
      !pattern.id.empty() && pattern.id.front() >= 'a' && pattern.id.front() <= 'z' &&
      pattern.id.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-") == std::string::npos;
  if (!good)
    node.at("id").wrong(netmend::pattern("core", "not an id"), pattern.id,
                        netmend::pattern("core", "small letters, digits and dashes, a letter first"));
  pattern.name = node.at("name").text();
  pattern.source = node.source();
  pattern.baud = static_cast<int>(node.at("baud").number(50.0, 4e6));
  if (node.has("data_bits"))
    pattern.dataBits = oneOfNumbers(node.at("data_bits"), {8, 7}, netmend::pattern("core", "7 or 8"));
  if (node.has("stop_bits"))
    pattern.stopBits = oneOfNumbers(node.at("stop_bits"), {1, 2}, netmend::pattern("core", "1 or 2"));
  if (node.has("parity")) pattern.parity = node.at("parity").oneOf(parityWords);
  if (node.has("raises_dtr")) pattern.raisesDtr = node.at("raises_dtr").boolean();
  readExpression(node.at("pattern"), pattern);
  if (node.has("modes")) {
    for (const auto& [word, value] : node.at("modes").members())
      pattern.modes[word] = value.wordOf(
          meterFunctionFrom, "diode, ohms, four-wire ohms, continuity, DC volts, temperature or other");
  }
  readExamples(node.at("examples"), pattern);
  return pattern;
}

} // namespace

Result<std::vector<LinePattern>> loadLinePatterns(const std::filesystem::path& path) {
  auto reader = JsonReader::ofFile(path, "netmend-meter-lines");
  if (!reader) return failure(reader.error());
  const auto root = reader->root();
  root.onlyKeys({"format", "version", "patterns"});
  std::vector<LinePattern> patterns;
  std::set<std::string> ids;
  for (const auto& item : root.at("patterns").items()) {
    patterns.push_back(readPattern(item));
    if (!ids.insert(patterns.back().id).second)
      item.at("id").wrong(netmend::pattern("core", "two patterns with one id"), patterns.back().id,
                          netmend::pattern("core", "each id once"));
    if (reader->failed()) break;
  }
  return reader->result(std::move(patterns));
}

const LinePattern* findLinePattern(const std::vector<LinePattern>& patterns, std::string_view id) {
  const auto it =
      std::find_if(patterns.begin(), patterns.end(), [&](const LinePattern& p) { return p.id == id; });
  return it == patterns.end() ? nullptr : &*it;
}

Result<LineReading> parseMeterLine(const LinePattern& pattern, std::string_view line) {
  if (line.size() > longestMeterLine)
    return notRead(netmend::pattern("core", "a line too long for a value"), line);
  const bool controls = std::any_of(line.begin(), line.end(), [](char c) {
    const auto byte = static_cast<unsigned char>(c);
    return (byte < 0x20 && byte != '\t') || byte == 0x7F;
  });
  QStringDecoder decoder(QStringDecoder::Utf8, QStringDecoder::Flag::Stateless);
  const QString text = decoder(QByteArrayView(line.data(), static_cast<qsizetype>(line.size())));
  if (controls || decoder.hasError()) return notRead(netmend::pattern("core", "not text in UTF-8"), line);
  const auto match = pattern.expression.match(text);
  if (!match.hasMatch())
    return notRead(netmend::pattern("core", "not a line of this meter"), line,
                   said(netmend::pattern("core", "one such as \"{}\""),
                        pattern.examples.empty() ? pattern.id : pattern.examples.front()));
  return readingFrom(pattern, GroupsOfLine(pattern.expression, match), line);
}

std::optional<Said> mismatch(const LineReading& line, MeterFunction wanted) {
  if (line.function && *line.function != wanted)
    return said(netmend::pattern("core", "the meter is at {}, {} is wanted"), nameOf(*line.function),
                nameOf(wanted));
  if (!line.unit.empty() && line.unit != unitOf(wanted))
    return said(netmend::pattern("core", "the meter sends {}, {} is wanted"), line.unit, nameOf(wanted));
  return std::nullopt;
}

} // namespace netmend
