// The events themselves: what keyboard, mouse and desktop send.
#include "hand.h"

#include <array>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <string_view>
#include <unistd.h>

#include <QDropEvent>
#include <QElapsedTimer>
#include <QMimeData>
#include <QTest>
#include <QUrl>
#include <QWheelEvent>

namespace netmend::testing {

namespace {

constexpr std::size_t remembered = 60; ///< events
constexpr unsigned mostOfOne = 120;    ///< s for one event and what goes on beside it

std::array<char, 200> thisEvent{}; ///< the event, for when it never ends

/// A handler that never returns would keep the tests waiting for good.
void neverEnds(int) {
  constexpr std::string_view says = "a handler does not return: ";
  static_cast<void>(::write(STDERR_FILENO, says.data(), says.size()));
  static_cast<void>(::write(STDERR_FILENO, thisEvent.data(), std::strlen(thisEvent.data())));
  static_cast<void>(::write(STDERR_FILENO, "\n", 1));
  std::abort();
}

} // namespace

Hand::Hand(EventWatch& watch, unsigned seed, HandKit kit)
    : watch_(watch), random_(seed), kit_(std::move(kit)), meter_({.seed = seed}) {
  std::signal(SIGALRM, neverEnds);
}

Hand::~Hand() {
  ::alarm(0);
}

std::string Hand::lately() const {
  std::string out;
  for (std::size_t i = log_.size() > remembered ? log_.size() - remembered : 0; i < log_.size(); ++i)
    out += log_[i] + "\n";
  return out;
}

void Hand::event(const std::string& what, const std::function<void()>& deliver) {
  ++events_;
  const std::string text = std::to_string(events_) + " at station " +
                           std::to_string(static_cast<int>(window_->station()) + 1) + ", " + deed_ + ": " +
                           what;
  log_.push_back(text);
  // Told before it is done: a crash leaves no other word.
  static const char* aloud = std::getenv("NETMEND_HAND_LOG");
  static std::FILE* out = aloud != nullptr ? std::fopen(aloud, "w") : nullptr;
  if (out != nullptr) {
    std::fprintf(out, "%s\n", text.c_str());
    std::fflush(out);
  }
  watch_.doing(text);
  text.copy(thisEvent.data(), thisEvent.size() - 1);
  thisEvent.at(std::min(text.size(), thisEvent.size() - 1)) = '\0';
  ::alarm(mostOfOne);
  deliver();
  QCoreApplication::processEvents();
}

void Hand::settle(int milliseconds) {
  QElapsedTimer timer;
  timer.start();
  while (timer.elapsed() < milliseconds)
    QCoreApplication::processEvents(QEventLoop::AllEvents | QEventLoop::WaitForMoreEvents, 5);
}

QWidget* Hand::target() const {
  for (QWidget* top : {QApplication::activePopupWidget(), QApplication::activeModalWidget()})
    if (top != nullptr) return top->focusWidget() != nullptr ? top->focusWidget() : top;
  QWidget* focus = QApplication::focusWidget();
  return focus != nullptr ? focus : window_;
}

void Hand::key(int key, Qt::KeyboardModifiers modifiers, const QString& text) {
  closeMachinesOwn();
  const auto name = QKeySequence(QKeyCombination(modifiers, static_cast<Qt::Key>(key))).toString();
  event("key " + (text.isEmpty() ? name : text).toStdString(), [&] {
    if (text.isEmpty())
      QTest::keyClick(target(), static_cast<Qt::Key>(key), modifiers);
    else
      QTest::sendKeyEvent(QTest::Click, target(), static_cast<Qt::Key>(key), text, modifiers);
  });
}

void Hand::type(const QString& text) {
  for (const QChar c : text) {
    const int upper = c.toUpper().unicode();
    key(upper < 0x80 ? upper : Qt::Key_unknown, c.isUpper() ? Qt::ShiftModifier : Qt::NoModifier, c);
  }
}

void Hand::press(QWidget& widget, QPoint at, Qt::MouseButton button, bool twice) {
  const std::string where = widget.metaObject()->className() + std::string(" ") +
                            widget.objectName().toStdString() + " " + std::to_string(at.x()) + "," +
                            std::to_string(at.y());
  const QPointer<QWidget> there(&widget);
  event("button " + std::to_string(static_cast<int>(button)) + " on " + where,
        [&] { QTest::mouseClick(&widget, button, {}, at); });
  if (twice && there && there->isVisible() && there->isEnabled())
    event("twice on " + where, [&] { QTest::mouseDClick(there, button, {}, at); });
}

void Hand::drag(QWidget& widget, QPoint from, QPoint to, Qt::MouseButton button) {
  const QPointer<QWidget> there(&widget);
  const auto move = [&](QEvent::Type type, QPointF at, Qt::MouseButton changed, Qt::MouseButtons held) {
    if (!there) return;
    event("drag", [&] {
      QMouseEvent mouse(type, at, there->mapToGlobal(at), changed, held, {});
      QApplication::sendEvent(there, &mouse);
    });
  };
  move(QEvent::MouseButtonPress, from, button, button);
  for (int step = 1; step <= 4; ++step)
    move(QEvent::MouseMove, QPointF(from) + QPointF(to - from) * step / 4.0, Qt::NoButton, button);
  move(QEvent::MouseButtonRelease, to, button, Qt::NoButton);
}

void Hand::wheel(QWidget& widget, QPoint at, int steps, Qt::KeyboardModifiers modifiers) {
  event("wheel " + std::to_string(steps), [&] {
    QWheelEvent turned(at, widget.mapToGlobal(at), {}, {0, 120 * steps}, Qt::NoButton, modifiers,
                       Qt::NoScrollPhase, false);
    QApplication::sendEvent(&widget, &turned);
  });
}

void Hand::drop(const QString& file) {
  event("drop " + file.toStdString(), [&] {
    QMimeData mime;
    mime.setUrls({QUrl::fromLocalFile(file)});
    // Asked first is what is under the pointer, then whose that is, and so on up; who takes it gets it.
    const QPoint at = somewhereIn(*window_);
    const QPointer<QWidget> under(window_->childAt(at) != nullptr ? window_->childAt(at) : window_);
    const QPoint there = under->mapFrom(window_, at);
    QDragEnterEvent enter(there, Qt::CopyAction, &mime, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(under, &enter);
    if (!enter.isAccepted() || !under) return;
    QDropEvent dropped(there, Qt::CopyAction, &mime, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(under, &dropped);
  });
}

QPoint Hand::somewhereIn(const QWidget& widget) {
  return {dice(std::max(1, widget.width())), dice(std::max(1, widget.height()))};
}

} // namespace netmend::testing
