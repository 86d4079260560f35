#include <algorithm>

#include <fmt/format.h>

#include "command.h"
#include "inputs.h"
#include "netmend/base/data_folder.h"
#include "netmend/board/connector_board.h"
#include "netmend/jobbook/job_book.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/probing/reading_source.h"
#include "netmend/probing/walk_file.h"
#include "netmend/probing/walk_session.h"
#include "netmend/probing/words.h"
#include "netmend/words/verdict.h"

namespace netmend {

namespace {

struct RecordOptions {
  std::string board;
  std::string part;
  std::size_t pins = 0;
  std::size_t rows = 1;
  std::string out;
  std::string book;
  bool resume = false;
  bool good = false;
  bool faulty = false;
  std::string serial;
  std::string mode = "diode";
  std::string meter;
  std::string by;
  std::vector<std::string> plugged;
  double temperature = 0.0;
  bool hasTemperature = false;
};

/// The walk that `--resume` goes on with, at its first point without a reading.
Result<WalkSession> resumeWalk(const std::string& file) {
  auto walk = readWalkFile(file);
  if (!walk) return failure(walk.error());
  WalkSession out{std::move(*walk), 0, {}, {}};
  // What was skipped, or has no net, is not asked for again.
  out.passedOver = out.walk.skipped;
  const auto touched = [&](const ProbePoint& point) {
    const auto read = [&](const Reading& r) { return r.point == point; };
    return std::any_of(out.walk.readings.begin(), out.walk.readings.end(), read) ||
           std::find(out.walk.skipped.begin(), out.walk.skipped.end(), point) != out.walk.skipped.end();
  };
  while (!out.finished() && touched(out.walk.points[out.turn]))
    ++out.turn;
  return out;
}

/// The walk's head and points before its first reading.
Result<WalkSession> startWalk(const RecordOptions& options, const Streams& streams) {
  Walk walk;
  walk.title = options.part;
  walk.serial = options.serial;
  walk.meter = options.meter;
  walk.by = options.by;
  walk.specimen = options.good ? Specimen::good : options.faulty ? Specimen::faulty : Specimen::unknown;
  walk.condition.plugged = options.plugged;
  std::sort(walk.condition.plugged.begin(), walk.condition.plugged.end());
  if (options.hasTemperature) walk.condition.temperature = Celsius(options.temperature);
  if (const auto mode = readingModeFrom(options.mode))
    walk.mode = *mode;
  else
    return failure({pattern("core", "unknown mode"), "", "--mode", options.mode,
                    pattern("core", "diode, diode reversed, ohms, milliohms, continuity or volts")});

  if (options.board.empty()) {
    const auto board = makeConnectorBoard(options.part, options.pins, options.rows);
    if (!board) return failure(board.error());
    const Lookup lookup(*board);
    walk.points = pointsOf(lookup, board->parts[0].id);
    // Without a board file the ids of this passing description mean nothing: labels are what counts.
    for (auto& point : walk.points)
      point.pin = PinId{};
    return WalkSession{std::move(walk), 0, {}, {}};
  }
  auto loaded = openBoard(options.board);
  if (!loaded) return failure(loaded.error());
  for (const auto& notice : loaded->notices)
    streams.err << "note: " << wordsOf(notice) << "\n";
  const Board& board = *loaded->board;
  walk.boardUuid = board.info.uuid;
  walk.boardName = board.info.name.valueOr("");
  walk.boardRevision = board.info.revision.valueOr("");
  for (const Part& part : board.parts) {
    if (part.reference != options.part) continue;
    if (!walk.points.empty())
      return failure(
          {pattern("core", "reference is not unique on this board"), options.board, "", options.part});
    walk.points = pointsOf(*loaded->lookup, part.id);
  }
  if (walk.points.empty())
    return failure(
        {pattern("core", "no such part with pins on this board"), options.board, "", options.part});
  walk.skipped = pointsWithoutNet(*loaded->lookup, walk.points);
  if (!walk.skipped.empty()) {
    streams.err << "no net, passed over unless named:";
    for (const ProbePoint& point : walk.skipped)
      streams.err << " " << point.label;
    streams.err << "\n";
  }
  WalkSession out{std::move(walk), 0, {}, {}};
  out.passedOver = out.walk.skipped;
  out.turn = dueFrom(out, 0);
  return out;
}

Result<Answer> recordCommand(const RecordOptions& options, const Streams& streams) {
  const bool there = std::filesystem::exists(options.out);
  if (there && !options.resume)
    return failure({pattern("core", "walk file is already there"),
                    options.out,
                    "",
                    {},
                    pattern("core", "another name, or --resume to go on with it")});
  auto started = there ? resumeWalk(options.out) : startWalk(options, streams);
  if (!started) return failure(started.error());
  WalkSession session = std::move(*started);
  const auto source = makeTextSource(streams.in, "standard input", session.walk.mode);
  Answer answer;
  std::size_t refused = 0;
  while (true) {
    if (!session.finished()) streams.err << session.walk.points[session.turn].label << "? " << std::flush;
    const auto event = source->next();
    if (!event) break;
    const auto taken = *event ? take(session, **event, timeNow()) : Result<void>(failure(event->error()));
    if (!taken) {
      streams.err << taken.error().text() << "\n";
      ++refused;
      continue;
    }
    // Written after each event: what was typed survives whatever happens next.
    if (auto written = writeWalkFile(options.out, session.walk); !written) return failure(written.error());
  }
  streams.err << "\n";
  if (!options.book.empty()) {
    auto book = JobBook::open(options.book, BookUse::make);
    if (!book) return failure(book.error());
    if (auto kept = book->addKnownGoodWalk(session.walk); !kept) return failure(kept.error());
  }
  if (refused > 0)
    answer.notices.push_back(saidCount(counted("core", "{n} line was not understood and left out",
                                               "{n} lines were not understood and left out"),
                                       static_cast<std::int64_t>(refused)));
  answer.text =
      fmt::format("{}: {} readings, {} points of {} skipped\n", options.out, session.walk.readings.size(),
                  session.walk.skipped.size(), session.walk.points.size());
  answer.json = {{"written", options.out},
                 {"points", session.walk.points.size()},
                 {"readings", session.walk.readings.size()},
                 {"skipped", session.walk.skipped.size()},
                 {"refused", refused}};
  if (refused > 0) answer.code = ExitCode::badInput;
  return answer;
}

struct KeepOptions {
  std::vector<std::string> walks;
  std::string book;
};

Result<Answer> keepCommand(const KeepOptions& options) {
  // All are read before the first is kept: a bad one among them keeps none.
  const auto walks = loadGoodWalks(options.walks, nullptr);
  if (!walks) return failure(walks.error());
  auto book = JobBook::open(options.book, BookUse::make);
  if (!book) return failure(book.error());
  std::size_t added = 0;
  for (const Walk& walk : *walks) {
    const auto kept = book->addKnownGoodWalk(walk);
    if (!kept) return failure(kept.error());
    if (*kept) ++added;
  }
  Answer answer;
  answer.text =
      fmt::format("{} walks of good boards kept, {} were there already\n", added, walks->size() - added);
  answer.json = {{"kept", added}, {"there_already", walks->size() - added}};
  return answer;
}

struct JudgeOptions {
  std::string walk;
  std::vector<std::string> good;
  std::string board;
  std::string book;
  bool all = false;
  bool why = false;
};

nlohmann::json verdictJson(const Reading& reading, const Verdict& verdict) {
  nlohmann::json out{{"point", reading.point.label},
                     {"mode", word(reading.mode)},
                     {"value", reading.value ? nlohmann::json(*reading.value) : nlohmann::json("OL")},
                     {"verdict", word(verdict.kind)},
                     {"flag", isFlag(verdict.kind)},
                     {"odds", verdict.odds},
                     {"explanation", wordsOf(verdictReasons(reading, verdict))}};
  if (verdict.expected) out["expected"] = wordsOf(whatIsExpected(*verdict.expected));
  return out;
}

Result<Answer> judgeCommand(const JudgeOptions& options) {
  BoardUnderWork board;
  if (!options.board.empty()) {
    auto loaded = openBoard(options.board);
    if (!loaded) return failure(loaded.error());
    board = std::move(*loaded);
  }
  const auto data = loadProbingData(dataFolder());
  if (!data) return failure(data.error());
  const auto walks = loadWalks({options.walk}, board.lookup.get());
  if (!walks) return failure(walks.error());
  const auto good = goodWalksOf(options.good, options.book, board);
  if (!good) return failure(good.error());
  const Walk& walk = walks->front();
  const JudgedWalk judged =
      judgeWalk(walk, expectedValues(*good, board.lookup.get(), *data), board.lookup.get(), *data);

  Answer answer;
  answer.notices = board.notices;
  auto verdicts = nlohmann::json::array();
  for (std::size_t i = 0; i < walk.readings.size(); ++i) {
    const Reading& reading = walk.readings[i];
    const Verdict& verdict = judged.verdicts[i];
    verdicts.push_back(verdictJson(reading, verdict));
    if (options.all || isFlag(verdict.kind))
      answer.text += fmt::format(
          "{:10} {:>10}  {:12} {}\n", reading.point.label, readingText(reading.value, reading.mode),
          word(verdict.kind),
          wordsOf(options.why ? verdictReasons(reading, verdict) : besideValueSaid(reading, verdict)));
  }
  const std::size_t flags = judged.flags();
  answer.text += fmt::format("{} of {} readings are odd; {} could be judged, from {} good boards.\n", flags,
                             walk.readings.size(), judged.points, good->size());
  answer.json = {{"walk", options.walk},
                 {"good_walks", good->size()},
                 {"judged", judged.points},
                 {"flags", flags},
                 {"verdicts", verdicts}};
  if (flags > 0) answer.code = ExitCode::finding;
  return answer;
}

} // namespace

void addWalkCommands(CommandLine& line) {
  CLI::App& group = *line.app.add_subcommand("walk", "Probe a connector pin by pin, and judge what it reads");
  group.require_subcommand(1);

  const auto record = std::make_shared<RecordOptions>();
  CLI::App& r = addCommand(
      line, group, "record",
      "Take one reading a line from standard input: 0.452, 452m, OL, J4.3 0.44, skip, back, undo",
      "netmend walk record --board logger.netmend-board.json --part J4 --good -o good-1.netmend-walk.json",
      [record, &line] { return recordCommand(*record, line.streams); });
  r.add_option("--part", record->part, "Connector or part to walk, for example J4")->required();
  auto* board = r.add_option("--board", record->board, "Board file; without one, give --pins");
  auto* pins =
      r.add_option("--pins", record->pins, "Number of pins of a connector of which nothing else is known")
          ->check(CLI::Range(1, 2000));
  r.add_option("--rows", record->rows, "Rows of that connector")->needs(pins)->capture_default_str();
  board->excludes(pins);
  r.callback([record, &line, board, pins] {
    if (board->count() + pins->count() == 0) throw CLI::RequiredError("one of --board and --pins");
    line.chosen = [record, &line] { return recordCommand(*record, line.streams); };
  });
  r.add_option("-o,--out", record->out, "Walk file to write; rewritten after every reading")->required();
  r.add_flag("--resume", record->resume, "Go on with the walk in that file");
  auto* good = r.add_flag("--good", record->good, "The board is known to be good");
  r.add_flag("--faulty", record->faulty, "The board has the fault")->excludes(good);
  r.add_option("--book", record->book, "Job book to keep the walk in, for all later jobs")->needs(good);
  r.add_option("--serial", record->serial, "Serial number of the board");
  r.add_option("--mode", record->mode, "Meter mode")->capture_default_str();
  r.add_option("--meter", record->meter, "Meter profile, an id of data/meters.json");
  r.add_option("--by", record->by, "Who takes the readings");
  r.add_option("--plugged", record->plugged, "Assemblies left plugged in");
  r.add_option("--temperature", record->temperature, "Of the board, °C")->each([record](const std::string&) {
    record->hasTemperature = true;
  });

  const auto keep = std::make_shared<KeepOptions>();
  CLI::App& k =
      addCommand(line, group, "keep", "Keep walks of good boards in the job book, for all later jobs",
                 "netmend walk keep good-1.netmend-walk.json --book repairs.netmend-book",
                 [keep] { return keepCommand(*keep); });
  k.add_option("walk", keep->walks, "Walks of good boards")->required();
  k.add_option("--book", keep->book, "Job book")->required();

  const auto judge = std::make_shared<JudgeOptions>();
  CLI::App& j = addCommand(
      line, group, "judge", "Compare a walk with those of good boards and name the odd pins",
      "netmend walk judge bad.netmend-walk.json --good good-1.netmend-walk.json good-2.netmend-walk.json",
      [judge] { return judgeCommand(*judge); });
  j.add_option("walk", judge->walk, "Walk to judge")->required();
  j.add_option("--good", judge->good, "Walks of good boards");
  j.add_option("--board", judge->board, "Board file: tells which pins are of one kind");
  j.add_option("--book", judge->book, "Job book with known-good walks of this board");
  j.add_flag("--why", judge->why, "What the verdicts are made from");
  j.add_flag("--all", judge->all, "List every reading, not the odd ones only");
}

} // namespace netmend
