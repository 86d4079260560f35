#pragma once

#include <functional>

#include <QAbstractButton>
#include <QAbstractScrollArea>
#include <QDialogButtonBox>
#include <QFileDialog>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPointer>
#include <QPushButton>

#include "bench_rig.h"
#include "said.h"

namespace netmend::testing {

/// A person at the window: by mouse wherever something can be clicked, or by keyboard alone.
class Hands {
public:
  enum class By { mouse, keyboard };
  Hands(BenchRig& rig, By by) : rig_(rig), by_(by) {}
  [[nodiscard]] bool mouse() const { return by_ == By::mouse; }

  void goTo(Station station) {
    const int number = static_cast<int>(station) + 1;
    if (mouse())
      click(*rig_.window->findChild<QWidget*>(QStringLiteral("station%1").arg(number)));
    else
      rig_.press(static_cast<Qt::Key>(Qt::Key_0 + number), Qt::ControlModifier);
    REQUIRE(rig_.window->station() == station);
  }

  /// What is done by this button, or by this key.
  void command(const char* button, Qt::Key key, Qt::KeyboardModifiers modifiers = {}) {
    if (mouse())
      click(visible<QAbstractButton>(button));
    else
      rig_.press(key, modifiers);
  }

  /// Puts the keyboard there: by a click, or by as many tabs as it takes.
  void reach(QWidget& widget) {
    if (mouse()) {
      click(widget);
    } else {
      for (int tabs = 0; QApplication::focusWidget() != &widget && tabs < mostTabs; ++tabs)
        rig_.press(Qt::Key_Tab);
    }
    INFO(widget.objectName().toStdString() << " " << widget.accessibleName().toStdString());
    REQUIRE(QApplication::focusWidget() == &widget);
  }

  void fill(const char* field, const QString& text) {
    reach(visible<QWidget>(field));
    rig_.type(text);
  }

  /// The row with these words, and what happens when it is chosen.
  void choose(QListWidget& list, const QString& words) {
    const auto rows = list.findItems(words, Qt::MatchStartsWith);
    REQUIRE(rows.size() == 1);
    if (mouse()) {
      const QPoint at = list.visualItemRect(rows.front()).center();
      QTest::mouseClick(list.viewport(), Qt::LeftButton, {}, at);
      QTest::mouseDClick(list.viewport(), Qt::LeftButton, {}, at);
      return;
    }
    reach(list);
    rig_.press(Qt::Key_Home);
    while (list.currentItem() != rows.front() && list.currentRow() + 1 < list.count())
      rig_.press(Qt::Key_Down);
    rig_.press(Qt::Key_Return);
  }

  /// Names the file in the dialog that was asked for.
  void nameFile(const QString& file) {
    QFileDialog* dialog = nullptr;
    REQUIRE(BenchRig::wait([&] {
      for (auto* each : rig_.window->findChildren<QFileDialog*>())
        if (each->isVisible()) dialog = each;
      return dialog != nullptr && dialog->isActiveWindow();
    }));
    auto* name = dialog->findChild<QLineEdit*>(QStringLiteral("fileNameEdit"));
    REQUIRE(name != nullptr);
    if (mouse()) click(*name);
    REQUIRE(QApplication::focusWidget() == name);
    if (name->selectedText() != name->text()) rig_.press(Qt::Key_A, Qt::ControlModifier);
    rig_.type(file);
    if (mouse())
      click(accepting(*dialog));
    else
      rig_.press(Qt::Key_Return);
    REQUIRE(
        BenchRig::wait([dialog = QPointer(dialog)] { return dialog == nullptr || !dialog->isVisible(); }));
    // As a desktop does when a dialog is gone.
    QApplication::setActiveWindow(rig_.window.get());
  }

  /// A visible one of the window, by its object name, or in English by what it is called for who does not see
  /// it, its text, or that of the label beside it.
  template <class Widget> Widget& visible(const char* name) const {
    const QString wanted = said(name);
    for (Widget* widget : rig_.window->template findChildren<Widget*>()) {
      if (!widget->isVisible()) continue;
      if (widget->objectName() == QLatin1String(name) || widget->accessibleName() == wanted) return *widget;
      if (const auto* button = qobject_cast<const QAbstractButton*>(widget))
        if (button->text().startsWith(wanted)) return *widget;
    }
    for (const QLabel* label : rig_.window->template findChildren<QLabel*>())
      if (label->isVisible() && label->text().remove(QLatin1Char('&')) == wanted)
        if (auto* widget = qobject_cast<Widget*>(label->buddy())) return *widget;
    INFO(name << " at station " << static_cast<int>(rig_.window->station()) + 1);
    REQUIRE(false);
    std::abort();
  }

private:
  static constexpr int mostTabs = 60;

  static QWidget& accepting(const QFileDialog& dialog) {
    const auto* box = dialog.findChild<QDialogButtonBox*>();
    auto* button = box->button(dialog.acceptMode() == QFileDialog::AcceptSave ? QDialogButtonBox::Save
                                                                              : QDialogButtonBox::Open);
    REQUIRE(button != nullptr);
    return *button;
  }
  static void click(QWidget& widget) {
    auto* area = qobject_cast<QAbstractScrollArea*>(&widget);
    QTest::mouseClick(area != nullptr ? area->viewport() : &widget, Qt::LeftButton);
  }

  BenchRig& rig_;
  By by_;
};

} // namespace netmend::testing
