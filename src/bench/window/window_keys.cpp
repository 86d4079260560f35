// Keys of the whole window.
#include <QAction>
#include <QApplication>
#include <QDragEnterEvent>
#include <QLineEdit>
#include <QMimeData>
#include <QMouseEvent>
#include <QPlainTextEdit>
#include <QSettings>

#include "bench/stations/board_page.h"
#include "bench/stations/book_in_page.h"
#include "bench/stations/draw_view.h"
#include "bench/stations/walk_page.h"
#include "bench/widgets/letters.h"
#include "bench/widgets/reading_field.h"
#include "bench_window.h"
#include "sounds.h"
#include "still_camera.h"

namespace netmend {

namespace {

constexpr int smallestScale = 100;
constexpr int largestScale = 300;
constexpr int scaleStep = 25;

/// A field, or where a longer text is drawn.
bool isText(const QObject* object) {
  return qobject_cast<const QLineEdit*>(object) != nullptr ||
         qobject_cast<const QPlainTextEdit*>(object->parent()) != nullptr;
}

} // namespace

void BenchWindow::addKeys() {
  // Of a standard key all that the desktop knows it by.
  const auto add = [this](const QString& text, const QList<QKeySequence>& keys, auto act) {
    auto* action = new QAction(text, this);
    action->setShortcuts(keys);
    action->setShortcutContext(Qt::WindowShortcut);
    connect(action, &QAction::triggered, this, act);
    addAction(action);
  };
  for (std::size_t i = 0; i < stations.size(); ++i)
    add(stationName(stations[i]),
        {QKeySequence(static_cast<int>(Qt::CTRL) | (Qt::Key_1 + static_cast<int>(i)))},
        [this, i] { go(stations[i]); });
  add(tr("New job"), {QKeySequence(newJobKey)}, [this] {
    go(Station::bookIn);
    static_cast<BookInPage&>(page(station_)).newJob();
  });
  add(tr("Undo"), QKeySequence::keyBindings(QKeySequence::Undo), [this] { undo(); });
  add(tr("Redo"), QKeySequence::keyBindings(QKeySequence::Redo), [this] {
    if (const auto redone = job_->redo(); !redone) tell(shown(redone.error()), true);
  });
  add(tr("Search all jobs"), {QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_F)}, [this] {
    go(Station::bookIn);
    static_cast<BookInPage&>(page(station_)).search();
  });
  add(tr("Find on the map"), QKeySequence::keyBindings(QKeySequence::Find), [this] {
    if (station_ == Station::bookIn) {
      static_cast<BookInPage&>(page(station_)).search();
      return;
    }
    if (station_ == Station::board && static_cast<BoardPage&>(page(station_)).filter()) return;
    if (!hasPlaces()) return;
    putFirst(true);
    search_->show();
    search_->raise();
    search_->setFocus();
    search_->selectAll();
  });
  add(tr("Keyboard to the map"), {QKeySequence(Qt::CTRL | Qt::Key_B)}, [this] { putFirst(true); });
  add(tr("Keyboard back to the station"), {QKeySequence(Qt::CTRL | Qt::Key_E)}, [this] { putFirst(false); });
  add(tr("Draw the board, or leave drawing"), {QKeySequence(drawKey)}, [this] { draw(); });
  add(tr("Paste a photo or a list of nets"), QKeySequence::keyBindings(QKeySequence::Paste), [this] {
    if (station_ != Station::board) return;
    auto& board = static_cast<BoardPage&>(page(station_));
    board.setDrawing(true);
    if (board.drawing()) board.drawView().paste();
  });
  add(tr("Link a meter"), {QKeySequence(Qt::CTRL | Qt::Key_M)}, [this] { askMeter(); });
  add(tr("Light, dark, high contrast"), {QKeySequence(Qt::CTRL | Qt::Key_T)}, [this] {
    setTheme(static_cast<PictureTheme>((static_cast<int>(theme_) + 1) % 3));
    QSettings().setValue(QStringLiteral("window/theme"), static_cast<int>(theme_));
  });
  add(tr("Larger"), QKeySequence::keyBindings(QKeySequence::ZoomIn), [this] {
    setScale(QSettings().value(QStringLiteral("window/scale"), smallestScale).toInt() + scaleStep);
  });
  add(tr("Smaller"), QKeySequence::keyBindings(QKeySequence::ZoomOut), [this] {
    setScale(QSettings().value(QStringLiteral("window/scale"), smallestScale).toInt() - scaleStep);
  });
  add(tr("Tones on or off"), {QKeySequence(Qt::CTRL | Qt::Key_D)}, [this] {
    if (const auto set = sounds_->setTones(!sounds_->tones()); !set) {
      tell(shown(set.error()), true);
      return;
    }
    QSettings().setValue(QStringLiteral("sound/tones"), sounds_->tones());
    tell(sounds_->tones() ? tr("Tones on") : tr("Tones off"), false);
  });
  add(tr("Speech on or off"), {QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_D)}, [this] {
    if (const auto set = sounds_->setSpeech(!sounds_->speech()); !set) {
      tell(shown(set.error()), true);
      return;
    }
    QSettings().setValue(QStringLiteral("sound/speech"), sounds_->speech());
    tell(sounds_->speech() ? tr("Speech on") : tr("Speech off"), false);
  });
  add(tr("Footswitch: which pedal does what"), {QKeySequence(Qt::Key_F9)}, [this] { askPedals(); });
  add(tr("Picture of the microscope's camera into the job"), {QKeySequence(Qt::Key_F8)},
      [this] { camera_->take(); });
  add(tr("Which camera"), {QKeySequence(Qt::SHIFT | Qt::Key_F8)}, [this] { askCamera(); });
  add(tr("Why: reasons and figures, on or off"), {QKeySequence(whyKey)}, [this] { setWhy(!why_); });
  add(tr("All keys"), {QKeySequence(Qt::Key_F1)}, [this] { showKeys(); });
  qApp->installEventFilter(this);
}

