#include <algorithm>
#include <map>
#include <optional>

#include "ipc_reader.h"

namespace netmend::ipc {

namespace {

constexpr std::size_t netColumns = 14;

struct Alias {
  std::string shortName, longName;
};

/// `P  NNAME1     A LIM`, `P  NNAMEm0000 A_LONG_NAME`: the alias from column 9, the name behind it.
std::optional<Alias> aliasFrom(std::string_view value) {
  const std::string_view text = trimmed(value);
  const std::size_t end = text.find(' ');
  if (text.empty() || end == std::string_view::npos) return std::nullopt;
  return Alias{std::string(text.substr(0, end)), std::string(trimmed(text.substr(end)))};
}

void noteLayers(Preamble& p, const RecordLine& line) {
  const int code = line.code();
  const auto note = [&](std::string_view digits) {
    if (digits.size() != 2 || digits[0] < '0' || digits[0] > '9' || digits[1] < '0' || digits[1] > '9')
      return;
    const int layer = (digits[0] - '0') * 10 + (digits[1] - '0');
    if (layer == 0) return;
    p.layers = std::max(p.layers, layer);
    p.layersSeen.insert(layer);
    if (code == 317 && line.columns(21, 26) == "VIA") p.viaLayers.insert(layer);
  };
  const auto noteAt = [&](std::size_t column, char letter) {
    if (line.at(column) == letter) note(line.from(column + 1).substr(0, 2));
  };
  if (isTestRecord(code)) noteAt(39, 'A');
  if (code == 307) {
    noteAt(75, 'L');
    noteAt(78, 'L');
  }
  if (code == 378) noteAt(19, 'L');
}

/// Records name a long net by the alias, or by the parameter's whole word "NNAME1".
void useAliases(Preamble& p, const std::vector<Alias>& aliases, bool wholeWord) {
  for (const Alias& alias : aliases) {
    const std::string key = wholeWord ? "NNAME" + alias.shortName : alias.shortName;
    const auto [it, isNew] = p.longNames.emplace(key, alias.longName);
    if (!isNew && it->second != alias.longName) {
      p.folded.add(pattern("core", "aliases that stand for two nets, of which the first was used"),
                   said(pattern("core", "{}: {} and {}"), alias.shortName, it->second, alias.longName));
    }
  }
}

/// Names that are the same once they are cut to the columns of a record.
void reportCollisions(Preamble& p, const std::vector<Alias>& aliases, const std::set<std::string>& used) {
  std::map<std::string, std::string> byCut;
  std::optional<std::pair<std::string, std::string>> pair, cutNet; // the first of each kind
  std::size_t pairs = 0, cutNets = 0;
  for (const Alias& alias : aliases) {
    const std::string cut = alias.longName.substr(0, netColumns);
    const auto [it, isNew] = byCut.emplace(cut, alias.longName);
    if (!used.contains(cut) || alias.longName.size() <= netColumns) continue;
    if (!isNew && it->second != alias.longName && ++pairs == 1) pair = {it->second, alias.longName};
    if (++cutNets == 1) cutNet = {cut, alias.longName};
  }
  if (pair) {
    p.notices.push_back(
        said(pattern("core", "the nets {} and {} have the same first {} characters; such pairs: {}"),
             pair->first, pair->second, netColumns, pairs));
  }
  if (cutNet) {
    p.notices.push_back(said(
        pattern("core", "net {} may be {} cut to {} characters; they were read as two nets; such nets: {}"),
        cutNet->first, cutNet->second, netColumns, cutNets));
  }
  const auto full = std::count_if(used.begin(), used.end(),
                                  [](const std::string& name) { return name.size() == netColumns; });
  if (full > 0) {
    p.notices.push_back(
        said(pattern("core", "net names that fill all {} columns and may have been cut: {}; nets whose names "
                             "were cut to the same would appear as one"),
             netColumns, full));
  }
}

Result<void> readParameter(Preamble& p, std::vector<Alias>& aliases, std::string_view text,
                           const ImportSource& source, std::size_t line) {
  const std::size_t end = std::min(text.find(' '), text.size());
  const std::string_view name = text.substr(0, end);
  const std::string_view value = trimmed(text.substr(end));
  if (name == "UNITS") {
    const auto units = unitsFrom(value);
    const FilePlace place = FilePlace::atLine(line);
    if (!units)
      return failure({pattern("core", "unknown units"), source.file, place, std::string(value),
                      pattern("core", "SI, CUST 0, CUST 1 or CUST 2")});
    if (p.unitsGiven && *units != p.units)
      return failure({pattern("core", "the units are given twice and differ"), source.file, place,
                      std::string(value), pattern("core", "one UNITS")});
    p.units = *units;
    p.unitsGiven = true;
  } else if (name == "TITLE") {
    p.title = value;
  } else if (name == "JOB") {
    p.job = value;
  } else if (name == "REV") {
    p.revision = value;
  } else if (name == "arrayDim") {
    p.countsClockwise = true;
  } else if (name.starts_with("NNAME")) {
    if (const auto alias = aliasFrom(text.substr(5))) aliases.push_back(*alias);
  }
  return {};
}

} // namespace

Result<Preamble> preambleOf(const ImportSource& source) {
  Preamble p;
  std::vector<Alias> aliases;
  std::set<std::string> used;
  bool wholeWord = false;
  Result<void> state;
  forEachBoardLine(source.content, [&](const RecordLine& line, std::size_t number) {
    if (line.text().starts_with('P')) {
      state = readParameter(p, aliases, trimmed(line.text().substr(1)), source, number);
      return state.has_value();
    }
    const int code = line.code();
    p.ended = p.ended || code == 999;
    noteLayers(p, line);
    if (isTestRecord(code) || code == 378) {
      std::string net(line.columns(4, 17));
      wholeWord = wholeWord || net.starts_with("NNAME");
      used.insert(std::move(net));
    }
    return true;
  });
  if (!state) return failure(state.error());
  if (!p.ended) {
    return failure({pattern("core", "the file has no end"),
                    source.file,
                    "",
                    {},
                    pattern("core", "a record 999 after the last one")});
  }
  if (!p.unitsGiven)
    p.notices.emplace_back(pattern("core", "no UNITS are given; read as CUST 0, 0.0001 inch"));
  useAliases(p, aliases, wholeWord);
  reportCollisions(p, aliases, used);
  return p;
}

std::string IpcReader::netName(const std::string& field) const {
  const auto found = preamble.longNames.find(field);
  return found == preamble.longNames.end() ? field : found->second;
}

} // namespace netmend::ipc
