#pragma once

#include <functional>
#include <random>
#include <string>
#include <vector>

#include <QKeySequence>
#include <QPointer>
#include <QStringList>

#include "bench/window/bench_window.h"
#include "event_watch.h"
#include "meter/simulated_meter.h"

class QAbstractButton;
class QMimeData;

namespace netmend::testing {

/// What the hand takes to the bench.
struct HandKit {
  QStringList boards; ///< files of real boards
  QStringList other;  ///< photos, and files that are none or are broken
};

/// A person at the window who does what people do, and much that they do not: real events, drawn by a seed.
/// It sees what is visible and enabled and knows the keys; of how pages are built it knows nothing.
class Hand {
public:
  Hand(EventWatch& watch, unsigned seed, HandKit kit);
  ~Hand();
  Hand(const Hand&) = delete;
  Hand& operator=(const Hand&) = delete;

  /// The window it is at from now on.
  void at(BenchWindow& window) { window_ = &window; }
  /// Opens a board, or begins one.
  void beginBoard(std::size_t which);
  /// One thing: some events.
  void act();

  [[nodiscard]] int events() const { return events_; }
  /// What it did last, an event a line.
  [[nodiscard]] std::string lately() const;

private:
  // hand.cpp: events.
  void key(int key, Qt::KeyboardModifiers modifiers = {}, const QString& text = {});
  void type(const QString& text);
  void press(QWidget& widget, QPoint at, Qt::MouseButton button, bool twice = false);
  void drag(QWidget& widget, QPoint from, QPoint to, Qt::MouseButton button);
  void wheel(QWidget& widget, QPoint at, int steps, Qt::KeyboardModifiers modifiers);
  void drop(const QString& file);
  void event(const std::string& what, const std::function<void()>& deliver);
  void settle(int milliseconds);
  [[nodiscard]] QWidget* target() const;

  // hand_acts.cpp: what is done with them.
  struct Deed {
    const char* name;
    double often;
    void (Hand::*act)();
  };
  [[nodiscard]] std::vector<Deed> deeds() const;
  void closeWhatIsOpen();
  void closeMachinesOwn();
  void readAtPoint();
  void walkOn();
  void charge();
  void readAnywhere();
  void workOnSteps();
  void typeSomewhere();
  void typeConnector();
  void chooseRow();
  void pushButton();
  void pointAnywhere();
  void useMap();
  void drawSomething();
  void turnWheel();
  void plainKey();
  void stationKey();
  void windowKey();
  void tab();
  void next();
  void goToStation();
  void undoOrRedo();
  void resize();
  void changeLanguage();
  void dropFile();
  void paste();
  void lookAway();
  void holdKey();
  void useMeter();
  void wait();

  [[nodiscard]] int dice(int most) { return std::uniform_int_distribution<int>(0, most - 1)(random_); }
  [[nodiscard]] bool chance(double share) { return std::bernoulli_distribution(share)(random_); }
  template <class List> [[nodiscard]] auto oneOf(const List& list) {
    return list[static_cast<typename List::size_type>(dice(static_cast<int>(list.size())))];
  }
  [[nodiscard]] QPoint somewhereIn(const QWidget& widget);
  template <class Widget> [[nodiscard]] std::vector<Widget*> visible() const {
    std::vector<Widget*> out;
    for (Widget* each : window_->findChildren<Widget*>())
      if (each->isVisible() && each->isEnabled() && each->window() == window_ &&
          !each->visibleRegion().isEmpty())
        out.push_back(each);
    return out;
  }
  [[nodiscard]] QString plausibleValue(const std::string& point);
  [[nodiscard]] QString words();

  EventWatch& watch_;
  BenchWindow* window_ = nullptr;
  std::mt19937 random_;
  HandKit kit_;
  SimulatedMeter meter_;
  QString connector_; ///< of a board that is to be typed
  Station scene_ = Station::board;
  int scenes_ = 0; ///< acts until the next one
  std::string deed_;
  int events_ = 0;
  std::vector<std::string> log_;
};

} // namespace netmend::testing
