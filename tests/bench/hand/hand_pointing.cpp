// What the hand does with the mouse, and to the window from outside.
#include "hand.h"

#include <array>

#include <QAbstractButton>
#include <QAbstractItemView>
#include <QTabBar>

namespace netmend::testing {

namespace {

/// Those that ask for a file or a printer of this machine, by the keys that such things have everywhere.
bool asksForFileOrPrinter(const QAbstractButton& button) {
  const QKeySequence key = button.shortcut();
  for (const QKeySequence& each :
       {QKeySequence(QKeySequence::Open), QKeySequence(QKeySequence::Save), QKeySequence(QKeySequence::Print),
        QKeySequence(Qt::CTRL | Qt::Key_P), QKeySequence(Qt::CTRL | Qt::Key_I)})
    if (key == each) return true;
  return false;
}

} // namespace

void Hand::pushButton() {
  if (const auto bars = visible<QTabBar>(); !bars.empty() && chance(0.3)) {
    QTabBar* bar = oneOf(bars);
    return press(*bar, bar->tabRect(dice(std::max(1, bar->count()))).center(), Qt::LeftButton);
  }
  std::vector<QAbstractButton*> buttons;
  for (QAbstractButton* each : visible<QAbstractButton>())
    if (!asksForFileOrPrinter(*each)) buttons.push_back(each);
  if (buttons.empty()) return;
  QAbstractButton* button = oneOf(buttons);
  press(*button, button->rect().center(), Qt::LeftButton);
}

void Hand::chooseRow() {
  const auto lists = visible<QAbstractItemView>();
  if (lists.empty()) return;
  QAbstractItemView* list = oneOf(lists);
  if (list->model() == nullptr || list->model()->rowCount() == 0) return;
  const QModelIndex row = list->model()->index(dice(std::min(12, list->model()->rowCount())), 0);
  const QRect at = list->visualRect(row) & list->viewport()->rect();
  if (at.isEmpty()) return;
  const QPointer<QAbstractItemView> there(list);
  press(*list->viewport(), at.center(), Qt::LeftButton, chance(0.4));
  if (there && chance(0.4)) key(Qt::Key_Return);
}

void Hand::pointAnywhere() {
  const QPoint at = somewhereIn(*window_);
  QWidget* under = window_->childAt(at);
  if (under == nullptr || !under->isEnabled()) return;
  if (const auto* button = qobject_cast<QAbstractButton*>(under); button && asksForFileOrPrinter(*button))
    return;
  const QPoint here = under->mapFrom(window_, at);
  if (chance(0.15)) return drag(*under, here, somewhereIn(*under), Qt::LeftButton);
  const auto button =
      chance(0.8) ? Qt::LeftButton
                  : oneOf(std::array{Qt::RightButton, Qt::MiddleButton, Qt::BackButton, Qt::ForwardButton});
  press(*under, here, button, chance(0.1));
}

void Hand::useMap() {
  CopperMap& map = window_->map();
  if (!map.isVisible() || map.visibleRegion().isEmpty()) return;
  const int what = dice(10);
  if (what < 4) return press(map, somewhereIn(map), Qt::LeftButton, chance(0.1));
  if (what < 6) return wheel(map, somewhereIn(map), chance(0.5) ? 1 + dice(3) : -1 - dice(3), {});
  if (what < 7) return drag(map, somewhereIn(map), somewhereIn(map), Qt::LeftButton);
  if (what < 8) return drag(map, somewhereIn(map), somewhereIn(map), Qt::MiddleButton);
  key(Qt::Key_B, Qt::ControlModifier);
  for (int i = 1 + dice(3); i > 0; --i)
    key(oneOf(std::array{Qt::Key_Plus, Qt::Key_Minus, Qt::Key_F, Qt::Key_T, Qt::Key_X, Qt::Key_R, Qt::Key_L,
                         Qt::Key_Comma, Qt::Key_Period, Qt::Key_0, Qt::Key_M, Qt::Key_Return, Qt::Key_Left,
                         Qt::Key_Up}));
  if (chance(0.8)) key(Qt::Key_E, Qt::ControlModifier);
}

void Hand::turnWheel() {
  const QPoint at = somewhereIn(*window_);
  QWidget* under = window_->childAt(at);
  if (under == nullptr) return;
  const auto with = oneOf(std::array<Qt::KeyboardModifiers, 4>{Qt::NoModifier, Qt::ShiftModifier,
                                                               Qt::ControlModifier, Qt::AltModifier});
  wheel(*under, under->mapFrom(window_, at), chance(0.5) ? 2 : -2, with);
}

void Hand::resize() {
  constexpr std::array sizes{QSize(1280, 800),  QSize(1280, 800), QSize(1920, 1080),
                             QSize(1024, 768),  QSize(800, 600),  QSize(640, 480),
                             QSize(2560, 1440), QSize(1366, 768), QSize(300, 200)};
  const QSize size = oneOf(sizes);
  event("size " + std::to_string(size.width()) + " x " + std::to_string(size.height()),
        [&] { window_->resize(size); });
}

void Hand::dropFile() {
  drop(chance(0.3) ? oneOf(kit_.boards) : oneOf(kit_.other));
  settle(dice(100));
}

void Hand::lookAway() {
  event("another window is in front", [] { QApplication::setActiveWindow(nullptr); });
  if (chance(0.3)) settle(dice(100));
  event("this one is again", [this] { QApplication::setActiveWindow(window_); });
}

} // namespace netmend::testing
