#pragma once

#include <exception>
#include <functional>
#include <utility>

#include <QCoreApplication>
#include <QObject>
#include <QThread>

namespace netmend {

/// A thread with an event loop of its own, for things that must not wait for the events of the thread that
/// made it. What lives there is made, called and taken down through `call`.
class OwnThread {
public:
  OwnThread() {
    there_.moveToThread(&thread_);
    thread_.start();
  }
  ~OwnThread() {
    thread_.quit();
    thread_.wait();
  }
  OwnThread(const OwnThread&) = delete;
  OwnThread& operator=(const OwnThread&) = delete;

  /// Does it there and waits for it; what it throws is thrown here.
  template <class Do> void call(Do what) {
    std::exception_ptr thrown;
    QMetaObject::invokeMethod(
        &there_,
        [&] {
          try {
            what();
          } catch (...) {
            thrown = std::current_exception();
          }
        },
        Qt::BlockingQueuedConnection);
    if (thrown) std::rethrow_exception(thrown);
  }
  /// From there: has it done in the thread that made this, as one of its events. Not if this is gone by then.
  void hand(std::function<void()> what) {
    QMetaObject::invokeMethod(&here_, std::move(what), Qt::QueuedConnection);
  }
  /// What was handed over and not done yet never is.
  void forgetHanded() { QCoreApplication::removePostedEvents(&here_); }

private:
  QThread thread_;
  QObject there_;
  QObject here_;
};

} // namespace netmend
