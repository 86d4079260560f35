#pragma once

#include <chrono>
#include <functional>
#include <string>
#include <utility>
#include <vector>

#include <QApplication>
#include <QBasicTimer>

namespace netmend::testing {

/// How long the delivery of one event to the window may take: of its thread's own processor time, and by the
/// clock, which counts what others keep busy as well.
struct HandlerLimits {
  std::chrono::nanoseconds work = std::chrono::milliseconds(200);
  std::chrono::nanoseconds clock = std::chrono::seconds(5);
};

/// The delivery of one event, with all that was delivered within it.
struct Handler {
  std::string receiver; ///< its class, name and whose it is
  QEvent::Type kind = QEvent::None;
  std::string during; ///< what was being done
  std::chrono::nanoseconds work{};
  std::chrono::nanoseconds clock{};
  /// For example "QLineEdit reading, KeyPress, 212 ms of work, 230 ms by the clock, during reading".
  [[nodiscard]] std::string text() const;
};

/// An application that times every delivery of an event in its own thread.
class EventWatch : public QApplication {
public:
  EventWatch(int& argc, char** argv);
  bool notify(QObject* receiver, QEvent* event) override;

  /// Forgets what was found so far.
  void startAnew(const HandlerLimits& limits = {});
  /// What is being done, for the report.
  void doing(std::string what) { doing_ = std::move(what); }
  [[nodiscard]] const std::string& doing() const { return doing_; }
  /// Asked for after each delivery.
  std::function<void()> delivered;

  [[nodiscard]] const std::vector<Handler>& over() const { return over_; } ///< of one limit or both
  [[nodiscard]] const Handler& mostWork() const { return mostWork_; }
  [[nodiscard]] const Handler& longest() const { return longest_; }
  [[nodiscard]] long deliveries() const { return deliveries_; }
  /// What was delivered when a handler waited in an event loop of its own, as a dialog that blocks does.
  /// Escape has been pressed there since.
  [[nodiscard]] const std::vector<Handler>& waiting() const { return waiting_; }

protected:
  void timerEvent(QTimerEvent* event) override;

private:
  struct Receiver;
  [[nodiscard]] Handler handler(const Receiver& receiver, QEvent::Type kind) const;

  HandlerLimits limits_;
  std::string doing_;
  std::vector<Handler> over_;
  std::vector<Handler> waiting_;
  Handler mostWork_;
  Handler longest_;
  Handler outermost_; ///< that is being delivered
  const QObject* outermostOf_ = nullptr;
  long deliveries_ = 0;
  int depth_ = 0;
  QBasicTimer lookout_;
};

} // namespace netmend::testing