void BenchWindow::setScale(int percent) {
  percent = std::clamp(percent, smallestScale, largestScale);
  letters_ = percent;
  followSize();
  shareRoom();
  QSettings().setValue(QStringLiteral("window/scale"), percent);
  tell(tr("Letters at %1 %").arg(percent), false);
}

bool BenchWindow::typedForBoard(const QKeyEvent& event) {
  // Without a board its connector is asked for at every station: so it can be typed at every one.
  const bool prints = !event.text().isEmpty() && event.text().front().isPrint() &&
                      (event.modifiers() & ~(Qt::ShiftModifier | Qt::KeypadModifier)) == Qt::NoModifier;
  if (!prints || job_->board() != nullptr || job_->openingBoard() || station_ == Station::board) return false;
  go(Station::board);
  QKeyEvent typed(event.type(), event.key(), event.modifiers(), event.text());
  if (QWidget* field = QApplication::focusWidget()) QApplication::sendEvent(field, &typed);
  return true;
}

void BenchWindow::keyPressEvent(QKeyEvent* event) {
  if (!typedForBoard(*event)) QMainWindow::keyPressEvent(event);
}

bool BenchWindow::eventFilter(QObject* watched, QEvent* event) {
  // A key after an error: it has been seen. Only its first receiver counts: parents get a key that was left
  // over, and with it what was just told.
  if (event->type() == QEvent::KeyPress && watched == QApplication::focusWidget() &&
      message_->text().startsWith(QStringLiteral("⚠")))
    tell({}, false);
  if (footPressed(watched, event)) return true;
  // A reading is one of a board.
  if (event->type() == QEvent::KeyPress && dynamic_cast<ReadingField*>(watched) != nullptr &&
      typedForBoard(*static_cast<QKeyEvent*>(event)))
    return true;
  // A key or pedal held down is one touch, not many pins; letters of a text go on.
  if (const auto* key = static_cast<QKeyEvent*>(event);
      event->type() == QEvent::KeyPress && key->isAutoRepeat()) {
    const auto* field = qobject_cast<QLineEdit*>(watched);
    const bool prints = !key->text().isEmpty() && key->text().front().isPrint();
    if ((prints || key->key() == Qt::Key_Return) &&
        (qobject_cast<StationPage*>(watched) != nullptr || (field != nullptr && field->text().isEmpty())))
      return true;
  }
  // A file that is dropped on a text is no text: it goes on to whose page that is, as from anywhere else.
  if (event->type() == QEvent::DragEnter && isText(watched)) {
    auto* drag = static_cast<QDragEnterEvent*>(event);
    const QList<QUrl> urls = drag->mimeData()->urls();
    if (!urls.isEmpty() && urls.first().isLocalFile()) {
      drag->ignore();
      return true;
    }
  }
  if (event->type() == QEvent::MouseButtonPress && station_ == Station::walk && isActiveWindow() &&
      watched->isWidgetType()) {
    const auto* mouse = static_cast<QMouseEvent*>(event);
    if (mouse->button() == Qt::BackButton || mouse->button() == Qt::ForwardButton) {
      page(station_).take(mouse->button() == Qt::BackButton ? ReadingEvent(StepBack{})
                                                            : ReadingEvent(PointSkipped{}));
      return true;
    }
    if (mouse->button() == Qt::MiddleButton && watched != map_) {
      takeNow();
      return true;
    }
  }
  return QMainWindow::eventFilter(watched, event);
}

} // namespace netmend
