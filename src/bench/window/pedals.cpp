#include "pedals.h"

#include <QKeyEvent>
#include <QKeySequence>
#include <QMouseEvent>
#include <QSettings>

#include "bench/session/window_text.h"

namespace netmend {

namespace {

QString settingOf(FootAct act) {
  constexpr std::array names{"foot/take", "foot/skip", "foot/back"};
  return QString::fromLatin1(names.at(static_cast<std::size_t>(act)));
}

/// Digits, point and comma, and what ends or mends a value.
bool typesReadings(const FootPress& press) {
  const QKeyCombination keys = QKeyCombination::fromCombined(press.key);
  if ((keys.keyboardModifiers() & ~Qt::KeypadModifier) != Qt::NoModifier) return false;
  const int key = keys.key();
  return (key >= Qt::Key_0 && key <= Qt::Key_9) || key == Qt::Key_Period || key == Qt::Key_Comma ||
         key == Qt::Key_Return || key == Qt::Key_Enter || key == Qt::Key_Backspace || key == Qt::Key_Escape ||
         key == Qt::Key_Tab;
}

} // namespace

QString nameOf(FootAct act) {
  switch (act) {
  case FootAct::take:
    return tr("take the value");
  case FootAct::skip:
    return tr("skip the point");
  case FootAct::back:
    return tr("back to the point before");
  }
  return {};
}

QString nameOf(const FootPress& press) {
  switch (press.button) {
  case Qt::NoButton:
    return press.key != 0 ? QKeySequence(press.key).toString(QKeySequence::NativeText) : QString();
  case Qt::RightButton:
    return tr("right mouse button");
  case Qt::MiddleButton:
    return tr("middle mouse button");
  default:
    break;
  }
  int number = 0;
  for (auto bit = static_cast<unsigned>(press.button); bit != 0; bit >>= 1)
    ++number;
  return tr("mouse button %1").arg(number);
}

FootPress pressOf(const QEvent& event) {
  switch (event.type()) {
  case QEvent::KeyPress:
  case QEvent::ShortcutOverride: {
    const auto& key = static_cast<const QKeyEvent&>(event);
    for (const int modifier : std::initializer_list<int>{Qt::Key_Shift, Qt::Key_Control, Qt::Key_Alt,
                                                         Qt::Key_AltGr, Qt::Key_Meta, 0})
      if (key.key() == modifier) return {};
    return {key.keyCombination().toCombined() & ~static_cast<int>(Qt::KeypadModifier), Qt::NoButton};
  }
  case QEvent::MouseButtonPress:
  case QEvent::MouseButtonDblClick:
    return {0, static_cast<const QMouseEvent&>(event).button()};
  default:
    return {};
  }
}

bool prints(const FootPress& press) {
  const QKeyCombination keys = QKeyCombination::fromCombined(press.key);
  return press.key != 0 && keys.key() < Qt::Key_Escape &&
         (keys.keyboardModifiers() & ~Qt::ShiftModifier) == Qt::NoModifier;
}

Pedals::Pedals() {
  const QSettings settings;
  for (const FootAct act : footActs) {
    const QString kept = settings.value(settingOf(act)).toString();
    FootPress& press = presses_.at(static_cast<std::size_t>(act));
    if (kept.startsWith(QStringLiteral("mouse:")))
      press.button = static_cast<Qt::MouseButton>(kept.mid(6).toInt());
    else if (const QKeySequence keys(kept, QKeySequence::PortableText); !keys.isEmpty())
      press.key = keys[0].toCombined();
  }
}

std::optional<FootAct> Pedals::actOf(const FootPress& press) const {
  if (press.any())
    for (const FootAct act : footActs)
      if (of(act) == press) return act;
  return std::nullopt;
}

Result<void> Pedals::assign(FootAct act, const FootPress& press) {
  if (press.button == Qt::LeftButton || typesReadings(press))
    return failure({pattern("core", "readings are typed with this key, or the window is used with it")});
  const auto put = [this](FootAct which, const FootPress& now) {
    presses_.at(static_cast<std::size_t>(which)) = now;
    const QString kept = now.button != Qt::NoButton
                             ? QStringLiteral("mouse:%1").arg(static_cast<int>(now.button))
                             : QKeySequence(now.key).toString(QKeySequence::PortableText);
    QSettings().setValue(settingOf(which), kept);
  };
  if (const auto had = actOf(press)) put(*had, {});
  put(act, press);
  return {};
}

} // namespace netmend
