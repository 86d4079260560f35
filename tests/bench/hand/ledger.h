#pragma once

#include <cstdint>
#include <filesystem>
#include <map>
#include <string>
#include <vector>

#include <QObject>

#include "bench/window/bench_window.h"

namespace netmend::testing {

/// What a window has shown as taken, kept apart from the window and from the book. What was there and is gone
/// must have been taken back, by undo or redo, in the same event; and a second book, read from the file, must
/// hold all of it and nothing else.
class Ledger : public QObject {
public:
  /// What is kept of a job, as plain text: compared, and read by a person where it differs.
  struct KeptJob {
    std::string number;
    bool over = false;                             ///< handed over, or returned unrepaired
    std::vector<std::string> words;                ///< what stands in the job itself
    std::map<std::uint64_t, std::string> readings; ///< by id
    std::map<std::uint64_t, std::string> actions;  ///< with steps and proof
    std::map<std::uint64_t, std::string> photos;
    std::map<std::uint64_t, std::string> charges;
    friend bool operator==(const KeptJob&, const KeptJob&) = default;
  };
  /// Of the boards of one description.
  struct GoodBoards {
    std::vector<std::string> underWay;
    std::vector<std::vector<std::string>> kept;
    friend bool operator==(const GoodBoards&, const GoodBoards&) = default;
  };

  /// Follows what this window shows from now on. What it opens with must be what was shown before.
  void follow(BenchWindow& window);
  /// The delivery of an event is over: what went without a word in it is lost. `during` is for the report.
  void delivered(const std::string& during = {});
  /// Holds all against a second book that is read from the file, and against the files of good walks; the
  /// file is looked through by SQLite itself.
  void check(const std::filesystem::path& store);

  [[nodiscard]] const std::vector<std::string>& faults() const { return faults_; }
  [[nodiscard]] int taken() const { return taken_; } ///< readings announced
  [[nodiscard]] int takenBack() const { return takenBack_; }
  [[nodiscard]] int checks() const { return checks_; }
  /// How far the jobs have come, all together, as far as they are not taken back.
  struct Come {
    std::size_t jobs = 0;
    std::size_t readings = 0;
    std::size_t repairs = 0;
    std::size_t proofs = 0; ///< readings that are to prove one
    std::size_t photos = 0;
    std::size_t charges = 0;
    std::size_t goodWalks = 0;
    std::size_t handedOver = 0;
  };
  [[nodiscard]] Come come() const;

private:
  void jobShown();
  void goodShown();
  void goodKept();
  void readOtherBoards();
  void announced(const QString& point, const QString& value);
  void fault(const std::string& what);
  void checkJobs(const JobBook& book);
  void checkGood(const JobBook& book, const std::filesystem::path& store);

  BenchWindow* window_ = nullptr;
  std::map<std::uint64_t, KeptJob> jobs_;    ///< by id
  std::map<std::string, GoodBoards> boards_; ///< by uuid
  std::vector<std::string> gone_;            ///< in this event
  int words_ = 0;                            ///< of undo and redo, in this event
  int taken_ = 0;
  int takenBack_ = 0;
  int checks_ = 0;
  std::vector<std::string> faults_;
};

/// What SQLite finds wrong with the file; empty: nothing.
[[nodiscard]] std::string unsound(const std::filesystem::path& book);

} // namespace netmend::testing
