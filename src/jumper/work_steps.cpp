#include "netmend/jumper/work_steps.h"

#include <algorithm>
#include <array>
#include <functional>
#include <limits>
#include <span>

#include "netmend/base/json_reader.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/probing/words.h"

namespace netmend {
namespace {

/// In the order of WorkKind.
const std::vector<std::string_view> workWords{"jumper",      "wire",         "resolder", "remove_bridge",
                                              "remove_part", "replace_part", "clean",    "cut_track",
                                              "other",       "not_economic"};
const std::vector<std::string_view> jumperFlags{"scraped", "scraped_from", "scraped_to",
                                                "small",   "opened",       "warned"};
const std::vector<std::string_view> otherFlags{"reason", "between"};

/// The names between braces.
std::vector<std::string> gapsIn(const std::string& text) {
  std::vector<std::string> out;
  for (std::size_t open = text.find('{'); open != std::string::npos;) {
    const std::size_t close = text.find('}', open);
    if (close == std::string::npos) break;
    out.push_back(text.substr(open + 1, close - open - 1));
    open = text.find('{', close);
  }
  return out;
}

std::string listed(std::span<const std::string_view> words) {
  std::string text;
  for (const auto word : words)
    text += (text.empty() ? "" : ", ") + std::string(word);
  return text;
}

bool contains(std::span<const std::string_view> words, std::string_view word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

std::string checkedText(const JsonReader::Node& node, std::span<const std::string_view> names) {
  std::string text = node.text();
  if (std::count(text.begin(), text.end(), '{') != std::count(text.begin(), text.end(), '}'))
    node.wrong(pattern("core", "braces that do not match"), "\"" + text + "\"", asItIs("{name}"));
  for (const std::string& name : gapsIn(text))
    if (!contains(names, name))
      node.wrong(pattern("core", "a name that nothing fills in"), "{" + name + "}", listed(names));
  return text;
}

constexpr std::array<Word<MeasureAt>, 6> atWords{{{MeasureAt::from, "from"},
                                                  {MeasureAt::to, "to"},
                                                  {MeasureAt::scraped, "scraped"},
                                                  {MeasureAt::wire, "wire"},
                                                  {MeasureAt::target, "target"},
                                                  {MeasureAt::supply, "supply"}}};
constexpr std::array<Word<MeasureReads>, 8> readsWords{{{MeasureReads::anything, "anything"},
                                                        {MeasureReads::nothing, "nothing"},
                                                        {MeasureReads::resistance, "resistance"},
                                                        {MeasureReads::joined, "joined"},
                                                        {MeasureReads::parted, "parted"},
                                                        {MeasureReads::expectedFrom, "expected_from"},
                                                        {MeasureReads::expectedTo, "expected_to"},
                                                        {MeasureReads::expectedBridged, "expected_bridged"}}};

/// A wire and a solder bridge lie between two places; all else is one place.
bool hasPlace(WorkKind kind, MeasureAt at) {
  switch (at) {
  case MeasureAt::from:
  case MeasureAt::to:
    return kind == WorkKind::jumper || kind == WorkKind::wire || kind == WorkKind::removeBridge;
  case MeasureAt::scraped:
  case MeasureAt::wire:
    return kind == WorkKind::jumper;
  case MeasureAt::target:
    return kind != WorkKind::jumper;
  case MeasureAt::supply:
    break;
  }
  return true;
}

/// Only a jumper's wire and predictions are known.
bool isJumpers(MeasureReads reads) {
  switch (reads) {
  case MeasureReads::anything:
  case MeasureReads::nothing:
  case MeasureReads::joined:
  case MeasureReads::parted:
    return false;
  case MeasureReads::resistance:
  case MeasureReads::expectedFrom:
  case MeasureReads::expectedTo:
  case MeasureReads::expectedBridged:
    break;
  }
  return true;
}

MeasureTemplate readMeasure(const JsonReader::Node& node, WorkKind kind) {
  node.onlyKeys({"at", "other", "mode", "reads"});
  MeasureTemplate out;
  out.at = node.at("at").oneOf(atWords);
  if (node.has("other")) out.other = node.at("other").oneOf(atWords);
  out.mode = node.at("mode").wordOf(readingModeFrom, "a mode such as diode or ohms");
  if (node.has("reads")) out.reads = node.at("reads").oneOf(readsWords);
  const auto refuse = [&](const char* member) {
    const auto wrong = node.at(member);
    wrong.wrong(pattern("core", "nothing here has such a place or value"), "\"" + wrong.text() + "\"",
                kind == WorkKind::jumper ? pattern("core", "an end of the jumper, its wire, or the supply")
                                         : pattern("core", "target or supply"));
  };
  if (!hasPlace(kind, out.at)) refuse("at");
  if (out.other && !hasPlace(kind, *out.other)) refuse("other");
  if (isJumpers(out.reads) && kind != WorkKind::jumper) refuse("reads");
  return out;
}

StepTemplate readStep(const JsonReader::Node& node, WorkKind kind) {
  const bool isJumper = kind == WorkKind::jumper;
  const std::span<const std::string_view> names = isJumper ? std::span<const std::string_view>(jumperGaps)
                                                           : std::span<const std::string_view>(repairGaps);
  const auto& flags = isJumper ? jumperFlags : otherFlags;
  node.onlyKeys({"when", "text", "detail", "check", "expected", "otherwise", "measure", "source"});
  StepTemplate step;
  step.when = node.text("when", "");
  const std::string flag = step.when.starts_with('!') ? step.when.substr(1) : step.when;
  if (!flag.empty() && !contains(flags, flag))
    node.at("when").wrong(pattern("core", "unknown condition"), "\"" + step.when + "\"", listed(flags));
  step.text = checkedText(node.at("text"), names);
  if (node.has("detail")) step.detail = checkedText(node.at("detail"), names);
  step.check = node.has("check") && node.at("check").boolean();
  if (step.check) step.expected = checkedText(node.at("expected"), names);
  if (!step.check && node.has("expected"))
    node.at("expected")
        .wrong(pattern("core", "only a check has something expected"), step.text, asItIs("\"check\": true"));
  if (node.has("otherwise")) {
    if (!step.check)
      node.at("otherwise")
          .wrong(pattern("core", "only a check has something expected"), step.text,
                 asItIs("\"check\": true"));
    step.otherwise = checkedText(node.at("otherwise"), names);
  }
  if (node.has("measure")) {
    if (!step.check)
      node.at("measure").wrong(pattern("core", "only a check is measured"), step.text,
                               asItIs("\"check\": true"));
    step.measure = readMeasure(node.at("measure"), kind);
  }
  return step;
}

/// Kinds that a shop's own file of earlier may lack: then they have no steps.
bool isLater(WorkKind kind) {
  return kind == WorkKind::wire || kind == WorkKind::removeBridge || kind == WorkKind::other;
}

using Flags = std::map<std::string, bool>;

using Measured = std::function<StepMeasure(const MeasureTemplate&)>;

std::vector<Step> stepsFrom(const WorkSteps& data, WorkKind kind, const Flags& flags,
                            const Measured& measured) {
  std::vector<Step> steps;
  const auto found = data.kinds.find(kind);
  if (found == data.kinds.end()) return steps;
  const auto isSet = [&](const std::string& flag) {
    const auto f = flags.find(flag);
    return f != flags.end() && f->second;
  };
  for (const StepTemplate& t : found->second) {
    if (!t.when.empty() && (t.when[0] == '!' ? isSet(t.when.substr(1)) : !isSet(t.when))) continue;
    steps.push_back({t.text, t.check, t.expected,
                     t.measure ? std::optional(measured(*t.measure)) : std::nullopt, t.otherwise, t.detail});
  }
  return steps;
}

constexpr double jointLimit = 2.0; ///< "more than twice that: a joint is bad"
constexpr double noVolts = 0.5;    ///< what is read as 0 V

ProbePoint supply() {
  return {PinId{}, StepMeasure::batteryContacts};
}

/// As it is written: what is said of it and what it is held against agree.
void expectAs(StepMeasure& measure, const std::optional<ExpectedReading>& expected) {
  if (!expected) return;
  measure.overLimit = expected->overLimit;
  if (expected->overLimit) return;
  const double middle = asShown(expected->value.value, measure.mode);
  const double half = asShown(expected->giveOrTake.value, measure.mode);
  measure.interval = ValueInterval{middle - half, middle + half};
}

/// What does not hang on a jumper's figures.
void expectPlainly(StepMeasure& measure, MeasureReads reads) {
  if (reads == MeasureReads::nothing) measure.interval = ValueInterval{-noVolts, noVolts};
  if (reads == MeasureReads::joined) measure.interval = ValueInterval{0.0, joinedOhms};
  if (reads != MeasureReads::parted) return;
  measure.interval = ValueInterval{partedOhms, std::numeric_limits<double>::max()};
  measure.overLimit = true;
}

StepMeasure jumperMeasure(const MeasureTemplate& t, const JumperProposal& proposal,
                          const WorkPrediction& prediction) {
  const auto at = [&](MeasureAt place) -> ProbePoint {
    switch (place) {
    case MeasureAt::to:
      return probePointOf(proposal.to);
    case MeasureAt::scraped:
      return probePointOf(proposal.from.scraped() || !proposal.to.scraped() ? proposal.from : proposal.to);
    case MeasureAt::wire:
      return {PinId{}, "wire"};
    case MeasureAt::supply:
      return supply();
    case MeasureAt::from:
    case MeasureAt::target:
      break;
    }
    return probePointOf(proposal.from);
  };
  StepMeasure out;
  out.mode = t.mode;
  out.point = at(t.at);
  if (t.other) out.other = at(*t.other);
  switch (t.reads) {
  case MeasureReads::anything:
  case MeasureReads::nothing:
  case MeasureReads::joined:
  case MeasureReads::parted:
    expectPlainly(out, t.reads);
    break;
  case MeasureReads::resistance:
    out.interval = ValueInterval{0.0, jointLimit * proposal.wire.resistance.value};
    break;
  case MeasureReads::expectedFrom:
    expectAs(out, prediction.atFrom);
    break;
  case MeasureReads::expectedTo:
    expectAs(out, prediction.atTo);
    break;
  case MeasureReads::expectedBridged:
    expectAs(out, prediction.bridged);
    break;
  }
  return out;
}

} // namespace

Result<WorkSteps> loadWorkSteps(const std::filesystem::path& path) {
  auto reader = JsonReader::ofFile(path, "netmend-work-steps", 2);
  if (!reader) return failure(reader.error());
  const auto root = reader->root();
  root.onlyKeys({"format", "version", "source", "kinds", "cautions"});
  root.source();
  WorkSteps data;
  const auto kinds = root.at("kinds");
  for (const auto& [key, node] : kinds.members())
    if (!contains(workWords, key))
      node.wrong(pattern("core", "unknown kind of work"), "\"" + key + "\"", listed(workWords));
  for (std::size_t i = 0; i < workWords.size(); ++i) {
    if (!kinds.has(std::string(workWords[i])) && isLater(static_cast<WorkKind>(i))) continue;
    auto& steps = data.kinds[static_cast<WorkKind>(i)];
    for (const auto& node : kinds.at(std::string(workWords[i])).items())
      steps.push_back(readStep(node, static_cast<WorkKind>(i)));
    if (steps.empty())
      kinds.at(std::string(workWords[i]))
          .wrong(pattern("core", "no step"), pattern("core", "an empty list"),
                 pattern("core", "at least one"));
  }
  for (const auto& node : root.at("cautions").items()) {
    node.onlyKeys({"text", "source"});
    data.cautions.push_back(node.at("text").text());
    node.source();
  }
  return reader->result(std::move(data));
}

WireFigures wireFigures(const JumperProposal& proposal, const WorkPrediction& prediction) {
  const WireChoice& wire = proposal.wire;
  return {proposal.length,    wire.cutLength, wire.wire.stripping, proposal.tackPoints.size(),
          wire.current.value, wire.drop,      wire.resistance,     prediction};
}

std::vector<Step> jumperSteps(const WorkSteps& data, const JumperProposal& proposal,
                              const WorkPrediction& prediction) {
  const Flags flags{
      {"scraped", proposal.from.scraped() || proposal.to.scraped()},
      {"scraped_from", proposal.from.scraped()},
      {"scraped_to", proposal.to.scraped()},
      {"small", proposal.from.has(LandingNote::smallPart) || proposal.to.has(LandingNote::smallPart)},
      {"opened", !proposal.from.opening.keepOuts.empty() || !proposal.to.opening.keepOuts.empty()},
      {"warned", proposal.wire.warned()}};
  return stepsFrom(data, WorkKind::jumper, flags,
                   [&](const MeasureTemplate& t) { return jumperMeasure(t, proposal, prediction); });
}

Result<std::vector<Step>> workSteps(const WorkSteps& data, const WorkRequest& request) {
  if (request.kind == WorkKind::jumper)
    return failure({pattern("core", "a jumper's steps come from its proposal")});
  if (request.target.empty())
    return failure({.message = pattern("core", "a repair needs its target"),
                    .expected = pattern("core", "a part, joint, place or track")});
  if (request.kind == WorkKind::notEconomic && request.reason.empty())
    return failure({.message = pattern("core", "a board is given up only with a reason"),
                    .expected = pattern("core", "why the repair does not pay")});
  if (request.kind == WorkKind::wire && request.places.size() != 2)
    return failure({.message = pattern("core", "a wire has two ends"),
                    .found = request.target,
                    .expected = pattern("core", "both of them: J4.9 U3.12")});
  const bool between = request.places.size() == 2;
  const auto at = [&](MeasureAt place) {
    if (place == MeasureAt::supply) return supply();
    if (request.places.empty()) return ProbePoint{PinId{}, request.target};
    return place == MeasureAt::to ? request.places.back() : request.places.front();
  };
  const Flags flags{{"reason", !request.reason.empty()}, {"between", between}};
  return stepsFrom(data, request.kind, flags, [&](const MeasureTemplate& t) {
    StepMeasure out;
    out.mode = t.mode;
    out.point = at(t.at);
    if (t.other) out.other = at(*t.other);
    expectPlainly(out, t.reads);
    return out;
  });
}

} // namespace netmend
