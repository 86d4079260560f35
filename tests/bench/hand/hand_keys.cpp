// Keys without a purpose, and what else happens at a bench.
#include "hand.h"

#include <array>

#include <QClipboard>
#include <QGuiApplication>
#include <QImage>
#include <QKeyEvent>
#include <QLocale>
#include <QMimeData>

#include "bench/language/language.h"

namespace netmend::testing {

namespace {

using Texts = std::vector<QString>;

} // namespace

void Hand::plainKey() {
  if (chance(0.5)) {
    const auto letter = static_cast<char16_t>(u'a' + dice(26));
    return type(QString(QChar(letter)));
  }
  key(oneOf(std::array{Qt::Key_Escape, Qt::Key_Return, Qt::Key_Enter, Qt::Key_Space, Qt::Key_Backspace,
                       Qt::Key_Delete, Qt::Key_Insert, Qt::Key_Menu, Qt::Key_F1, Qt::Key_F2, Qt::Key_F3,
                       Qt::Key_F5, Qt::Key_F10, Qt::Key_CapsLock, Qt::Key_Alt}),
      chance(0.1) ? Qt::ShiftModifier : Qt::NoModifier);
}

void Hand::stationKey() {
  key(oneOf(std::array{Qt::Key_O,      Qt::Key_S,        Qt::Key_B,      Qt::Key_U,      Qt::Key_G,
                       Qt::Key_K,      Qt::Key_I,        Qt::Key_C,      Qt::Key_R,      Qt::Key_M,
                       Qt::Key_N,      Qt::Key_A,        Qt::Key_W,      Qt::Key_F,      Qt::Key_X,
                       Qt::Key_1,      Qt::Key_2,        Qt::Key_Space,  Qt::Key_Return, Qt::Key_Down,
                       Qt::Key_Up,     Qt::Key_Left,     Qt::Key_Right,  Qt::Key_Home,   Qt::Key_End,
                       Qt::Key_PageUp, Qt::Key_PageDown, Qt::Key_Delete, Qt::Key_Plus,   Qt::Key_Minus}));
}

void Hand::windowKey() {
  struct Chord {
    Qt::Key key;
    Qt::KeyboardModifiers with;
  };
  const std::array chords{Chord{Qt::Key_F, Qt::ControlModifier},
                          Chord{Qt::Key_F, Qt::ControlModifier | Qt::ShiftModifier},
                          Chord{Qt::Key_B, Qt::ControlModifier},
                          Chord{Qt::Key_E, Qt::ControlModifier},
                          Chord{Qt::Key_T, Qt::ControlModifier},
                          Chord{Qt::Key_L, Qt::ControlModifier},
                          Chord{Qt::Key_M, Qt::ControlModifier},
                          Chord{Qt::Key_N, Qt::ControlModifier},
                          Chord{Qt::Key_H, Qt::ControlModifier},
                          Chord{Qt::Key_Plus, Qt::ControlModifier},
                          Chord{Qt::Key_Minus, Qt::ControlModifier},
                          Chord{Qt::Key_D, Qt::ControlModifier},
                          Chord{Qt::Key_N, Qt::ShiftModifier},
                          Chord{Qt::Key_F1, Qt::NoModifier},
                          Chord{Qt::Key_F2, Qt::NoModifier},
                          Chord{Qt::Key_F4, Qt::NoModifier},
                          Chord{static_cast<Qt::Key>(Qt::Key_A + dice(26)), Qt::AltModifier}};
  const Chord chord = oneOf(chords);
  key(chord.key, chord.with);
}

void Hand::tab() {
  for (int i = 1 + dice(4); i > 0; --i)
    key(chance(0.8) ? Qt::Key_Tab : Qt::Key_Backtab);
}

void Hand::next() {
  key(Qt::Key_Return, Qt::ControlModifier);
}

void Hand::goToStation() {
  key(Qt::Key_1 + dice(static_cast<int>(stations.size())), Qt::ControlModifier);
}

void Hand::undoOrRedo() {
  const bool redo = chance(0.45);
  for (int i = chance(0.97) ? 1 + dice(2) : 20; i > 0; --i)
    key(Qt::Key_Z, redo ? Qt::ControlModifier | Qt::ShiftModifier : Qt::ControlModifier);
}

void Hand::holdKey() {
  const auto held =
      oneOf(std::array{Qt::Key_S, Qt::Key_O, Qt::Key_B, Qt::Key_Return, Qt::Key_Down, Qt::Key_U});
  for (int i = 0; i < 6; ++i)
    event("key held", [&] {
      QKeyEvent down(QEvent::KeyPress, held, Qt::NoModifier, QString(), i > 0);
      QApplication::sendEvent(target(), &down);
    });
}

void Hand::changeLanguage() {
  const QString language = oneOf(languages());
  event("language " + language.toStdString(), [&] {
    speak(language);
    QLocale::setDefault(QLocale(language));
  });
}

void Hand::paste() {
  auto* mime = new QMimeData;
  if (chance(0.3)) {
    QImage image(64, 48, QImage::Format_RGB32);
    image.fill(Qt::darkGreen);
    mime->setImageData(image);
  } else {
    mime->setText(oneOf(Texts{QStringLiteral("J4.3 KEY"), QStringLiteral("J4.1 GND\nJ4.2 VCC\nJ4.9 KEY_COL3"),
                              QStringLiteral("0.452"), QStringLiteral(""), QStringLiteral("\t\n"),
                              QStringLiteral("Ω")}));
  }
  QGuiApplication::clipboard()->setMimeData(mime);
  key(Qt::Key_V, Qt::ControlModifier);
}

void Hand::useMeter() {
  using std::chrono::milliseconds;
  if (window_->meter() == nullptr || chance(0.05)) {
    const QString address =
        chance(0.9) ? QString::fromStdString(meter_.address()) : QStringLiteral("tcp:127.0.0.1:1");
    event("meter " + address.toStdString(), [&] { window_->linkMeter(address); });
    return settle(60);
  }
  struct Happens {
    const char* what;
    std::function<void()> now;
  };
  const std::vector<Happens> all{
      {"touch", [this] { meter_.touch(0.1 + 0.001 * dice(1900)); }},
      {"touch", [this] { meter_.touch(plausibleValue("touch").toDouble()); }},
      {"lift", [this] { meter_.lift(); }},
      {"charging", [this] { meter_.touchCharging(0.1, 0.5); }},
      {"link lost", [this] { meter_.dropLink(milliseconds(dice(200))); }},
      {"link lost", [this] { meter_.dropLink(milliseconds(dice(200))); }},
      {"rubbish", [this] { meter_.sendRubbish("\x01\xff+9.9E+\n"); }},
      {"no number", [this] { meter_.sendNaNOnce(); }},
      {"deaf", [this] { meter_.setDeaf(chance(0.5)); }},
      {"unlinked", [this] { window_->linkMeter({}); }},
  };
  const Happens now = oneOf(all);
  event(std::string("meter: ") + now.what, now.now);
  settle(30 + dice(300));
  if (chance(0.5)) key(Qt::Key_Space);
}

void Hand::wait() {
  // For what goes on beside the event loop, or for the pause after which what was typed is kept.
  settle(chance(0.8) ? dice(60) : dice(400));
}

} // namespace netmend::testing
