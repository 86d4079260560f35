#pragma once

#include <functional>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include <QObject>

#include "bench_job.h"
#include "netmend/drawing/pin_strip.h"
#include "netmend/probing/shift.h"
#include "netmend/probing/verdict.h"
#include "netmend/probing/walk_session.h"

namespace netmend {

/// What a walk says of a point.
struct PointState {
  ProbePoint point{};
  bool due = false;
  bool skipped = false;
  bool hasNet = true;                   ///< not, as the board knows: it is passed over, but can be gone to
  std::optional<std::size_t> reading{}; ///< the last one here, an index into the walk's readings
};

/// The walk of one connector or part, of a good board or of the job's board, whichever is chosen. Both have
/// the same points; each keeps its own readings and its own turn.
///
/// A reading of the job's board is in the job book before `changed` is emitted, one of a good board in a file
/// that is rewritten after every reading and goes on after a crash; `keepGood` moves it into the book. All of
/// it is on the job's history.
class BenchWalk : public QObject {
  Q_OBJECT

public:
  explicit BenchWalk(BenchJob& job);

  [[nodiscard]] bool good() const { return good_; }
  /// The job's board can be walked only with a job open: one is booked in if there is none.
  void setGood(bool good);

  /// Connectors first, then the other parts, those with most pins first.
  [[nodiscard]] std::vector<PartId> partsToWalk() const;
  [[nodiscard]] PartId part() const { return part_; }
  void setPart(PartId part);

  [[nodiscard]] const Walk& walk() const { return session().walk; }
  [[nodiscard]] const Walk& walk(bool good) const { return good ? goodSession_.walk : badSession_.walk; }
  [[nodiscard]] std::optional<ProbePoint> due() const;
  [[nodiscard]] std::vector<PointState> points() const;
  /// Somebody went to a pin that is passed over: not.
  [[nodiscard]] bool dueHasNet() const { return session().finished() || points()[session().turn].hasNet; }
  [[nodiscard]] ReadingMode mode() const { return session().walk.mode; }

  /// Asked once a walk: what was plugged in, the temperature.
  [[nodiscard]] bool conditionKnown() const { return good_ ? goodCondition_ : badCondition_; }
  void setCondition(const Condition& condition);
  /// With which profile of the data folder, and by whom, it is measured from now on, at every station, and
  /// the next time the window opens.
  void setMeter(const std::string& id);
  void setBy(const std::string& name);
  [[nodiscard]] const std::string& meter() const { return meter_; }
  [[nodiscard]] const std::string& by() const { return by_; }

  /// Takes one event in; durable when it returns. Errors change nothing.
  [[nodiscard]] Result<void> take(const ReadingEvent& event);
  /// The same for something typed: a value, OL, or a word of the text source (`skip`, `back`, `undo`).
  [[nodiscard]] Result<void> type(const std::string& text);
  /// Goes to this point next.
  void goTo(std::size_t point);

  /// Verdict of the last reading taken; nothing right after skipping, going back or undoing.
  [[nodiscard]] std::optional<Verdict> lastVerdict() const { return last_; }
  /// What the point of the last reading read before on the job's board, where that was something else. Null
  /// where `lastVerdict` is nothing.
  [[nodiscard]] const JobReading* readOtherwise() const {
    return last_ && !good_ ? job_.readOtherwise() : nullptr;
  }
  /// Of each reading of the walk in force.
  [[nodiscard]] const JudgedWalk& judged() const { return judged_; }
  [[nodiscard]] const Expected* expectedAtDue() const;
  /// The last readings stand one pin beside where they were taken, as it seems; what to say of it, and to do:
  /// they are moved there in one step of the history. A pin that was left out is due then.
  [[nodiscard]] const std::optional<Shift>& shift() const { return shift_; }
  [[nodiscard]] QString shiftWords() const;
  [[nodiscard]] Result<void> moveShifted();
  /// Flagged points of the job's board, the oddest first: indices into its readings.
  [[nodiscard]] std::vector<std::size_t> oddOnes() const;

  /// Expected values, the job's board and, where it is walked, the good board live beside it.
  [[nodiscard]] PinStrip strip() const;

  /// Puts the good walk into the book; the job's board is walked next. False when it has no readings, or the
  /// book refuses.
  bool keepGood();

Q_SIGNALS:
  /// Also when another reading of the job came or went, or good boards were weighed.
  void changed();
  /// A reading was taken: the last one, with `lastVerdict`.
  void taken();

private:
  [[nodiscard]] const WalkSession& session() const { return good_ ? goodSession_ : badSession_; }
  [[nodiscard]] WalkSession& session() { return good_ ? goodSession_ : badSession_; }
  void startOver();
  void jobOpened();
  void fillFromJob();
  /// The readings of the job at the walk's points, as they are now; the turn is at what has gone, or after
  /// what has come.
  void followJob();
  /// What is about to be taken back, or done again, is shown.
  void showPoint(const ProbePoint& point);
  /// What was walked last in the job: there it goes on.
  [[nodiscard]] PartId partOfJob() const;
  void resumeGood();
  void rememberGood();
  using SessionChange = std::function<Result<void>(WalkSession&)>;
  /// Of the walk of this good board, whether it is the one that is open or not; durable when it returns.
  [[nodiscard]] Result<void> changeGood(const std::string& boardUuid, const SessionChange& change);
  /// The good walk under way is this one now, and is what is shown.
  void showGood(WalkSession session);
  /// Puts a reading at the end of the good walk under way, and takes it from there.
  [[nodiscard]] std::pair<BenchJob::Act, BenchJob::Act> goodActs(const Reading& reading);
  [[nodiscard]] Result<void> takeReading(const Reading& reading);
  [[nodiscard]] Result<void> takeGood(const Reading& reading);
  [[nodiscard]] Result<void> skip();
  [[nodiscard]] Result<void> moveGood(const QString& what, const std::vector<ProbePoint>& to,
                                      std::size_t turn);
  [[nodiscard]] Result<void> putGoodIntoBook(const WalkSession& kept);
  [[nodiscard]] Result<void> takeGoodOutOfBook(const WalkSession& kept);
  void weigh();
  [[nodiscard]] JudgedWalk judgedBy(const ExpectedTable& table, const Walk& walk) const;
  void judge();
  void rejudgeKept();
  /// Where there is nothing to compare with now, what the job says was found at the time holds.
  void recallVerdicts();
  [[nodiscard]] Walk emptyWalk(bool good) const;
  /// Taken up where it was left, on the open board.
  [[nodiscard]] WalkSession takenUp(Walk walk) const;
  [[nodiscard]] WalkSession begun(bool good) const { return takenUp(emptyWalk(good)); }
  [[nodiscard]] std::string boardUuid() const;
  /// One for each board: walking another good board first loses nothing.
  [[nodiscard]] std::filesystem::path goodFile(const std::string& boardUuid) const;

  BenchJob& job_;
  bool good_ = false;
  bool goodCondition_ = false;
  bool badCondition_ = false;
  PartId part_;
  std::string walkedUuid_; ///< of the board that `part_` is of
  std::string meter_;
  std::string by_;
  WalkSession goodSession_;
  WalkSession badSession_;
  bool taking_ = false;            ///< a reading is on its way into the job
  std::vector<JobReadingId> kept_; ///< parallel to the readings of `badSession_`
  JudgedWalk judged_;              ///< of the walk in force
  JudgedWalk badJudged_;
  std::optional<Shift> shift_; ///< in the walk in force
  std::optional<Verdict> last_;
  std::set<std::string> remembered_; ///< uuids of boards whose good walks are on the history already
};

} // namespace netmend
