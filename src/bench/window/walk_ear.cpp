#include "walk_ear.h"

#include <array>

#include <QLocale>

#include "netmend/drawing/shown.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/words/verdict.h"

namespace netmend {

namespace {

/// Units are signs for the eye; a voice is given words.
QString spokenValue(const Reading& reading) {
  if (!reading.value) return WalkEar::tr("over limit");
  const std::array<std::pair<const char*, QString>, 7> units{{{"mV", WalkEar::tr("%1 millivolts")},
                                                              {"V", WalkEar::tr("%1 volts")},
                                                              {"mΩ", WalkEar::tr("%1 milliohms")},
                                                              {"Ω", WalkEar::tr("%1 ohms")},
                                                              {"kΩ", WalkEar::tr("%1 kiloohms")},
                                                              {"MΩ", WalkEar::tr("%1 megaohms")},
                                                              {"°C", WalkEar::tr("%1 degrees")}}};
  QString text = QString::fromStdString(readingText(reading.value, reading.mode));
  const QString number = text.section(QLatin1Char(' '), 0, 0);
  const QString unit = text.section(QLatin1Char(' '), 1);
  const QString digits = QString(number).replace(QLatin1Char('.'), QLocale().decimalPoint());
  for (const auto& [sign, words] : units)
    if (unit == QString::fromUtf8(sign)) return words.arg(digits);
  return text;
}

/// `9` of `J4.9`: which connector it is does not change from pin to pin.
QString spokenPin(const std::string& label) {
  const QString text = QString::fromStdString(label);
  const auto dot = text.indexOf(QLatin1Char('.'));
  return dot < 0 ? text : WalkEar::tr("pin %1").arg(text.mid(dot + 1));
}

} // namespace

WalkEar::WalkEar(BenchWalk& walk, Sounds& sounds) : walk_(walk), sounds_(sounds) {
  connect(&walk, &BenchWalk::changed, this, &WalkEar::follow);
  connect(&walk, &BenchWalk::taken, this, &WalkEar::taken);
}

void WalkEar::listen(bool listening) {
  if (listening_ == listening) return;
  listening_ = listening;
  told_.reset();
  follow();
}

void WalkEar::taken() {
  sounds_.play(isFlag(walk_.lastVerdict()->kind) ? Tone::odd : Tone::inRange);
  if (listening_) reading_ = readingWords();
  follow();
}

void WalkEar::follow() {
  if (telling_ || !listening_) return;
  // A reading and what is due after it come one after the other: they are one sentence.
  telling_ = true;
  QMetaObject::invokeMethod(this, &WalkEar::tell, Qt::QueuedConnection);
}

void WalkEar::tell() {
  telling_ = false;
  const auto due = walk_.due();
  const auto now = std::pair(walk_.good(), due ? due->label : std::string());
  QStringList words{std::exchange(reading_, {})};
  const auto before = std::exchange(told_, now);
  if (before != now) words << dueWords(before && before->first == now.first ? Board::known : Board::named);
  words.removeAll(QString());
  if (!words.isEmpty()) sounds_.say(words.join(QLatin1Char(' ')));
}

Result<void> WalkEar::repeat() {
  QStringList words{readingWords(), dueWords(Board::named)};
  words.removeAll(QString());
  return sounds_.sayOnce(words.join(QLatin1Char(' ')));
}

QString WalkEar::readingWords() const {
  const auto verdict = walk_.lastVerdict();
  if (!verdict || walk_.walk().readings.empty()) return {};
  const Reading& reading = walk_.walk().readings.back();
  const QString said =
      tr("%1, %2, %3.")
          .arg(spokenPin(reading.point.label), spokenValue(reading), shown(nameOf(verdict->kind)));
  return walk_.shift() ? said + QLatin1Char(' ') + walk_.shiftWords() + QLatin1Char('.') : said;
}

QString WalkEar::dueWords(Board board) const {
  if (walk_.walk().points.empty()) return {};
  if (const auto due = walk_.due()) {
    const QString pin = spokenPin(due->label);
    return board == Board::known ? tr("Next: %1.").arg(pin)
           : walk_.good()        ? tr("Good board, %1.").arg(pin)
                                 : tr("Job's board, %1.").arg(pin);
  }
  if (walk_.good()) return tr("Good board walked. Take keeps it.");
  return tr("Walked, %n odd.", nullptr, static_cast<int>(walk_.oddOnes().size()));
}

} // namespace netmend
