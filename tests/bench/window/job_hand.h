#pragma once

#include <array>
#include <functional>

#include "hands.h"
#include "job_story.h"
#include "netmend/casework/proof.h"

namespace netmend::testing {

/// Keys by station, but for those of readings, one a step, and the letters of free text.
class KeyCount {
public:
  static constexpr int most = 60; ///< a job
  explicit KeyCount(const BenchRig& rig) : rig_(rig) {}
  /// What is pressed from now on belongs to this station.
  void at(Station station);
  void leaveOut(int keys) { left_ += keys; }
  [[nodiscard]] int all() const;
  /// "book in 9, board 4 …"
  [[nodiscard]] std::string byStation() const;

private:
  void add() const;
  const BenchRig& rig_;
  mutable std::array<int, stations.size()> counts_{};
  Station station_ = Station::bookIn;
  mutable int before_ = 0;
  mutable int left_ = 0;
};

/// Somebody who takes a job through the window from book in to both sheets, by real events, and whose meter
/// reads what the story's board would. After each station its facts stand in the job book.
class JobHand {
public:
  JobHand(Hands::By by, const QString& language, JobStory story);
  JobHand(const JobHand&) = delete;
  JobHand& operator=(const JobHand&) = delete;
  ~JobHand(); ///< the next one hears English

  void bookIn();
  void openBoard();
  void walk();
  void find(const Repair& repair);
  void bridge(const Repair& repair);
  void prove();
  void charge();
  void handOver();
  /// Both of them, looked into by pdftotext.
  void savePdfs();
  /// All of it.
  void takeThrough();
  /// Prints the keys: no more than a job may take, and no event kept the window waiting.
  void checkKeys() const;

  /// Before this reading, or step, at a station; from 0.
  std::function<void(Station, std::size_t)> onReading = [](Station, std::size_t) {};

  [[nodiscard]] Desk desk() const { return rig.window->desk(); }
  [[nodiscard]] const Job& job() const { return *desk().job.job(); }
  [[nodiscard]] const FaultCase& fault() const { return *desk().fault.fault(); }
  [[nodiscard]] std::string file(const char* name) const {
    return rig.folder.filePath(QString::fromLatin1(name)).toStdString();
  }
  [[nodiscard]] std::string book() const { return file("jobs.netmend-book"); }
  void settle() const;
  /// To the station by the way along the top, or by the key of what is next.
  void goOn(Station station);
  void enter(const std::optional<double>& value);
  void write(const char* field, const QString& text);

  BenchRig rig;
  Hands hands;
  KeyCount keys{rig};
  const JobStory story;

private:
  void type(const QString& text);
  void choosePart();
  void walkBoard(bool good, int board);
  void chooseOdd(const std::string& pin);
  [[nodiscard]] NodeIndex nodeOf(const std::string& pin) const;
  [[nodiscard]] std::optional<std::size_t> brokenEdge(const std::string& pin) const;
  [[nodiscard]] std::optional<double> readsAt(const ProbeProposal& probe, const std::string& pin) const;
  [[nodiscard]] std::optional<double> goodAt(const ProbePoint& point) const;
  void takeSteps(std::size_t action);
  [[nodiscard]] std::optional<ProofPoint> openPoint() const;
  void tryFunctions();
  void savePdf(const std::string& to);

  std::string line_{}; ///< the odd pin whose line is worked on
};

/// What a PDF says, its words one space apart.
[[nodiscard]] std::string pdfWords(const std::string& file);

} // namespace netmend::testing
