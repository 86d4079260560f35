#pragma once

#include <deque>
#include <functional>
#include <memory>
#include <random>
#include <string>
#include <string_view>

#include <QSocketNotifier>
#include <QTimer>

#include "meter/line_framer.h"
#include "netmend/base/error.h"
#include "simulated_bench.h"

namespace netmend {

/// One talk with the practice meter, over whatever wire: takes commands one after the other, each in its
/// time.
class SimulatedTalk {
public:
  SimulatedTalk(SimulatedScpi& scpi, const SimulatedMeterOptions& options,
                std::function<void(const std::string&)> write);

  void hear(std::string_view bytes);
  /// Bytes to the other end, whole or in fragments.
  void say(std::string_view bytes);

private:
  void answerNext();
  void sayFragment();

  SimulatedScpi* scpi_;
  SimulatedMeterOptions options_;
  std::function<void(const std::string&)> write_;
  LineFramer framer_{LineFramer::Begin::atLine};
  std::deque<std::string> commands_;
  std::string unsaid_;
  std::mt19937 dice_;
  QTimer measuring_;
  QTimer fragments_;
};

/// The meter's end of a pseudo-terminal, under a name that stays the same when it is broken off and opened
/// again.
class SimulatedTerminal {
public:
  /// Opens it. Error: the system has none left.
  [[nodiscard]] static Result<std::unique_ptr<SimulatedTerminal>> make();
  ~SimulatedTerminal();
  SimulatedTerminal(const SimulatedTerminal&) = delete;
  SimulatedTerminal& operator=(const SimulatedTerminal&) = delete;

  [[nodiscard]] Result<void> open();
  void close();
  void write(const std::string& bytes) const;
  [[nodiscard]] std::string name() const { return folder_ + "/meter"; }

  std::function<void(std::string_view)> heard;

private:
  SimulatedTerminal() = default;
  void readAll() const;

  std::string folder_;
  int meterEnd_ = -1;
  int otherEnd_ = -1; ///< held open: a terminal that nobody has open reports errors without end
  std::unique_ptr<QSocketNotifier> notifier_;
};

} // namespace netmend
