#pragma once

#include <initializer_list>

#include <QFont>
#include <QFrame>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QString>

class QPainter;

namespace netmend {

/// Sizes of letters (`netmend/drawing/face.h`): `small` and `reading` are read at the desk, `metre` and
/// `large` from a metre away, `foot` says what is due, `point` is the one thing that must not be misread.
enum class Letters { small, reading, metre, foot, large, point };
/// Pixels at 100 %.
[[nodiscard]] double pixelsOf(Letters letters);
[[nodiscard]] QFont lettersFont(Letters letters, bool bold = false);

/// How many times the sizes of `netmend/drawing/face.h` everything is: the window's zoom times the person's
/// own letters. Set before there are widgets it costs nothing; afterwards `followScale` is to be called.
void setFaceScale(double scale);
[[nodiscard]] double faceScale();
/// So many pixels at 100 %, at today's scale.
[[nodiscard]] int scaled(double pixels);

/// Gives the widget these letters, for good: `followScale` keeps them in proportion.
void setLetters(QWidget& widget, Letters letters, bool bold = false);
/// The first of these letters in which the label's text, wrapped, fits its width and this height; else the
/// last. For labels that give way.
void fitLetters(QLabel& label, int height, std::initializer_list<Letters> letters, bool bold = false);
/// The widget's height, for good, in pixels at 100 %.
void setScaledHeight(QWidget& widget, double pixels);
/// To be called for a window when the scale is another one.
void followScale(QWidget& window);

/// Pixels between a field's outline and what is typed into it.
[[nodiscard]] int fieldPadding();

/// Keeps the field wide enough for its placeholder, at every scale; where it must not take all the room there
/// is, no wider than half as much again.
enum class Growth { none, free };
void keepRoomForHint(QLineEdit& field, Growth growth);

/// Plain text in these letters, wrapped; `name` is for tests and screen readers.
[[nodiscard]] QLabel* makeLabel(Letters letters, const QString& name, QWidget* parent = nullptr);
/// Words over a figure, small and quiet, on one line.
[[nodiscard]] QLabel* makeCaption(const QString& text, QWidget* parent = nullptr);
/// What a text is about: less weight, or something odd.
void setQuiet(QLabel& label);
void setOdd(QLabel& label, bool odd);

/// What lies on the bench: a ground of its own with an outline that says nothing.
[[nodiscard]] QFrame* makeCard(QWidget* parent = nullptr);
/// A hairline between two parts of a card.
[[nodiscard]] QFrame* makeRule(Qt::Orientation lies, QWidget* parent = nullptr);

/// A key as a key cap, with the painter's pen.
[[nodiscard]] QSize keyCapSize(const QString& key);
void paintKeyCap(QPainter& painter, const QRect& cap, const QString& key, const QBrush& fill);

/// For a button's `event`: it acts in the moment its key is pressed. By itself a button shows that it goes
/// down first, a tenth of a second in which somebody fast already types what belongs to the place that the
/// key leads to.
[[nodiscard]] bool clickedAtOnce(QPushButton& button, QEvent& event);

/// A button with its key beside its words. The shortcut works anywhere in the parent's window page.
[[nodiscard]] QPushButton* makeButton(const QString& text, const QKeySequence& key, QWidget* parent);
/// The same where something else acts on the key.
[[nodiscard]] QPushButton* makePrompt(const QString& text, const QKeySequence& key, QWidget* parent);
/// Its key alone, where there is no room for words; and what it takes with them.
void setCompact(QPushButton& button, bool compact);
[[nodiscard]] int widthWithWords(const QPushButton& button);
/// The one that goes on: filled with the accent.
void setMain(QPushButton& button, bool isMain = true);
[[nodiscard]] bool isMain(const QPushButton& button);
/// It can be pressed, but something else comes first: its outline is dashed.
void setLater(QPushButton& button);

} // namespace netmend
