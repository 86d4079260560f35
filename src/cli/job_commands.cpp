#include <algorithm>

#include <fmt/chrono.h>
#include <fmt/format.h>

#include "command.h"
#include "job_add.h"
#include "job_case.h"
#include "json_words.h"
#include "netmend/jobbook/job_words.h"
#include "netmend/jobbook/record.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/probing/words.h"
#include "netmend/words/fault.h"
#include "netmend/words/job.h"
#include "netmend/words/jumper.h"
#include "netmend/words/place.h"
#include "netmend/words/step.h"
#include "netmend/words/verdict.h"

namespace netmend {

namespace {

struct NewOptions {
  std::string book;
  std::string board;
  Job job;
};

std::string day(Time time) {
  return fmt::format("{:%Y-%m-%d}", fmt::localtime(std::chrono::system_clock::to_time_t(time)));
}

/// Its number. A book that was made for a job that could then not be kept is not left behind.
Result<std::string> bookIn(const std::filesystem::path& file, const Job& job) {
  std::error_code none;
  const bool fresh = !std::filesystem::exists(file, none) && !none;
  auto number = [&]() -> Result<std::string> {
    auto book = JobBook::open(file, BookUse::make);
    if (!book) return failure(book.error());
    const auto id = book->addJob(job);
    if (!id) return failure(id.error());
    const auto kept = book->job(*id);
    if (!kept) return failure(kept.error());
    return kept->number;
  }();
  if (!number && fresh) std::filesystem::remove(file, none);
  return number;
}

Result<Answer> newCommand(const NewOptions& options) {
  Job job = options.job;
  Answer answer;
  if (!options.board.empty()) {
    const auto loaded = openBoard(options.board);
    if (!loaded) return failure(loaded.error());
    useBoard(job, *loaded);
    answer.notices = loaded->notices;
  }
  auto number = bookIn(options.book, job);
  if (!number) return failure(number.error());
  answer.text = *number + "\n";
  answer.json = {{"job", *number}};
  return answer;
}

/// `counts`: not taken again since.
nlohmann::json readingJson(const JobReading& entry, bool counts) {
  const Reading& reading = entry.reading;
  return {{"id", entry.id.value},
          {"purpose", wordFor(readingPurposeWords, entry.purpose)},
          {"point", reading.point.label},
          {"other", reading.other.label},
          {"mode", word(reading.mode)},
          {"value", reading.value ? nlohmann::json(*reading.value) : nlohmann::json("OL")},
          {"verdict", verdictWord(entry)},
          {"comes_and_goes", entry.comesAndGoes},
          {"counts", counts},
          {"expected", wordsOf(whatIsExpected(entry))},
          {"explanation", wordsOf(verdictReasons(entry))}};
}

nlohmann::json actionJson(const RepairAction& action) {
  auto steps = nlohmann::json::array();
  for (const WorkStep& step : action.steps) {
    auto json = stepJson(step, action);
    json["note"] = wordsOf(noteSaid(step));
    json["done"] = step.done;
    steps.push_back(std::move(json));
  }
  auto proof = nlohmann::json::array();
  for (const JobReadingId id : action.proof)
    proof.push_back(id.value);
  nlohmann::json out{{"id", action.id.value},   {"kind", wordFor(repairKindWords, action.kind)},
                     {"target", action.target}, {"reason", wordsOf(reasonSaid(action))},
                     {"steps", steps},          {"proof", proof}};
  if (action.jumper)
    out["jumper"] = {{"from", wordsOf(nameOf(action.jumper->from))},
                     {"to", wordsOf(nameOf(action.jumper->to))},
                     {"wire", action.jumper->wire}};
  return out;
}

/// `places` may be null: then places are told by their handles.
std::string jobText(const Job& job, const std::vector<JobEvent>& history, const PlaceNames* places) {
  std::string out = fmt::format("{}  {}  {}\n{}: {} {}\n", job.number, day(job.created),
                                wordFor(jobStateWords, job.state), job.customer, job.device, job.serial);
  out += "Symptom: " + job.symptom + "\n";
  if (!job.history.empty()) out += "History: " + job.history + "\n";
  for (const JobReading& entry : job.readings)
    out += fmt::format("  {:5} {:10} {:>10}  {}\n", wordFor(readingPurposeWords, entry.purpose),
                       wordsOf(nameOf(entry.reading.point, places)),
                       readingText(entry.reading.value, entry.reading.mode), verdictWord(entry));
  for (const JobSuspect& suspect : job.suspects)
    out += fmt::format("  {:5.1f} %  {}\n", suspect.probability * 100.0, wordsOf(nameOf(suspect)));
  for (const RepairAction& action : job.actions) {
    out += fmt::format("  action {}: {} {}\n", action.id.value, wordFor(repairKindWords, action.kind),
                       action.target);
    for (std::size_t i = 0; i < action.steps.size(); ++i)
      out += fmt::format("    {} {:2}. {}\n", action.steps[i].done ? "done" : "    ", i + 1,
                         wordsOf(stepSaid(action.steps[i], action)));
  }
  for (const Charge& charge : job.charges)
    out += fmt::format("  {} × {} {}  {}\n", toText(charge.quantity, 0), toText(charge.price, 2),
                       job.currency, charge.what);
  for (const JobEvent& event : history)
    out += fmt::format("  {}  {}\n", day(event.time), wordsOf(eventSaid(event)));
  return out;
}

Result<Answer> showCommand(const std::string& bookFile, const std::string& number) {
  const auto open = openJob(bookFile, number, BookUse::read);
  if (!open) return failure(open.error());
  const Job& job = open->job;
  const auto history = open->book.history(job.id);
  if (!history) return failure(history.error());
  Answer answer;
  // The very board that its places are on, where its file is still there.
  const auto board = job.boardFile.empty() ? Result<BoardUnderWork>() : openBoard(job.boardFile);
  const bool same = board && board->digest == job.boardDigest;
  answer.text = jobText(job, *history, same ? board->places.get() : nullptr);
  auto& json = answer.json;
  json = {{"job", job.number},          {"state", wordFor(jobStateWords, job.state)},
          {"customer", job.customer},   {"customer_reference", job.customerReference},
          {"device", job.device},       {"serial", job.serial},
          {"symptom", job.symptom},     {"history", job.history},
          {"condition", job.condition}, {"currency", job.currency}};
  json["board"] = {{"uuid", job.boardUuid},
                   {"name", job.boardName},
                   {"revision", job.boardRevision},
                   {"file", job.boardFile},
                   {"sha256", job.boardDigest}};
  for (const char* list : {"readings", "suspects", "actions", "charges", "photos", "events"})
    json[list] = nlohmann::json::array();
  const std::vector<const JobReading*> counting = inForce(job.readings);
  for (const auto& entry : job.readings)
    json["readings"].push_back(
        readingJson(entry, std::find(counting.begin(), counting.end(), &entry) != counting.end()));
  for (const auto& s : job.suspects)
    json["suspects"].push_back({{"text", wordsOf(nameOf(s))},
                                {"probability", s.probability},
                                {"explanation", wordsOf(explanationOf(s))}});
  for (const auto& action : job.actions)
    json["actions"].push_back(actionJson(action));
  for (const auto& c : job.charges)
    json["charges"].push_back(
        {{"what", c.what}, {"quantity", toText(c.quantity, 0)}, {"price", toText(c.price, 2)}});
  for (const auto& p : job.photos)
    json["photos"].push_back({{"caption", p.caption}, {"bytes", p.bytes.size()}});
  for (const auto& e : *history)
    json["events"].push_back({{"day", day(e.time)}, {"what", wordsOf(eventSaid(e))}});
  return answer;
}

Result<Answer> listCommand(const std::string& bookFile, const std::string& text) {
  const auto book = JobBook::open(bookFile, BookUse::read);
  if (!book) return failure(book.error());
  const auto jobs = book->jobs(text);
  if (!jobs) return failure(jobs.error());
  Answer answer;
  auto list = nlohmann::json::array();
  for (const JobSummary& job : *jobs) {
    answer.text += fmt::format("{}  {}  {:19}  {}: {}, {}\n", job.number, day(job.created),
                               wordFor(jobStateWords, job.state), job.customer, job.device, job.symptom);
    list.push_back({{"job", job.number},
                    {"day", day(job.created)},
                    {"state", wordFor(jobStateWords, job.state)},
                    {"customer", job.customer},
                    {"device", job.device},
                    {"symptom", job.symptom},
                    {"readings", job.readings}});
  }
  answer.json = {{"jobs", list}};
  return answer;
}

void addNewOptions(CLI::App& command, NewOptions& options) {
  command.add_option("--book", options.book, "Job book; made if it is not there")->required();
  command.add_option("--customer", options.job.customer, "Customer")->required();
  command.add_option("--device", options.job.device, "Device")->required();
  command.add_option("--symptom", options.job.symptom, "What does not work")->required();
  command.add_option("--reference", options.job.customerReference, "The customer's reference");
  command.add_option("--serial", options.job.serial, "Serial number");
  command.add_option("--history", options.job.history, "What has happened and been tried");
  command.add_option("--condition", options.job.condition, "As received: water marks, opened before …");
  command.add_option("--notes", options.job.internalNotes, "Notes that never reach the customer");
  command.add_option("--number", options.job.number, "Job number (default: the year's next)");
  command.add_option("--currency", options.job.currency, "Currency of the charges")->capture_default_str();
  command.add_option("--board", options.board, "Board file of this device");
}

void addAddOptions(CLI::App& command, AddOptions& options) {
  command.add_option("--book", options.book, "Job book")->required();
  command.add_option("--job", options.job, "Number of the job")->required();
  command.add_option("--walk", options.walks, "Walks whose readings belong to the job");
  command.add_option("--reading", options.readings, "A reading: \"[MODE] POINT [to POINT] VALUE\"");
  command.add_option("--purpose", options.purpose, "What the readings were taken for")
      ->check(CLI::IsMember({"fault", "check", "proof"}))
      ->capture_default_str();
  command.add_option("--good", options.good, "Walks of good boards, to judge the readings by");
  command.add_option("--meter", options.meter, "Meter profile of typed readings");
  command.add_option("--by", options.by, "Who took them");
  command.add_option("--proof-of", options.proofOf,
                     "The readings prove that this repair action holds (its id)");
  command.add_option("--action", options.action,
                     "A repair action: wire, resolder, \"remove bridge\", \"remove part\", "
                     "\"replace part\", clean, \"cut track\", other or \"not economic\"");
  command.add_option("--target", options.target,
                     "Part, joint or net that the action is on; both ends of a wire");
  command.add_option("--reason", options.reason,
                     "Why; with --tick: why a check that read wrong is overruled");
  command.add_option("--tick", options.tick, "Steps that are done: ACTION:STEP, for example 1:3");
  command.add_option("--works", options.works,
                     "Functions of the device that were tried after the last repair, and work");
  command.add_option("--photo", options.photo, "PNG or JPEG file");
  command.add_option("--caption", options.caption, "… and what it shows");
  command.add_option("--charge", options.charge, "A charge: what for");
  command.add_option("--quantity", options.quantity, "… how many")->capture_default_str();
  command.add_option("--price", options.price, "… at how much each");
  command.add_option("--state", options.state,
                     "Where the job stands: probing, repairing, proving, \"handed over\" …");
}

} // namespace

void addJobCommands(CommandLine& line) {
  CLI::App& group = *line.app.add_subcommand("job", "Book jobs in, add to them, look them up");
  group.require_subcommand(1);

  const auto fresh = std::make_shared<NewOptions>();
  addNewOptions(
      addCommand(
          line, group, "new", "Book a job in; prints its number",
          "netmend job new --book jobs.netmend-book --customer \"Harbour office\" --device \"Tide logger\" "
          "--symptom \"third key column dead\" --board logger.netmend-board.json",
          [fresh] { return newCommand(*fresh); }),
      *fresh);

  const auto add = std::make_shared<AddOptions>();
  addAddOptions(
      addCommand(
          line, group, "add", "Add readings, actions, photos, charges to a job, or change its state",
          "netmend job add --book jobs.netmend-book --job 2026-0007 --reading \"J4.7 OL\" --state probing",
          [add] { return addToJob(*add); }),
      *add);

  const auto book = std::make_shared<std::string>();
  const auto what = std::make_shared<std::string>();
  CLI::App& show = addCommand(line, group, "show", "Everything about one job",
                              "netmend job show 2026-0007 --book jobs.netmend-book",
                              [=] { return showCommand(*book, *what); });
  show.add_option("job", *what, "Number of the job")->required();
  show.add_option("--book", *book, "Job book")->required();

  CLI::App& list =
      addCommand(line, group, "list", "All jobs, newest first",
                 "netmend job list tide --book jobs.netmend-book", [=] { return listCommand(*book, *what); });
  list.add_option("text", *what, "Only jobs that mention this");
  list.add_option("--book", *book, "Job book")->required();
}

} // namespace netmend
