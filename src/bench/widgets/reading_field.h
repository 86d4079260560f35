#pragma once

#include <functional>
#include <optional>

#include <QLineEdit>

#include "letters.h"

class QPushButton;

namespace netmend {

/// The field that has the keyboard while somebody probes. Digits are a reading; as long as it is empty,
/// single keys are commands: a shortcut would take them from what is typed. Undo and redo are then the
/// station's, too: a text field would keep them to itself.
class ReadingField : public QLineEdit {
public:
  /// `hint` is what it says while it is empty, `name` is for tests.
  ReadingField(const QString& hint, Growth growth, const QString& name, QWidget* parent);

  /// Asked for each key while the field is empty; says whether the key was meant for it.
  std::function<bool(int key, Qt::KeyboardModifiers modifiers)> onKey;
  /// A button that says its key and does the same.
  [[nodiscard]] QPushButton* keyButton(const QString& text, Qt::Key key,
                                       Qt::KeyboardModifiers modifiers = Qt::NoModifier);

  /// What a linked meter shows: it stands in the field, without a frame, until something is typed.
  void setLive(const std::optional<QString>& value);
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override { return sizeHint(); }

protected:
  void paintEvent(QPaintEvent* event) override;
  bool event(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

private:
  /// `OL` typed out, and with Enter: O alone is the command, what comes after it says nothing more.
  bool restOfOverLimit(int key);
  std::optional<QString> live_;
  int typedOut_ = 0; ///< the last key of `OL` so far
};

} // namespace netmend
