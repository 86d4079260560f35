#pragma once

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "netmend/base/error.h"
#include "netmend/jobbook/job.h"
#include "netmend/probing/walk.h"

namespace soci {
class session;
}

namespace netmend {

/// One line of the list of jobs.
struct JobSummary {
  JobId id;
  std::string number;
  Time created{};
  std::string customer;
  std::string device;
  std::string symptom;
  JobState state = JobState::bookedIn;
  std::size_t readings = 0;
  bool compared = false; ///< walks of good boards of its kind are kept
};

/// An entry of a job's history; written by the book itself.
struct JobEvent {
  enum class Kind {
    asWritten, ///< `text`, word for word: of a book up to version 7
    bookedIn,
    state,     ///< is `state` from now on
    boardUsed, ///< `text` is the digest of its file
    takenBack, ///< `entry` of the job, `number` is its id
    putBack,
    repairAdded, ///< `repair`, on `text`
    suspects     ///< so many are found; 0: withdrawn
  };
  enum class Entry { reading, repairAction, photo, charge };
  Kind kind = Kind::bookedIn;
  std::string text{};
  JobState state = JobState::bookedIn;
  RepairKind repair = RepairKind::jumper;
  Entry entry = Entry::reading;
  std::uint64_t number = 0;
  Time time{};
  friend bool operator==(const JobEvent&, const JobEvent&) = default;
};

/// All that is added to a job at once.
struct JobAdditions {
  std::vector<JobReading> readings;
  RepairActionId proven;             ///< the action that the readings are the proof of, or none
  std::vector<RepairAction> changed; ///< replace those of the same ids: steps ticked off
  std::vector<RepairAction> actions;
  std::vector<Photo> photos;
  std::vector<Charge> charges;
  std::optional<JobState> state;
};
/// The ids that were given, in the order of what was added.
struct JobAdded {
  std::vector<JobReadingId> readings;
  std::vector<RepairActionId> actions;
};

/// What a bench had open, for it to be found again.
struct LeftOpen {
  JobId job;                   ///< or none
  std::filesystem::path board; ///< the board's file; empty: none. A job names its own.
  std::optional<int> station;  ///< a number of the bench's own; none: it was never left
  friend bool operator==(const LeftOpen&, const LeftOpen&) = default;
};

/// What a book is opened for. Only `make` makes one where there is none; a book that can only be read can be
/// opened to `read`.
enum class BookUse { read, change, make };

/// All jobs, in one SQLite file that may be open in several programs at once. Every call that changes
/// something is one transaction and durable when it returns (WAL, synchronous=FULL).
/// Errors name the file; a book written by a newer Netmend is refused.
class JobBook {
public:
  /// Opens the book, brought up to date where it can be written. Errors: not there, not a book, not to be
  /// written; a folder or disk that refuses.
  [[nodiscard]] static Result<JobBook> open(const std::filesystem::path& path, BookUse use);
  JobBook(JobBook&&) noexcept;
  JobBook& operator=(JobBook&&) noexcept;
  ~JobBook();

  /// Books a job in with all it holds. An empty number becomes the year's next ("2026-0007").
  [[nodiscard]] Result<JobId> addJob(const Job& job);
  /// The same for a bench, which has it open from then on: no moment is in between in which it is booked in
  /// and would not be found open again.
  [[nodiscard]] Result<JobId> addOpenJob(const Job& job);
  /// Replaces what stands in the job itself (customer to notes, state), not its lists.
  [[nodiscard]] Result<void> updateJob(const Job& job);
  /// The bytes of its photos are read when they are first wanted; those of photos that are `known`, by their
  /// ids, are taken from there.
  [[nodiscard]] Result<Job> job(JobId id, const std::vector<Photo>& known = {}) const;
  [[nodiscard]] Result<Job> jobNumbered(const std::string& number) const;
  /// Newest first. `text` is looked for in all that was written about a job, its suspects and repair actions;
  /// empty: all.
  [[nodiscard]] Result<std::vector<JobSummary>> jobs(const std::string& text = "") const;
  [[nodiscard]] Result<std::vector<JobEvent>> history(JobId id) const;

  /// All of it, or, when anything of it cannot be added, nothing.
  [[nodiscard]] Result<JobAdded> add(JobId job, const JobAdditions& additions);
  [[nodiscard]] Result<JobReadingId> addReading(JobId job, const JobReading& reading);
  /// Replaces what is said of these readings, known by their ids: the verdict, since good boards were walked
  /// after them; the remark; whether it comes and goes.
  [[nodiscard]] Result<void> rejudge(JobId job, const std::vector<JobReading>& readings);
  /// Replaces where these readings were taken, known by their ids, and what they say there.
  [[nodiscard]] Result<void> moveReadings(JobId job, const std::vector<JobReading>& readings);
  /// Replaces the suspects: they are one finding, made from all readings so far.
  [[nodiscard]] Result<void> setSuspects(JobId job, const std::vector<JobSuspect>& suspects);
  [[nodiscard]] Result<RepairActionId> addAction(JobId job, const RepairAction& action);
  /// Replaces the action with this id: steps ticked off, proof added.
  [[nodiscard]] Result<void> updateAction(JobId job, const RepairAction& action);
  [[nodiscard]] Result<PhotoId> addPhoto(JobId job, const Photo& photo);
  [[nodiscard]] Result<ChargeId> addCharge(JobId job, const Charge& charge);
  [[nodiscard]] Result<void> setState(JobId job, JobState state);

  /// Undo: takes out what was added by mistake. The history keeps that it was there. Errors when the job has
  /// none of that id.
  [[nodiscard]] Result<void> takeBack(JobId job, JobReadingId reading);
  [[nodiscard]] Result<void> takeBack(JobId job, RepairActionId action);
  [[nodiscard]] Result<void> takeBack(JobId job, PhotoId photo);
  [[nodiscard]] Result<void> takeBack(JobId job, ChargeId charge);
  /// Redo: puts in again what was taken back, under the id that it had. Errors when that id is in use.
  [[nodiscard]] Result<void> putBack(JobId job, const JobReading& reading);
  [[nodiscard]] Result<void> putBack(JobId job, const RepairAction& action);
  [[nodiscard]] Result<void> putBack(JobId job, const Photo& photo);
  [[nodiscard]] Result<void> putBack(JobId job, const Charge& charge);

  /// Keeps a walk of a good board for all later jobs on boards with the walk's `boardUuid`. False when the
  /// very same walk is there already.
  [[nodiscard]] Result<bool> addKnownGoodWalk(const Walk& walk);
  /// Undo: takes out the very same walk. Errors when it is not there.
  [[nodiscard]] Result<void> takeBackKnownGoodWalk(const Walk& walk);
  /// Those of this board description, oldest first.
  [[nodiscard]] Result<std::vector<Walk>> knownGoodWalks(const std::string& boardUuid) const;

  /// What the bench of this book has open now.
  [[nodiscard]] Result<void> leaveOpen(const LeftOpen& left);
  [[nodiscard]] Result<LeftOpen> leftOpen() const;

private:
  JobBook(std::filesystem::path path, std::unique_ptr<soci::session> session);
  std::filesystem::path path_;
  std::unique_ptr<soci::session> session_;
};

} // namespace netmend
