#pragma once

#include <optional>
#include <string>
#include <utility>

#include <QObject>

#include "bench/session/bench_walk.h"
#include "sounds.h"

namespace netmend {

/// A walk by ear: a tone for each reading, and in words, where speech is on, what was read and what is due
/// next. Eyes are in the microscope.
class WalkEar : public QObject {
  Q_OBJECT

public:
  WalkEar(BenchWalk& walk, Sounds& sounds);
  /// The walk is what the window is at; only then is it told what is due.
  void listen(bool listening);
  /// On request: the last reading, if it was the last thing done, and what is due.
  [[nodiscard]] Result<void> repeat();

private:
  void follow();
  void taken();
  void tell();
  [[nodiscard]] QString readingWords() const;
  enum class Board { known, named };
  [[nodiscard]] QString dueWords(Board board) const;

  BenchWalk& walk_;
  Sounds& sounds_;
  bool listening_ = false;
  std::optional<std::pair<bool, std::string>> told_; ///< good board or not, and the point due, as last said
  QString reading_;                                  ///< not said yet
  bool telling_ = false;                             ///< at the next turn of the event loop
};

} // namespace netmend
