#include "event_watch.h"

#include <algorithm>
#include <ctime>

#include <QKeyEvent>
#include <QMetaEnum>
#include <QThread>
#include <QWidget>

namespace netmend::testing {

namespace {

std::chrono::nanoseconds timeOf(clockid_t clock) {
  timespec now{};
  ::clock_gettime(clock, &now);
  return std::chrono::seconds(now.tv_sec) + std::chrono::nanoseconds(now.tv_nsec);
}

std::string kindName(QEvent::Type kind) {
  const char* key = QMetaEnum::fromType<QEvent::Type>().valueToKey(kind);
  return key != nullptr ? key : "event " + std::to_string(static_cast<int>(kind));
}

long milliseconds(std::chrono::nanoseconds time) {
  return static_cast<long>(std::chrono::duration_cast<std::chrono::milliseconds>(time).count());
}

} // namespace

std::string Handler::text() const {
  return receiver + ", " + kindName(kind) + ", " + std::to_string(milliseconds(work)) + " ms of work, " +
         std::to_string(milliseconds(clock)) + " ms by the clock" +
         (during.empty() ? std::string() : ", during " + during);
}

/// What is known of it before the delivery: afterwards it may be gone.
struct EventWatch::Receiver {
  explicit Receiver(const QObject& object)
      : kind(object.metaObject()->className()), name(object.objectName()) {
    if (const QObject* parent = object.parent()) {
      owner = parent->metaObject()->className();
      ownerName = parent->objectName();
    }
  }
  const char* kind;
  QString name;
  const char* owner = nullptr;
  QString ownerName;
};

EventWatch::EventWatch(int& argc, char** argv) : QApplication(argc, argv) {
  lookout_.start(100, this);
}

Handler EventWatch::handler(const Receiver& receiver, QEvent::Type kind) const {
  Handler out;
  out.receiver = receiver.kind;
  if (!receiver.name.isEmpty()) out.receiver += " " + receiver.name.toStdString();
  if (receiver.owner != nullptr) out.receiver += std::string(" of ") + receiver.owner;
  if (!receiver.ownerName.isEmpty()) out.receiver += " " + receiver.ownerName.toStdString();
  out.kind = kind;
  out.during = doing_;
  return out;
}

bool EventWatch::notify(QObject* receiver, QEvent* event) {
  // A meter's own thread delivers its own; and what is delivered within another one is part of that.
  if (QThread::currentThread() != thread() || depth_ > 0) return QApplication::notify(receiver, event);
  const Receiver who(*receiver);
  const QEvent::Type kind = event->type();
  outermost_ = Handler{who.kind, kind, doing_, {}, {}};
  outermostOf_ = receiver;
  const auto workBefore = timeOf(CLOCK_THREAD_CPUTIME_ID);
  const auto clockBefore = timeOf(CLOCK_MONOTONIC);
  ++depth_;
  const bool done = QApplication::notify(receiver, event);
  --depth_;
  const auto work = timeOf(CLOCK_THREAD_CPUTIME_ID) - workBefore;
  const auto clock = timeOf(CLOCK_MONOTONIC) - clockBefore;
  ++deliveries_;
  const bool isOver = work > limits_.work || clock > limits_.clock;
  if (isOver || work > mostWork_.work || clock > longest_.clock) {
    Handler timed = handler(who, kind);
    timed.work = work;
    timed.clock = clock;
    if (isOver) over_.push_back(timed);
    if (work > mostWork_.work) mostWork_ = timed;
    if (clock > longest_.clock) longest_ = timed;
  }
  if (delivered) delivered();
  return done;
}

void EventWatch::startAnew(const HandlerLimits& limits) {
  limits_ = limits;
  over_.clear();
  waiting_.clear();
  mostWork_ = longest_ = {};
  deliveries_ = 0;
}

void EventWatch::timerEvent(QTimerEvent* event) {
  if (event->timerId() != lookout_.timerId()) return QApplication::timerEvent(event);
  // Its own delivery is the outermost one unless some handler waits in an event loop of its own.
  if (depth_ == 0 || outermostOf_ == this) return;
  waiting_.push_back(outermost_);
  QWidget* on = activePopupWidget() != nullptr ? activePopupWidget() : activeModalWidget();
  if (on == nullptr) return;
  for (const auto kind : {QEvent::KeyPress, QEvent::KeyRelease}) {
    QKeyEvent escape(kind, Qt::Key_Escape, Qt::NoModifier);
    sendEvent(on, &escape);
  }
}

} // namespace netmend::testing
