#pragma once

#include <QColor>
#include <QFont>

namespace netmend {

enum class PictureTheme { light, dark, highContrast };

/// The colours of window, map and sheet, each with one job (docs/design-notes.md): the accent is what is due
/// or has the keys, odd is vermilion, calm is steel, and green is the good board's mode alone. Text keeps a
/// contrast of at least 4.5 to 1 against whatever it stands on, outlines and marks one of 3 to 1 (WCAG 2.1,
/// success criteria 1.4.3 and 1.4.11).
struct FaceColors {
  QColor ground;  ///< the bench
  QColor card;    ///< what lies on it
  QColor field;   ///< what can be typed into
  QColor shade;   ///< pressed, or done with
  QColor line;    ///< separates and says nothing
  QColor outline; ///< of fields, lists and buttons
  QColor ink;
  QColor quiet;      ///< text of less weight
  QColor accent;     ///< what is due, or has the keys
  QColor onAccent;   ///< text on it
  QColor accentTint; ///< under the row that is due
  QColor calm;       ///< in range: it asks for nothing
  QColor calmTint;   ///< ranges of good boards
  QColor odd;        ///< open, low, high, short: as text and outline
  QColor oddFill;    ///< the same in marks, round which is ink
  QColor oddTint;    ///< under an odd pin
  QColor job;        ///< band of the job's board, and the station that one is at
  QColor onJob;
  QColor good; ///< band of the good board
  QColor onGood;
  QColor goodStripe; ///< beside `good` in its band
  QColor goodGround; ///< the bench while a good board is walked
  QColor board;      ///< substrate
  QColor boardEdge;
  QColor pad;
  QColor padQuiet; ///< beside a lit net all else steps back
  QColor copper;
  QColor body;    ///< outlines of parts
  QColor zone;    ///< hatch
  QColor zoneInk; ///< outline of a zone
  QColor plate;   ///< under labels
  QColor net;     ///< the line that is worked on
  int hair = 1;   ///< width of an outline, pixels at 100 %
  int edge = 2;   ///< of what has the keys
};

[[nodiscard]] const FaceColors& faceColors(PictureTheme theme);

/// Sizes and distances in pixels at 100 %; `faceZoom` says how many times as large they are in a window.
namespace face {

inline constexpr double smallLetters = 14; ///< captions, key caps, names on the map
inline constexpr double textLetters = 18;  ///< what is read at the station
inline constexpr double midLetters = 24;   ///< nets, places, names of things: from a metre
inline constexpr double footLetters = 28;  ///< the due thing, in words
inline constexpr double largeLetters = 32; ///< verdicts, states, counts
inline constexpr double dueLetters = 56;   ///< the due point and its value, nothing else: from two metres
inline constexpr int grid = 8;
inline constexpr int margin = 24;
inline constexpr int control = 36;
inline constexpr int bar = 48; ///< the way, a band
inline constexpr int foot = 64;
inline constexpr int round = 4; ///< of corners

} // namespace face

/// By how much all sizes grow with the window: its part of 1280 × 800, down to a whole eighth, 1 to 2.
[[nodiscard]] double faceZoom(int width, int height);

/// B612, drawn for instruments: its digits have one width, and 0 and O, 1 and l, 8 and B are told apart.
/// Where it is not installed, DejaVu Sans, and else what the application uses.
[[nodiscard]] QString faceFamily();
[[nodiscard]] QFont faceFont(double pixels);

} // namespace netmend
