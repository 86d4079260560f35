#pragma once

#include <deque>
#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include <QObject>
#include <QStringList>
#include <QUndoStack>

#include "background.h"
#include "netmend/casework/repair_data.h"
#include "netmend/casework/take_reading.h"
#include "netmend/drawing/shown.h"
#include "netmend/jobbook/job_book.h"
#include "netmend/probing/expected.h"
#include "opened_file.h"
#include "typed_connector.h"

namespace netmend {

/// Where the window keeps and finds its things.
struct BenchFolders {
  std::filesystem::path data;  ///< what a user may edit: meters.json …
  std::filesystem::path store; ///< job book, drawn boards, the walk under way
};

/// The job book there.
[[nodiscard]] inline std::filesystem::path bookFile(const BenchFolders& folders) {
  return folders.store / "jobs.netmend-book";
}

/// The job book, the open job, its board and what good boards of its kind read. No widgets: the pages are one
/// user of it, tests another. Everything it is told is in the book before a signal says so; what cannot be
/// kept is told by `failed` and changes nothing.
class BenchJob : public QObject {
  Q_OBJECT

public:
  /// Makes the store if need be. Errors name the file.
  [[nodiscard]] static Result<std::unique_ptr<BenchJob>> open(const BenchFolders& folders);
  /// The same with data that has been read already.
  [[nodiscard]] static Result<std::unique_ptr<BenchJob>> open(const BenchFolders& folders, RepairData data);

  [[nodiscard]] const RepairData& data() const { return data_; }
  [[nodiscard]] const BenchFolders& folders() const { return folders_; }
  [[nodiscard]] const JobBook& book() const { return book_; }

  /// The open job; null: none.
  [[nodiscard]] const Job* job() const { return job_ ? &*job_ : nullptr; }
  /// Books a job in, an empty one unless it says more, with the open board if there is one. With it the book
  /// remembers that it is the open one.
  bool bookIn(Job job = {});
  /// Opens a job and, in the background, its board.
  bool openJob(JobId id);
  /// The same for one that has just been read from the book.
  void openJob(Job job);
  void closeJob();
  /// The book remembers it; not on the undo stack.
  bool leaveOpen(const LeftOpen& left);
  /// Changes what stands in the job itself (not its lists); can be undone under the name of `what`.
  /// `back` takes back what `change` did, and nothing else.
  using Change = std::function<void(Job&)>;
  bool edit(const QString& what, const Change& change, const Change& back);
  /// The same while somebody types: fields have an undo of their own. Books a job in if none is open.
  bool keep(const Change& change);
  bool setState(JobState state);
  /// The job has come so far; it never goes back by this.
  void reached(JobState state);

  [[nodiscard]] const BoardUnderWork* board() const { return board_ ? &*board_ : nullptr; }
  /// How its places are called; null without a board.
  [[nodiscard]] const PlaceNames* places() const { return board_ ? board_->places.get() : nullptr; }
  /// Reads the file beside the event loop; `boardChanged`, `boardsOffered` or `failed` follows. An open job
  /// gets it; one that has readings of another board is asked about first, by `otherBoardAsked`. `inArchive`:
  /// which board of a ZIP archive.
  void openBoardFile(const std::filesystem::path& file, const std::string& inArchive = {});
  /// A connector typed in one line: one more on a board that was typed, else the least board of its own.
  bool useConnector(const std::string& text);
  /// The open board has been drawn on: the job has it as it is now. Not on the history, where the edits are.
  void boardDrawn(BoardUnderWork board);
  /// Whether the board that was asked about takes this one's place, and the job is closed (undo opens it
  /// again).
  void answerOtherBoard(bool open);
  [[nodiscard]] bool openingBoard() const { return opening_.busy() || waiting_; }
  void cancelOpening();
  /// Files named from here on are read from `readBoardsNow` on: a window's first picture waits for none.
  void putOffBoards() { putOff_ = true; }
  void readBoardsNow();

  /// Those of good boards that the book keeps.
  [[nodiscard]] const std::vector<Walk>& goodWalks() const { return good_; }
  /// What good boards read, the one that is being walked included. Worked out beside the event loop;
  /// `goodWalksChanged` says when.
  [[nodiscard]] const ExpectedTable& expected() const { return *expected_; }
  /// Without the one that is being walked: it is held against the others.
  [[nodiscard]] const ExpectedTable& expectedOfKept() const { return *expectedOfKept_; }
  [[nodiscard]] bool weighing() const { return weighing_.busy(); }
  /// The good board that is being walked, as far as it has been; without readings: none.
  void setGoodUnderWay(Walk walk);
  /// Keeps a walk of a good board in the book, for all later jobs on this board; it is no longer under way.
  [[nodiscard]] Result<void> keepGoodWalk(const Walk& walk);
  /// Takes the very same walk out again.
  [[nodiscard]] Result<void> takeBackGoodWalk(const Walk& walk);

  /// What readings of the open job are held against.
  [[nodiscard]] JudgeBasis judgeBasis() const {
    return {board_ ? board_->lookup.get() : nullptr, *expected_, data_};
  }
  /// Durable when it returns.
  [[nodiscard]] Result<JobReadingId> addReading(const JobReading& reading);
  /// What the last reading's measurement read before, where that was something else: a slip, or it comes and
  /// goes. Null: nothing else.
  [[nodiscard]] const JobReading* readOtherwise() const;
  /// Says of the last reading's measurement that it comes and goes, or takes that back.
  bool sayComesAndGoes(bool so);
  /// What these readings, known by their ids, say now that good boards have been walked.
  bool rejudge(const std::vector<JobReading>& readings);
  /// These readings of the open job were taken at these points, each in turn: one step of the history, with
  /// what the walk does besides, once either way is in the book.
  [[nodiscard]] Result<void> moveReadings(const QString& what, const std::vector<JobReadingId>& readings,
                                          const std::vector<ProbePoint>& to,
                                          const std::function<void()>& moved,
                                          const std::function<void()>& movedBack);
  bool setSuspects(const std::vector<JobSuspect>& suspects);

