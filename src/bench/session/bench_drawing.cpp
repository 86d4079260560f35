#include "bench_drawing.h"

#include <utility>

#include <QFileInfo>
#include <QUuid>

#include "netmend/base/digest.h"
#include "netmend/board/exchange/import.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/words/sketch.h"

namespace netmend {

namespace {

constexpr int idleAfter = 600;             ///< ms without an edit, until the stations are told
constexpr std::size_t workedAtOnce = 1500; ///< pads of a board that does not keep anybody waiting

std::filesystem::path drawnFile(const std::filesystem::path& folder, const Board& board) {
  std::string name = board.info.name.valueOr("board");
  for (char& c : name)
    if (std::isalnum(static_cast<unsigned char>(c)) == 0 && c != '-' && c != '_') c = '-';
  return folder / (name.substr(0, 40) + "-" + board.info.uuid.substr(0, 8) + ".netmend-board.json");
}

/// With what a drawing needs; the very same where nothing is lacking.
std::shared_ptr<const Board> readyToDraw(std::shared_ptr<const Board> board) {
  const bool named = !board->info.uuid.empty();
  const bool copper =
      board->info.copper.known() || !board->tracks.empty() || !board->vias.empty() || !board->areas.empty();
  if (named && copper) return board;
  auto out = std::make_shared<Board>(*board);
  if (!named) out->info.uuid = QUuid::createUuid().toString(QUuid::WithoutBraces).toStdString();
  if (!copper) out->info.copper = fromUser(DrawnCopper::points);
  return out;
}

} // namespace

BenchDrawing::BenchDrawing(BenchJob& job)
    : job_(job), sketch_(job.data().sizes, job.data().jumper.zones), working_(this), reading_(this),
      loading_(this) {
  idle_.setSingleShot(true);
  idle_.setInterval(idleAfter);
  connect(&idle_, &QTimer::timeout, this, &BenchDrawing::workUp);
  connect(&job, &BenchJob::boardChanged, this, &BenchDrawing::followJob);
}

void BenchDrawing::followJob() {
  if (giving_) return;
  // Another board, or one read anew: what was drawn of the other is in its journal.
  const BoardUnderWork* open = job_.board();
  if (kept_ && open != nullptr && open->file == kept_->file() && open->digest == kept_->digest()) return;
  idle_.stop();
  working_.cancel();
  if (kept_) (void)kept_->save();
  kept_.reset();
  lookup_.reset();
  sketch_.letGo();
  behind_ = false;
  loaded_.clear();
  shown_.clear();
  if (open != nullptr && !open->board->underlays.empty() &&
      open->file.parent_path() == job_.folders().store / "boards")
    this->open(open->file);
  Q_EMIT photosChanged();
  Q_EMIT handChanged();
}

bool BenchDrawing::open(const std::filesystem::path& file) {
  auto kept = KeptBoard::open(file);
  if (!kept) {
    job_.fail(kept.error());
    return false;
  }
  take(std::move(*kept));
  return true;
}

void BenchDrawing::take(KeptBoard kept) {
  behind_ = kept.unsaved();
  kept_.emplace(std::move(kept));
  lookup_ = std::make_unique<Lookup>(*kept_->board());
  loadPhotos();
}

bool BenchDrawing::begin() {
  if (kept_) return true;
  const auto folder = job_.folders().store / "boards";
  const BoardUnderWork* there = job_.board();
  if (there != nullptr && there->file.parent_path() == folder) return open(there->file);
  std::error_code error;
  std::filesystem::create_directories(folder, error);
  if (error) {
    job_.fail({said(pattern("core", "cannot be made: {}"), error.message()), folder.string()});
    return false;
  }
  const auto board = readyToDraw(there != nullptr ? there->board : std::make_shared<const Board>());
  const auto file = drawnFile(folder, *board);
  // A copy that was drawn on before is the better one.
  std::error_code ignored;
  if (std::filesystem::exists(file, ignored)) {
    if (!open(file)) return false;
  } else {
    auto made = KeptBoard::create(file, board);
    if (!made) {
      job_.fail(made.error());
      return false;
    }
    take(std::move(*made));
  }
  // Copied as it is, its copper need not be followed again.
  BoardUnderWork now =
      there != nullptr && there->board == kept_->board() ? *there : underWork(kept_->board());
  if (there != nullptr) now.notices = there->notices;
  give(std::move(now));
  return true;
}

void BenchDrawing::give(BoardUnderWork board) {
  board.file = kept_->file();
  board.digest = kept_->digest();
  giving_ = true;
  job_.boardDrawn(std::move(board));
  giving_ = false;
}

SketchClick BenchDrawing::clickAt(Point at, Side side, Length reach) const {
  return sketchClickAt(*lookup_, at, side, reach);
}

Result<void> BenchDrawing::applyNow(const Edit& edit, std::shared_ptr<Edit> inverse) {
  auto back = kept_->apply(edit);
  if (!back) return failure(back.error());
  if (inverse) *inverse = std::move(*back);
  lookup_ = std::make_unique<Lookup>(*kept_->board());
  behind_ = true;
  idle_.start();
  refreshPhotos();
  Q_EMIT changed();
  return {};
}

bool BenchDrawing::perform(const QString& what, const Edit& edit) {
  if (edit.changes.empty()) return true;
  const auto forward = std::make_shared<const Edit>(edit);
  const auto inverse = std::make_shared<Edit>();
  // Another board may be open when this is taken back.
  const auto here = [this, file = kept_->file()]() -> Result<void> {
    if (kept_ && kept_->file() == file) return {};
    return failure({pattern("core", "the board is not open any more"), file.string()});
  };
  const auto done = job_.perform(
      what,
      [this, here, forward, inverse] {
        auto open = here();
        return open ? applyNow(*forward, inverse) : open;
      },
      [this, here, inverse] {
        auto open = here();
        return open ? applyNow(*inverse, nullptr) : open;
      });
  if (!done) job_.fail(done.error());
  return done.has_value();
}

void BenchDrawing::answered(const Result<SketchAnswer>& answer) {
  if (!answer) {
    Q_EMIT told(shown(answer.error().said()), true);
  } else if (perform(shown(nameOf(answer->act)), answer->edit)) {
    const Net* net = board()->nets.find(sketch_.net(*board()));
    const Said conflict = conflictSaid(*answer, net != nullptr ? net->name : std::string());
    Q_EMIT told(conflict.empty() ? QString() : shown(conflict), !conflict.empty());
  }
  Q_EMIT handChanged();
}

/// A known-good value, from a service note or from memory, counts as one good board's reading.
void BenchDrawing::keepGood(PinId pin, const std::string& text) {
  const auto value = parseReadingValue(text, ReadingMode::diode);
  if (!value) {
    Q_EMIT told(shown(value.error().said()), true);
    return;
  }
  workUp(); // the book knows the board as it is now
  Walk walk;
  walk.boardUuid = board()->info.uuid;
  walk.boardName = board()->info.name.valueOr("");
  walk.specimen = Specimen::good;
  walk.title = tr("typed at the drawing").toStdString();
  Reading reading;
  reading.point = {pin, pinLabel(*board(), pin)};
  reading.value = value->value;
  reading.time = timeNow();
  walk.points = {reading.point};
  walk.readings = {reading};
  const auto kept = job_.perform(
      tr("known-good value"), [this, walk] { return job_.keepGoodWalk(walk); },
      [this, walk] { return job_.takeBackGoodWalk(walk); });
  if (!kept) return job_.fail(kept.error());
  Q_EMIT told(tr("%1: a good board reads %2")
                  .arg(QString::fromStdString(reading.point.label),
                       QString::fromStdString(readingText(reading.value, reading.mode))),
              false);
}

void BenchDrawing::type(const std::string& text) {
  const auto line = readLine(text, *board(), job_.data().sizes, sketch_.netInHand());
  if (const auto* good = std::get_if<GoodWanted>(&line.wanted); good != nullptr && !sketch_.group().empty())
    return keepGood(sketch_.group().back(), good->value);
  answered(sketch_.type(*lookup_, text));
}

void BenchDrawing::click(const SketchClick& click) {
  answered(sketch_.click(*lookup_, click));
}

void BenchDrawing::stroke(const SketchClick& from, const Ring& way, const SketchClick& to) {
  answered(sketch_.stroke(*lookup_, from, way, to));
}

void BenchDrawing::key(SketchKey key, const SketchClick& pointer) {
  answered(sketch_.key(*lookup_, key, pointer));
}

void BenchDrawing::touched(const Reading& reading, bool joined) {
  const PinId pin = sketch_.ringed(*lookup_);
  if (!pin || sketch_.group().empty()) return;
  if (job_.job() != nullptr) {
    JobReading entry;
    entry.purpose = ReadingPurpose::check;
    entry.reading = reading;
    entry.reading.point = {pin, pinLabel(*board(), pin)};
    entry.reading.other = {sketch_.group().front(), pinLabel(*board(), sketch_.group().front())};
    if (auto kept = job_.addReading(entry); !kept) return job_.fail(kept.error());
  }
  answered(joined ? sketch_.beep(*lookup_) : sketch_.key(*lookup_, SketchKey::skip, {}));
}

void BenchDrawing::pasteNets(const QString& text) {
  const PartId part = sketch_.part() ? sketch_.part() : worthOf(*lookup_, {}).connectorPart;
  const PinNames names = readPinNames(*lookup_, part, text.toStdString());
  if (names.named.empty()) {
    Q_EMIT told(tr("The list names no pin of this board: a pin and its net on each line, J4.3 KEY"), true);
    return;
  }
  if (!perform(tr("list of nets"), putPinNames(*lookup_, names))) return;
  Q_EMIT told(names.unknown.empty() ? tr("%n pin(s) named", nullptr, static_cast<int>(names.named.size()))
                                    : tr("%n line(s) name no pin of this board, first: %1", nullptr,
                                         static_cast<int>(names.unknown.size()))
                                          .arg(QString::fromStdString(names.unknown.front())),
              !names.unknown.empty());
}

void BenchDrawing::readToMerge(const QString& file) {
  const std::filesystem::path path(file.toStdU16String());
  reading_.run<Result<Imported>>(
      [path](const std::stop_token& stop) {
        ImportOptions options;
        options.progress.stop = stop;
        return importBoard(path, options);
      },
      [this, name = QFileInfo(file).fileName()](Result<Imported> imported) {
        if (!imported) return job_.fail(imported.error());
        if (kept_) Q_EMIT mergeRead(name, std::make_shared<const Board>(std::move(imported->board)));
      });
}

bool BenchDrawing::merge(const Board& file, const MergePlan& plan) {
  const Lookup theirs(file);
  return perform(tr("boards merged"), mergeEdit(*lookup_, theirs, plan));
}

void BenchDrawing::movePart(PartId part, Point by) {
  perform(tr("part moved"), netmend::movePart(*lookup_, part, by));
}

void BenchDrawing::setTrackWidth(Length width) {
  sketch_.setTrackWidth(width);
  Q_EMIT handChanged();
}

void BenchDrawing::workUp() {
  if (!kept_ || !behind_) return;
  idle_.stop();
  if (auto saved = kept_->save(); !saved) return job_.fail(saved.error());
  behind_ = false;
  const auto now = board();
  if (now->pads.size() <= workedAtOnce) return give(underWork(now));
  working_.run<BoardUnderWork>([now](const std::stop_token&) { return underWork(now); },
                               [this, now](BoardUnderWork worked) {
                                 if (kept_ && kept_->board() == now) give(std::move(worked));
                               });
}

} // namespace netmend
