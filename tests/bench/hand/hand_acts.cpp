// What the hand does at which station, and how often.
#include "hand.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <QDialog>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QTest>

namespace netmend::testing {

namespace {

constexpr int shortest = 8; ///< acts of a scene
constexpr int longest = 40;
using Texts = std::vector<QString>;

} // namespace

std::vector<Hand::Deed> Hand::deeds() const {
  std::vector<Deed> out{{"what is next", 3, &Hand::next},
                        {"another station", 1, &Hand::goToStation},
                        {"undo or redo", 4, &Hand::undoOrRedo},
                        {"a key", 3, &Hand::plainKey},
                        {"a key of the stations", 8, &Hand::stationKey},
                        {"a key of the window", 2, &Hand::windowKey},
                        {"a button", 6, &Hand::pushButton},
                        {"a row", 4, &Hand::chooseRow},
                        {"a click", 5, &Hand::pointAnywhere},
                        {"the map", 3, &Hand::useMap},
                        {"the wheel", 1.5, &Hand::turnWheel},
                        {"tab", 3, &Hand::tab},
                        {"words", 1.5, &Hand::typeSomewhere},
                        {"a value anywhere", 1.5, &Hand::readAnywhere},
                        {"a drop", 0.4, &Hand::dropFile},
                        {"paste", 0.4, &Hand::paste},
                        {"resizing", 1, &Hand::resize},
                        {"language", 0.3, &Hand::changeLanguage},
                        {"another window", 0.5, &Hand::lookAway},
                        {"a key held", 0.5, &Hand::holdKey},
                        {"the meter", 2, &Hand::useMeter},
                        {"waiting", 3, &Hand::wait}};
  switch (window_->station()) {
  case Station::bookIn:
    out.push_back({"words", 8, &Hand::typeSomewhere});
    break;
  case Station::board:
    out.push_back({"a row", 8, &Hand::chooseRow});
    out.push_back({"drawing", 12, &Hand::drawSomething});
    out.push_back({"a connector", 1, &Hand::typeConnector});
    break;
  case Station::walk:
    out.push_back({"a reading", 30, &Hand::readAtPoint});
    out.push_back({"a walk", 8, &Hand::walkOn});
    break;
  case Station::find:
    out.push_back({"a reading", 25, &Hand::readAtPoint});
    break;
  case Station::bridge:
    out.push_back({"steps", 30, &Hand::workOnSteps});
    break;
  case Station::prove:
    out.push_back({"a reading", 30, &Hand::readAtPoint});
    break;
  case Station::handOver:
    out.push_back({"words", 8, &Hand::typeSomewhere});
    out.push_back({"a button", 8, &Hand::pushButton});
    out.push_back({"a charge", 8, &Hand::charge});
    out.push_back({"a drop", 8, &Hand::dropFile});
    break;
  }
  return out;
}

void Hand::act() {
  deed_ = "looking up";
  closeWhatIsOpen();
  if (--scenes_ < 0) {
    scenes_ = shortest + dice(longest - shortest);
    // In the job's order, but now and then somewhere else.
    scene_ =
        chance(0.8) ? stations[(static_cast<std::size_t>(scene_) + 1) % stations.size()] : oneOf(stations);
    deed_ = "to the scene's station";
    key(Qt::Key_1 + static_cast<int>(scene_), Qt::ControlModifier);
  } else if (window_->station() != scene_ && chance(0.1)) {
    deed_ = "back to the scene's station";
    key(Qt::Key_1 + static_cast<int>(scene_), Qt::ControlModifier);
  }
  const auto all = deeds();
  std::vector<double> often;
  for (const Deed& each : all)
    often.push_back(each.often);
  const Deed& chosen = all[std::discrete_distribution<std::size_t>(often.begin(), often.end())(random_)];
  deed_ = chosen.name;
  (this->*chosen.act)();
}

/// Files and printers are this machine's own, and their dialogs Qt's: nobody goes on typing a reading into
/// one that came up, where Enter would ask in a message for a file that is called so.
void Hand::closeMachinesOwn() {
  for (QDialog* dialog : window_->findChildren<QDialog*>()) {
    if (!dialog->isVisible()) continue;
    if (!dialog->inherits("QFileDialog") && !dialog->inherits("QAbstractPrintDialog")) continue;
    event("a dialog for files or printers is left", [dialog] {
      QApplication::setActiveWindow(dialog);
      QTest::keyClick(dialog, Qt::Key_Escape);
    });
    QApplication::setActiveWindow(window_);
  }
}

void Hand::closeWhatIsOpen() {
  if (QApplication::activePopupWidget() != nullptr && chance(0.7))
    key(oneOf(std::array{Qt::Key_Escape, Qt::Key_Return, Qt::Key_Down}));
  closeMachinesOwn();
  // Any other is typed into or looked at.
  for (QDialog* dialog : window_->findChildren<QDialog*>()) {
    if (!dialog->isVisible() || !chance(0.3)) continue;
    QApplication::setActiveWindow(dialog);
    key(Qt::Key_Escape);
  }
  if (QApplication::activeWindow() == nullptr) QApplication::setActiveWindow(window_);
}

void Hand::beginBoard(std::size_t which) {
  deed_ = "a board to work on";
  closeWhatIsOpen();
  key(Qt::Key_1, Qt::ControlModifier);
  // The next job, or another board for this one: the window asks what is meant.
  const bool fresh = chance(0.6);
  if (fresh) key(Qt::Key_N, Qt::ControlModifier);
  const auto files = static_cast<std::size_t>(kit_.boards.size());
  if (which < files) {
    drop(kit_.boards[static_cast<qsizetype>(which)]);
    // It is read beside the event loop; who is impatient goes on at once.
    const int patience = chance(0.8) ? 20'000 : 50;
    for (int waited = 0; waited < patience && window_->desk().job.openingBoard(); waited += 20)
      settle(20);
    if (!fresh) key(chance(0.7) ? Qt::Key_A : Qt::Key_X);
  } else if (which == files) {
    typeConnector();
  } else {
    key(Qt::Key_2, Qt::ControlModifier);
    key(Qt::Key_F4);
    for (int i = 0; i < 12; ++i)
      drawSomething();
    key(Qt::Key_F4);
  }
  if (fresh) scene_ = Station::board;
  scenes_ = 3;
}

/// The same for a point whenever it is read, but for what a fault makes of it.
QString Hand::plausibleValue(const std::string& point) {
  const double usual = 0.3 + 0.5 * static_cast<double>(std::hash<std::string>{}(point) % 1000) / 1000.0;
  const double noise = std::normal_distribution<double>(0.0, 0.002)(random_);
  return QString::number(std::abs(usual + noise), 'f', 3);
}

void Hand::readAtPoint() {
  const Desk desk = window_->desk();
  // Who looks where the digits go puts the keyboard there first.
  if (qobject_cast<QLineEdit*>(QApplication::focusWidget()) == nullptr && chance(0.8))
    key(Qt::Key_E, Qt::ControlModifier);
  const double odd = desk.walk.good() && window_->station() == Station::walk ? 0.01 : 0.12;
  if (chance(odd)) {
    if (chance(0.5)) return key(Qt::Key_O);
    type(oneOf(Texts{QStringLiteral("0"), QStringLiteral("0.002"), QStringLiteral("1.95"),
                     QStringLiteral("640m"), QStringLiteral("0,71")}));
    return key(Qt::Key_Return);
  }
  const auto due = desk.walk.due();
  std::string point = due ? due->label : "a point";
  if (const Expected* expected = desk.walk.expectedAtDue();
      due && expected != nullptr && expected->seen && window_->station() == Station::walk) {
    type(QString::number((expected->seen->lowest + expected->seen->highest) / 2, 'f', 3));
  } else {
    type(plausibleValue(point));
  }
  key(chance(0.95) ? Qt::Key_Return : Qt::Key_Enter);
}

/// As far as there is patience; of a good board it is kept.
void Hand::walkOn() {
  const Desk desk = window_->desk();
  for (int left = 3 + dice(12); left > 0 && desk.walk.due(); --left)
    readAtPoint();
  if (desk.walk.good() ? chance(0.6) : chance(0.1)) key(Qt::Key_K);
  if (chance(0.4)) key(Qt::Key_G);
}

/// What it was, how often, and for how much, as the fields stand.
void Hand::charge() {
  for (QLineEdit* each : visible<QLineEdit>()) {
    if (each->isReadOnly()) continue;
    press(*each, each->rect().center(), Qt::LeftButton);
    for (const QString& part :
         {oneOf(Texts{QStringLiteral("Track repair"), QStringLiteral("Cleaning")}),
          oneOf(Texts{QStringLiteral("1"), QStringLiteral("2,5"), QStringLiteral("x")}),
          oneOf(Texts{QStringLiteral("75.50"), QStringLiteral("12"), QStringLiteral("-")})}) {
      type(part);
      key(Qt::Key_Tab);
    }
    return key(Qt::Key_Return);
  }
}

void Hand::readAnywhere() {
  type(
      oneOf(Texts{QStringLiteral("452"), QStringLiteral("452m"), QStringLiteral(".45"),
                  QStringLiteral("1e99"), QStringLiteral("-3"), QStringLiteral("12k"), QStringLiteral("4.7M"),
                  QStringLiteral("0"), QStringLiteral("J4.1 0.4"), QStringLiteral("R 100"),
                  QStringLiteral("99999999"), QStringLiteral("nonsense"), QStringLiteral("OL"),
                  QStringLiteral("0.4 0.5"), QStringLiteral("ohms 12"), QStringLiteral("3.3V")}));
  key(Qt::Key_Return);
}

void Hand::workOnSteps() {
  const auto what = dice(10);
  if (what < 2) return key(Qt::Key_1 + dice(3));
  if (what < 4) return key(Qt::Key_A);
  if (what < 7) return key(Qt::Key_Space);
  if (what < 8) return key(oneOf(std::array{Qt::Key_O, Qt::Key_B, Qt::Key_W, Qt::Key_N, Qt::Key_Down}));
  type(chance(0.7) ? plausibleValue("a check") : words());
  key(Qt::Key_Return);
}

QString Hand::words() {
  return oneOf(QStringList{
      QStringLiteral("Tide logger"), QStringLiteral("TL-0417"), QStringLiteral("Förderband Süd"),
      QStringLiteral("Third column of the keypad is dead"), QStringLiteral("salt; opened before"),
      QStringLiteral("37.50"), QStringLiteral("2"), QStringLiteral("R12"), QStringLiteral("%1 %2 <b>"),
      QStringLiteral("'); --"), QStringLiteral("ΩµΩ"), QStringLiteral("keys 3, 6, 9")});
}

void Hand::typeSomewhere() {
  std::vector<QWidget*> fields;
  for (QLineEdit* each : visible<QLineEdit>())
    if (!each->isReadOnly()) fields.push_back(each);
  for (QPlainTextEdit* each : visible<QPlainTextEdit>())
    if (!each->isReadOnly()) fields.push_back(each->viewport());
  if (fields.empty()) return;
  QWidget* field = oneOf(fields);
  press(*field, field->rect().center(), Qt::LeftButton);
  if (chance(0.2)) key(Qt::Key_A, Qt::ControlModifier);
  if (chance(0.1)) key(Qt::Key_Delete);
  type(words());
  if (chance(0.4)) key(oneOf(std::array{Qt::Key_Return, Qt::Key_Tab, Qt::Key_Escape}));
}

void Hand::typeConnector() {
  key(Qt::Key_2, Qt::ControlModifier);
  // The field that shows how it is done.
  const QString example = QStringLiteral("J4, 40");
  for (QLineEdit* each : visible<QLineEdit>()) {
    if (!each->placeholderText().contains(example)) continue;
    press(*each, each->rect().center(), Qt::LeftButton);
    type(oneOf(Texts{QStringLiteral("J1 4"), QStringLiteral("J4, 40 pins, two rows"),
                     QStringLiteral("connector, 24 pins"), QStringLiteral("J7 6"), QStringLiteral("J9 120"),
                     QStringLiteral("J0 0"), QStringLiteral("J 5000"), QStringLiteral("J2 three pins")}));
    key(Qt::Key_Return);
    return;
  }
}

void Hand::drawSomething() {
  if (chance(0.1)) key(Qt::Key_F4);
  if (chance(0.35)) {
    key(Qt::Key_Return);
    type(oneOf(Texts{
        QStringLiteral("J4 14 pads 0.6x1.6"), QStringLiteral("R 100 0402 8"), QStringLiteral("U1 64 4 sides"),
        QStringLiteral("SH1 lid 1.6"), QStringLiteral("zone battery"), QStringLiteral("84 x 56"),
        QStringLiteral("C28 100n 0603"), QStringLiteral("KEY_COL3"), QStringLiteral("J2 6"),
        QStringLiteral("good 0.452"), QStringLiteral("R1 0603"), QStringLiteral("what is this")}));
    return key(Qt::Key_Return);
  }
  if (chance(0.4))
    return key(oneOf(std::array{Qt::Key_A, Qt::Key_X, Qt::Key_Space, Qt::Key_C, Qt::Key_O, Qt::Key_V,
                                Qt::Key_I, Qt::Key_N, Qt::Key_S, Qt::Key_Z, Qt::Key_G, Qt::Key_Delete,
                                Qt::Key_U, Qt::Key_H, Qt::Key_P, Qt::Key_Escape}));
  useMap();
}

} // namespace netmend::testing