  bool addAction(const RepairAction& action);
  bool updateAction(const QString& what, const RepairAction& action);
  /// A reading of one action, and what it changes in the action (its proof, a step's note), as one thing that
  /// can be undone; both are durable when it returns.
  using ActionChange = std::function<void(RepairAction&, JobReadingId)>;
  bool addReadingFor(RepairActionId action, const QString& what, const JobReading& reading,
                     const ActionChange& change);
  /// Photos are large: they are written and taken out beside the event loop, one after the other. Durable
  /// before `papersChanged` says so; `failed` follows if it cannot be.
  bool addPhoto(const Photo& photo);
  bool removePhoto(PhotoId id);
  bool addCharge(const Charge& charge);
  bool removeCharge(ChargeId id);

  /// The one history. Takes back what was done last, wherever, and says what it was.
  [[nodiscard]] Result<void> undo();
  [[nodiscard]] Result<void> redo();
  using Act = std::function<Result<void>()>;
  /// Does something and puts it on the history; what fails is as if it had never been.
  [[nodiscard]] Result<void> perform(const QString& what, Act redo, Act undo);
  /// Puts something on the history that was done before this window was.
  void remember(const QString& what, Act redo, Act undo);
  void fail(const Error& error) { Q_EMIT failed(shown(error.text())); }

Q_SIGNALS:
  /// Something happened that nobody asked for, in words.
  void noticed(const QString& what);
  /// Another job is open, or none; the signals for its parts follow.
  void jobOpened();
  /// The history is another job's: what is not of a job has to be remembered anew.
  void historyBegun();
  void jobChanged();      ///< another job, or what stands in it
  void boardChanged();    ///< another board, or none
  void readingsChanged(); ///< of the job
  /// Undo or redo is about to change the reading at this point; `readingsChanged` follows.
  void goingBackTo(const ProbePoint& point, ReadingPurpose purpose);
  void goodWalksChanged(); ///< and with them the expected values
  void actionsChanged();   ///< repair actions, their steps and proof
  void papersChanged();    ///< photos and charges
  void openingChanged(const QString& what, double share);
  /// The file is an archive with several boards, of which one has to be chosen.
  void boardsOffered(const QString& file, const QStringList& names);
  /// What was asked for could be read: its board is open, or its boards are offered.
  void fileOpened(const QString& file);
  /// The open job has readings of its board, and `name` is another: `answerOtherBoard` is waited for. An
  /// empty name: no more.
  void otherBoardAsked(const QString& name);
  void failed(const QString& text);

private:
  void beginHistory();
  void tellOfOtherJob();
  /// Whether the open job has readings of another board than this file's.
  [[nodiscard]] bool isOfAnotherJob(const std::filesystem::path& file) const;
  /// Where boards are kept of which only a connector is known.
  [[nodiscard]] std::filesystem::path boardsFolder() const { return folders_.store / "boards"; }
  /// Where boards are kept that came in archives.
  [[nodiscard]] std::filesystem::path archivedFolder() const { return folders_.store / "from-archives"; }
  BenchJob(BenchFolders folders, RepairData data, JobBook book);
  bool reload(std::vector<Photo> known = {});
  struct PhotoChange {
    JobId job;
    bool add = true;
    std::shared_ptr<Photo> photo; ///< its id is known once it is in the book
  };
  [[nodiscard]] std::function<Result<void>()> later(PhotoChange change);
  void changeNextPhoto();
  struct Listing {
    bool add;
    void (BenchJob::*changed)();
  };
  template <class Item> bool list(const QString& what, const Item& item, Listing listing);
  /// The same, and tells of it if it fails.
  bool done(const QString& what, Act redo, Act undo);
  struct ReadingActs {
    Act put;
    Act take;
  };
  [[nodiscard]] ReadingActs actsOf(const JobReading& reading);
  void rememberReadings();
  /// Replaces what is said of these readings of the open job.
  [[nodiscard]] Result<void> sayOf(const std::vector<JobReading>& readings);
  [[nodiscard]] Result<void> putMoved(const std::vector<JobReading>& readings);
  void askOtherBoard(const QString& name, std::function<void()> open);
  void boardOpened(BoardUnderWork board, bool forJob);
  bool joinConnector(const TypedConnector& connector);
  void show(BoardUnderWork board);
  void closeBoard();
  /// Where the job's note names another board than the one that is open, that one is opened.
  void followNote();
  void readGoodWalks();
  void weighGoodWalks();
  [[nodiscard]] Result<void> put(Job job);

  BenchFolders folders_;
  RepairData data_;
  JobBook book_;
  std::optional<Job> job_;
  std::optional<BoardUnderWork> board_;
  std::vector<Walk> good_;
  Walk underWay_;
  std::shared_ptr<const ExpectedTable> expected_ = std::make_shared<const ExpectedTable>();
  std::shared_ptr<const ExpectedTable> expectedOfKept_ = expected_;
  bool keptWeighed_ = true; ///< `expectedOfKept_` is of `good_`
  QUndoStack undo_;
  Background opening_;
  std::function<void()> other_; ///< opens the board that was asked about
  bool putOff_ = false;
  std::optional<std::filesystem::path> waiting_; ///< the file named while they were put off
  Background weighing_;
  std::deque<PhotoChange> photoChanges_; ///< the first one is being made
  Background storing_;
};

} // namespace netmend
