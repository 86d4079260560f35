#pragma once

#include <QFont>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QString>

namespace netmend {

/// Sizes of letters, relative to the application's font, so that they follow its scale: `reading` is read at
/// the desk, `metre` from a metre away, `point` is the one thing that must not be misread from there
/// (docs/design-notes.md).
enum class Letters { small, reading, metre, point };
[[nodiscard]] QFont lettersFont(Letters letters, bool bold = false);

/// Gives the widget these letters, for good: `followScale` keeps them in proportion.
void setLetters(QWidget& widget, Letters letters, bool bold = false);
/// To be called for a window when the application's font has changed its size.
void followScale(QWidget& window);

/// Keeps the field wide enough for its placeholder, at every scale; where it must not take all the room there
/// is, no wider than half as much again.
enum class Growth { none, free };
void keepRoomForHint(QLineEdit& field, Growth growth);

/// Plain text in these letters, wrapped; `name` is for tests and screen readers.
[[nodiscard]] QLabel* makeLabel(Letters letters, const QString& name, QWidget* parent = nullptr);

/// A button with its key beside its words. The shortcut works anywhere in the parent's window page.
[[nodiscard]] QPushButton* makeButton(const QString& text, const QKeySequence& key, QWidget* parent);
/// The same where something else acts on the key.
[[nodiscard]] QPushButton* makePrompt(const QString& text, const QKeySequence& key, QWidget* parent);

} // namespace netmend
