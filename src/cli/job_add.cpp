#include "job_add.h"
#include "json_words.h"

#include <algorithm>
#include <charconv>
#include <optional>

#include <fmt/format.h>

#include "job_case.h"
#include "netmend/base/data_folder.h"
#include "netmend/casework/function_check.h"
#include "netmend/casework/hand_repair.h"
#include "netmend/casework/proof.h"
#include "netmend/casework/repair_data.h"
#include "netmend/casework/step_check.h"
#include "netmend/casework/take_reading.h"
#include "netmend/drawing/photo_image.h"
#include "netmend/jobbook/job_words.h"
#include "netmend/jobbook/record.h"
#include "netmend/jumper/work_steps.h"
#include "netmend/netgraph/handle.h"
#include "netmend/words/verdict.h"

namespace netmend {

namespace {

/// The job's board where its file is still there; otherwise readings are judged by label alone.
Result<BoardUnderWork> boardOf(const Job& job, std::vector<Said>& notices) {
  if (job.boardFile.empty()) return BoardUnderWork{};
  auto loaded = openBoard(job.boardFile);
  if (loaded) return loaded;
  notices.push_back(said(pattern("core", "judged without the board: {}"), loaded.error().said()));
  return BoardUnderWork{};
}

/// A reading at a place that has to prove the repair is judged by what it must read there; any other by what
/// good boards read.
JobReading judgedFor(const Reading& reading, ReadingPurpose purpose, const std::vector<ProofPoint>& points,
                     const ProofBasis& basis) {
  const auto point =
      std::find_if(points.begin(), points.end(), [&](const ProofPoint& p) { return isAt(p, reading); });
  if (purpose == ReadingPurpose::proof && point != points.end()) return judgedProof(*point, reading, basis);
  return judged(reading, purpose, {basis.lookup, basis.expected, basis.data}, basis.job.readings);
}

/// Typed readings are a walk of their own, in the way of the job's last one that a repair was not under way
/// for.
Walk typedWalk(const AddOptions& options, const Job& job) {
  Walk out;
  out.by = options.by;
  for (const JobReading& entry : job.readings) {
    if (!isEvidence(entry)) continue;
    out.condition = entry.reading.condition;
    out.meter = entry.reading.meter;
  }
  if (!options.meter.empty()) out.meter = options.meter;
  return out;
}

/// What is to be told where the board is known and has no such place.
std::optional<Said> unknownPlace(const ProbePoint& point, const BoardUnderWork& board) {
  if (!board.board || point.pin || placeOfHandle(*board.board, point.label)) return std::nullopt;
  constexpr std::string_view padOf = "pad of ";
  const std::string pin = point.label.starts_with(padOf) ? point.label.substr(padOf.size()) : point.label;
  if (!board.lookup->pinsLabelled(pin).empty()) return std::nullopt;
  return said(pattern("core", "{}: no such pin or place on the board, so there is nothing to compare with"),
              point.label);
}

Result<std::vector<Reading>> typedReadings(const AddOptions& options, const Job& job,
                                           const BoardUnderWork& board, std::vector<Said>& notices) {
  const Walk walk = typedWalk(options, job);
  std::vector<Reading> out;
  for (const auto& text : options.readings) {
    auto reading = parseReading(text, walk, board.lookup.get());
    if (!reading) return failure(reading.error());
    if (auto unknown = unknownPlace(reading->point, board)) notices.push_back(std::move(*unknown));
    out.push_back(std::move(*reading));
  }
  return out;
}

Result<std::vector<JobReading>> readingsToAdd(const AddOptions& options, const Job& job,
                                              std::vector<Said>& notices) {
  if (options.walks.empty() && options.readings.empty()) return std::vector<JobReading>{};
  const auto board = boardOf(job, notices);
  if (!board) return failure(board.error());
  const Lookup* lookup = board->lookup.get();
  const auto data = loadRepairData(dataFolder());
  if (!data) return failure(data.error());
  const auto good = goodWalksOf(options.good, options.book, *board);
  if (!good) return failure(good.error());
  const auto walks = loadWalks(options.walks, lookup);
  if (!walks) return failure(walks.error());
  std::vector<Reading> readings;
  for (const Walk& walk : *walks)
    readings.insert(readings.end(), walk.readings.begin(), walk.readings.end());
  const auto typed = typedReadings(options, job, *board, notices);
  if (!typed) return failure(typed.error());
  readings.insert(readings.end(), typed->begin(), typed->end());
  const ExpectedTable expected = expectedValues(*good, lookup, data->probing);
  const auto purpose = fromWord(readingPurposeWords, options.purpose).value_or(ReadingPurpose::fault);
  const ProofBasis basis{job, lookup, expected, *data};
  const std::vector<ProofPoint> points = proofPoints(basis);
  std::vector<JobReading> out;
  out.reserve(readings.size());
  for (const Reading& reading : readings)
    out.push_back(judgedFor(reading, purpose, points, basis));
  return out;
}

/// What good boards of the job's kind read, as far as they can be had; the board may be unknown.
Result<ExpectedTable> knownValues(const AddOptions& options, const BoardUnderWork& board,
                                  const RepairData& data) {
  if (!board.board) return ExpectedTable();
  const auto good = goodWalksOf(options.good, options.book, board);
  if (!good) return failure(good.error());
  return expectedValues(*good, board.lookup.get(), data.probing);
}

/// The first odd pin: what the repair is about where nothing else says so.
ProbePoint oddPin(const Job& job) {
  for (const JobReading* entry : inForce(job.readings))
    if (isEvidence(*entry) && entry->odd()) return entry->reading.point;
  return {};
}

Result<RepairAction> actionToAdd(const AddOptions& options, const Job& job, std::vector<Said>& notices) {
  const auto kind = fromWord(repairKindWords, options.action);
  if (!kind || *kind == RepairKind::jumper)
    return failure(
        {pattern("core", "unknown repair action"), "", "--action", options.action,
         pattern("core", "wire, resolder, remove bridge, remove part, replace part, clean, cut track, "
                         "other or not economic; jumpers come from jumper route --choose")});
  std::vector<Said> told; // it has been, with the readings
  const auto board = boardOf(job, told);
  if (!board) return failure(board.error());
  const auto data = loadRepairData(dataFolder());
  if (!data) return failure(data.error());
  const auto known = knownValues(options, *board, *data);
  if (!known) return failure(known.error());
  auto repair = handRepair({*kind, options.target, options.reason},
                           {*board, *known, job.readings, data->work, oddPin(job)});
  if (!repair) return failure(repair.error());
  if (repair->doubt) notices.push_back(std::move(*repair->doubt));
  return std::move(repair->action);
}

RepairAction* actionIn(std::vector<RepairAction>& actions, std::uint64_t id) {
  for (auto& action : actions)
    if (action.id.value == id) return &action;
  return nullptr;
}

/// A step, held against a check that read wrong: with a reason it is overruled.
Result<void> tickOne(RepairAction& action, std::size_t step, const std::string& text,
                     const std::string& reason) {
  const auto stopped = stoppedAt(action);
  if (!stopped || step < *stopped) {
    action.steps[step].done = true;
    return {};
  }
  if (step == *stopped && !reason.empty()) {
    overrule(action.steps[step], reason);
    return {};
  }
  return failure({said(pattern("core", "check {} read what it must not: the work stops there"), *stopped + 1),
                  "", "--tick", text,
                  pattern("core", "repeat the check, or tick it with --reason to overrule it")});
}

/// "1:3" → action 1, step 3.
Result<void> tickStep(std::vector<RepairAction>& actions, const std::string& text,
                      const std::string& reason) {
  std::uint64_t action = 0;
  std::size_t step = 0;
  const char* end = text.data() + text.size();
  const auto first = std::from_chars(text.data(), end, action);
  if (first.ec == std::errc{} && first.ptr != end && *first.ptr == ':') {
    const auto second = std::from_chars(first.ptr + 1, end, step);
    RepairAction* found = actionIn(actions, action);
    if (second.ec == std::errc{} && second.ptr == end && found != nullptr && step >= 1 &&
        step <= found->steps.size())
      return tickOne(*found, step - 1, text, reason);
  }
  return failure({pattern("core", "no such step"), "", "--tick", text,
                  pattern("core", "ACTION:STEP as job show lists them")});
}

/// Functions that were seen to work: of the action that is proven, ticked where they are listed already.
Result<void> addFunctions(const AddOptions& options, const Job& job, std::vector<RepairAction>& actions) {
  const RepairAction* last = actionToProve(job);
  const std::uint64_t proven = options.proofOf > 0 ? options.proofOf : last != nullptr ? last->id.value : 0;
  RepairAction* action = actionIn(actions, proven);
  if (action == nullptr)
    return failure({pattern("core", "nothing has been repaired yet"), "", "--works", options.works.front()});
  for (const auto& text : options.works) {
    if (text.empty())
      return failure({pattern("core", "which function?"),
                      "",
                      "--works",
                      {},
                      pattern("core", "what was tried, in words")});
    auto step = std::find_if(action->steps.begin(), action->steps.end(),
                             [&](const WorkStep& s) { return isFunctionCheck(s) && s.text == text; });
    if (step == action->steps.end()) step = action->steps.insert(step, functionCheck(text));
    step->done = true;
  }
  return {};
}

Result<Photo> photoToAdd(const AddOptions& options) {
  auto read = readWholePhoto(options.photo, {64, 64});
  if (!read) return failure(read.error());
  read->photo.caption = options.caption;
  return std::move(read->photo);
}

Result<Charge> chargeToAdd(const AddOptions& options) {
  const auto quantity = parseDecimal(options.quantity);
  if (!quantity) return failure(quantity.error());
  const auto price = parseDecimal(options.price);
  if (!price) return failure(price.error());
  return Charge{ChargeId{}, options.charge, *quantity, *price};
}

/// All that one call adds, checked before anything is written.
Result<JobAdditions> additions(const AddOptions& options, const Job& job, std::vector<Said>& notices) {
  JobAdditions out;
  out.proven = RepairActionId(options.proofOf);
  auto readings = readingsToAdd(options, job, notices);
  if (!readings) return failure(readings.error());
  out.readings = std::move(*readings);
  if (!options.action.empty()) {
    auto action = actionToAdd(options, job, notices);
    if (!action) return failure(action.error());
    out.actions.push_back(std::move(*action));
  }
  if (!options.tick.empty() || !options.works.empty()) out.changed = job.actions;
  for (const auto& text : options.tick)
    if (auto ticked = tickStep(out.changed, text, options.action.empty() ? options.reason : std::string());
        !ticked)
      return failure(ticked.error());
  if (!options.works.empty())
    if (auto tried = addFunctions(options, job, out.changed); !tried) return failure(tried.error());
  if (!options.photo.empty()) {
    auto photo = photoToAdd(options);
    if (!photo) return failure(photo.error());
    out.photos.push_back(std::move(*photo));
  }
  if (!options.charge.empty()) {
    auto charge = chargeToAdd(options);
    if (!charge) return failure(charge.error());
    out.charges.push_back(std::move(*charge));
  }
  if (!options.state.empty()) {
    out.state = fromWord(jobStateWords, options.state);
    if (!out.state) {
      std::string words;
      for (const auto& w : jobStateWords)
        words += (words.empty() ? "" : ", ") + std::string(w.text);
      return failure({pattern("core", "unknown state of a job"), "", "--state", options.state, words});
    }
  }
  return out;
}

} // namespace

void useBoard(Job& job, const BoardUnderWork& board) {
  const BoardInfo& info = board.board->info;
  job.boardUuid = info.uuid;
  job.boardName = info.name.valueOr("");
  job.boardRevision = info.revision.valueOr("");
  job.boardFile = std::filesystem::absolute(board.file).string();
  job.boardDigest = board.digest;
}

Result<Answer> addToJob(const AddOptions& options) {
  auto open = openJob(options.book, options.job, BookUse::change);
  if (!open) return failure(open.error());
  Job& job = open->job;
  Answer answer;
  if (options.proofOf > 0 && actionIn(job.actions, options.proofOf) == nullptr)
    return failure({pattern("core", "the job has no such repair action"), "", "--proof-of",
                    std::to_string(options.proofOf)});
  const auto add = additions(options, job, answer.notices);
  if (!add) return failure(add.error());
  const auto added = open->book.add(job.id, *add);
  if (!added) return failure(added.error());
  answer.json = {{"job", job.number}, {"readings", nlohmann::json::array()}};
  bool odd = false;
  for (std::size_t i = 0; i < add->readings.size(); ++i) {
    const JobReading& reading = add->readings[i];
    const auto& point = reading.reading.point.label;
    answer.json["readings"].push_back(
        {{"id", added->readings[i].value}, {"point", point}, {"verdict", verdictWord(reading)}});
    const bool flag = reading.odd();
    odd = odd || flag;
    if (flag || add->readings.size() <= 8)
      answer.text += fmt::format("{}: {}. {}\n", point, verdictWord(reading), wordsOf(verdictLine(reading)));
  }
  for (const RepairActionId id : added->actions) {
    answer.json["action"] = id.value;
    answer.text += fmt::format("Repair action {}\n", id.value);
  }
  answer.text += fmt::format("Job {}: {} readings added.\n", job.number, add->readings.size());
  if (odd) answer.code = ExitCode::finding;
  return answer;
}

} // namespace netmend
