#include "netmend/casework/short_case.h"

#include <algorithm>

#include "netmend/netgraph/net_role.h"

namespace netmend {

namespace {

constexpr Ohms mostSeries{10.0};

Result<const MeterProfile*> meterFor(const ShortQuestion& question, const std::vector<MeterProfile>& meters) {
  const std::string& asked =
      !question.meter.empty() || question.readings.empty() ? question.meter : question.readings.front().meter;
  if (!asked.empty()) {
    const MeterProfile* meter = findMeter(meters, asked);
    if (meter == nullptr)
      return failure({pattern("core", "no such meter profile"), "meters.json", "", asked,
                      pattern("core", "an id of that file")});
    return meter;
  }
  const auto able = std::find_if(meters.begin(), meters.end(), [](const MeterProfile& meter) {
    return meter.mode(ReadingMode::milliohms) != nullptr;
  });
  return able != meters.end() ? &*able : &meters.front();
}

} // namespace

Result<ShortCase> solveShort(const BoardUnderWork& board, const ShortQuestion& question,
                             const RepairData& data) {
  const Lookup& lookup = *board.lookup;
  ShortCase out;
  LineOptions options;
  options.throughSupplies = true;
  options.mostSeriesResistance = mostSeries;
  if (question.net)
    out.line = lineOf(lookup, *board.graph, question.net, options);
  else if (question.pin)
    out.line = lineOf(lookup, *board.graph, question.pin, options);
  else
    return failure({pattern("core", "no line was named"), "", "", pattern("core", "neither net nor pin"),
                    pattern("core", "one of them")});
  const Net* net = out.line.nets.empty() ? nullptr : board.board->nets.find(out.line.nets.front());
  if (net != nullptr && roleOf(*net).valueOr(NetRole::signal) == NetRole::ground)
    return failure({pattern("core", "ground cannot be short to ground"), "", "", asItIs(net->name),
                    pattern("core", "the net that reads short")});
  const auto meter = meterFor(question, data.probing.meters);
  if (!meter) return failure(meter.error());
  std::vector<Reading> readings = question.readings;
  for (Reading& reading : readings)
    if (reading.mode == ReadingMode::dropUnderCurrent && !reading.injected)
      reading.injected = question.injected;
  std::vector<ShortSign> signs = question.signs;
  if (const auto warm = warmestOf(lookup, readings, data.shorts)) signs.push_back(*warm);
  // A temperature has done its work.
  std::erase_if(readings, [](const Reading& one) { return one.mode == ReadingMode::temperature; });
  out.search =
      findShort({lookup, *board.graph, out.line, data.shorts, data.efforts, **meter, question.injectedAt},
                readings, signs);
  out.next = nextShortProbe(out.search, question.unreachable);
  if (out.search.saysShort()) out.injection = proposeInjection(lookup, out.line.nets, data.injection);
  return out;
}

Result<ShortSign> signAt(const Lookup& lookup, ShortSign::Kind kind, const std::string& label) {
  const Board& board = lookup.board();
  ShortSign out{kind, {}, {}};
  const auto part = std::find_if(board.parts.begin(), board.parts.end(),
                                 [&](const Part& one) { return one.reference == label; });
  if (part != board.parts.end()) {
    out.part = part->id;
    if (part->position.known()) out.at = part->position.value;
    return out;
  }
  const auto pin = pinLabelled(lookup, label);
  if (!pin) return failure(pin.error());
  out.part = board.pins.find(*pin)->part;
  const auto at = positionOf(lookup, *pin);
  if (at.known()) out.at = at.value;
  return out;
}

DropPattern dropPatternOf(const ShortCase& found, PinId injectedAt, Amperes current) {
  const ShortSearch& search = found.search;
  const auto place = std::find_if(search.suspects.begin(), search.suspects.end(),
                                  [](const ShortSuspect& one) { return one.kind != ShortKind::noneOfThese; });
  if (place == search.suspects.end() || search.points.empty()) return {};
  auto into = std::find_if(search.points.begin(), search.points.end(), [&](const ProbePlace& point) {
    return injectedAt ? point.pin == injectedAt : point.effort.has_value();
  });
  if (into == search.points.end()) into = search.points.begin();
  return dropPattern(search, place->places.front(), static_cast<std::size_t>(into - search.points.begin()),
                     current);
}

} // namespace netmend
