#pragma once

#include <functional>
#include <memory>
#include <stop_token>
#include <utility>

#include <QObject>
#include <QThreadPool>

namespace netmend {

/// Work beside the event loop, of which only the last one asked for counts: whatever was started before is
/// told to stop and its result is dropped. Results are delivered in the owner's event loop.
class Background {
public:
  explicit Background(QObject* owner) : owner_(owner), pool_(std::make_unique<QThreadPool>()) {
    pool_->setMaxThreadCount(1);
  }
  ~Background() { cancel(); }
  Background(const Background&) = delete;
  Background& operator=(const Background&) = delete;

  template <class T> void run(std::function<T(std::stop_token)> work, std::function<void(T)> done) {
    cancel();
    stop_ = std::stop_source();
    ++running_;
    pool_->start([this, owner = owner_, stop = stop_.get_token(), work = std::move(work),
                  done = std::move(done)]() mutable {
      std::shared_ptr<T> result;
      if (!stop.stop_requested()) result = std::make_shared<T>(work(stop));
      QMetaObject::invokeMethod(
          owner,
          [this, stop, result, done = std::move(done)] {
            --running_;
            if (result && !stop.stop_requested()) done(std::move(*result));
          },
          Qt::QueuedConnection);
    });
  }
  void cancel() { stop_.request_stop(); }
  /// Whether something was asked for whose result has not been delivered or dropped yet.
  [[nodiscard]] bool busy() const { return running_ > 0; }
  /// Waits until the work itself is over; its result is delivered by the event loop afterwards.
  void finish() { pool_->waitForDone(); }

private:
  QObject* owner_;
  std::unique_ptr<QThreadPool> pool_; ///< its end waits for what still runs
  std::stop_source stop_;
  int running_ = 0;
};

} // namespace netmend
