#pragma once

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include <QString>
#include <QStringList>

#include "netmend/isolation/foretold.h"
#include "netmend/netgraph/line.h"

namespace netmend::testing {

class JobHand;

/// What is done about one odd pin, and what Find should have come to before.
struct Repair {
  std::string pin;
  int byHand = 0; ///< the key of its kind; 0: the first jumper that is proposed
  QString line{}; ///< what is typed for it
  std::optional<FaultKind> found{FaultKind::open}; ///< none: no fault that the program knows
};

/// What differs between whole jobs: the board, what it is and should be, and what is done about it.
struct JobStory {
  QString name;
  QString boardFile{}; ///< empty: typed, or drawn
  QString connector{}; ///< "J1, 20 pins"
  std::function<void(JobHand&)> draw{};
  std::string part;

  QString device, serial{}, symptom, history{}, received{}, customer{}, reference{}, notes{};
  QString temperature{};   ///< of the board, °C
  QStringList functions{}; ///< that the symptom does not name
  QString workshop{};      ///< for the sheet's head

  /// Files of good boards' walks that the book has before, made in this folder where they are not there yet.
  std::function<std::vector<std::string>(const QString& folder)> goodWalks{};
  int goodBoards = 0; ///< that are walked at the window
  /// What the pins of good boards read, V; none: OL. The first board is number 0, the job's the last.
  std::function<std::optional<double>(const std::string& pin, int board)> good;
  std::map<std::string, std::optional<double>> odd; ///< what these pins of the job's board read; none: OL
  /// Where a line that reads OL is broken: an edge of its graph. Empty: nobody knows the copper.
  std::function<std::size_t(const Line& line, NodeIndex pin)> broken{};
  std::vector<Repair> repairs;
  /// Readings at Find, after which it is gone on, though more may be offered; none: to the end.
  std::optional<std::size_t> probes{};
  std::vector<std::size_t> charges{1, 3}; ///< keys of the usual ones
  const char* total = "51.50";            ///< of data/charges.json
};

/// The guide's: the demo's device, one line broken.
[[nodiscard]] JobStory guideStory();
/// The same board: one line broken, one shorted by solder, one low by a part.
[[nodiscard]] JobStory threeOddStory();
/// Nothing is known but a connector's pins.
[[nodiscard]] JobStory typedStory();
/// A small board drawn for the job.
[[nodiscard]] JobStory drawnStory();
/// On the largest board of Debian's kicad-demos.
[[nodiscard]] JobStory largeStory();

} // namespace netmend::testing
