#include "scpi_meter.h"

#include <algorithm>

#include <fmt/format.h>

namespace netmend {

namespace {

/// A queue longer than this does not empty: the meter is not well.
constexpr int mostErrors = 30;

/// So many times say how long something takes: few enough to follow a meter that is set anew.
constexpr std::size_t timesKept = 16;

/// How often a meter at the wrong function is asked whether it still is.
constexpr std::chrono::milliseconds askFunctionAgain{150};

SerialSettings serialSettings(const MeterAddress& address) {
  SerialSettings settings;
  if (const auto* serial = std::get_if<SerialAddress>(&address); serial != nullptr && serial->baud != 0)
    settings.baud = serial->baud;
  return settings;
}

} // namespace

std::chrono::milliseconds LeastOfLast::add(std::chrono::milliseconds time) {
  times_.push_back(time);
  if (times_.size() > timesKept) times_.pop_front();
  return *std::min_element(times_.begin(), times_.end());
}

ScpiMeter::ScpiMeter(const MeterAddress& address, MeterFunction wanted, const MeterTimes& times,
                     MeterSinks sinks)
    : link_(address, serialSettings(address), times,
            {[this] { begin(); }, [this](std::string_view bytes) { takeBytes(bytes); },
             [this](const Said& why) { lost(why); }}),
      times_(times), sinks_(std::move(sinks)), wanted_(wanted) {
  answer_.setSingleShot(true);
  pace_.setSingleShot(true);
  QObject::connect(&answer_, &QTimer::timeout, &answer_, [this] { takeTimeout(); });
  QObject::connect(&pace_, &QTimer::timeout, &pace_, [this] { configureNext_ ? configure() : startRound(); });
}

void ScpiMeter::start() {
  sinks_.status({LinkState::connecting, link_.name()});
  link_.open();
}

void ScpiMeter::stop() {
  answer_.stop();
  pace_.stop();
  reader_ = nullptr;
  link_.close();
}

void ScpiMeter::setFunction(MeterFunction wanted) {
  wanted_ = wanted;
  configureNext_ = true;
}

void ScpiMeter::begin() {
  framer_ = LineFramer(LineFramer::Begin::atLine);
  sinks_.status(
      {LinkState::connecting, said(netmend::pattern("core", "{} is asked who it is"), link_.name())});
  // Whatever an earlier talk has left half said ends here.
  link_.send("\n*CLS\n");
  ask("*IDN?", &ScpiMeter::readIdentity);
}

void ScpiMeter::ask(std::string_view question, Reader reader) {
  reader_ = reader;
  link_.send(fmt::format("{}\n", question));
  asked_ = meterNow();
  answer_.start(times_.answer);
}

void ScpiMeter::takeBytes(std::string_view bytes) {
  for (const auto& line : framer_.add(bytes)) {
    if (!link_.isOpen()) return; // whoever heard of the line before has closed it
    takeLine(line);
  }
}

void ScpiMeter::takeLine(const Result<std::string>& line) {
  if (!line) return rubbish(line.error().said());
  if (reader_ == nullptr)
    return rubbish(said(netmend::pattern("core", "\"{}\", which nobody asked for"), printable(*line)));
  const Reader reader = reader_;
  if (!(this->*reader)(*line)) rubbish(asItIs(fmt::format("\"{}\"", printable(*line))));
}

void ScpiMeter::rubbish(const Said& what) {
  round_.doubtful = true;
  if (reader_ == &ScpiMeter::readSameIdentity) return; // that there is some is known by then
  sinks_.status({LinkState::rubbish,
                 said(netmend::pattern("core", "no answer but {} came from {}"), what, link_.name())});
}

void ScpiMeter::lost(const Said& why) {
  answer_.stop();
  pace_.stop();
  reader_ = nullptr;
  sinks_.status({LinkState::lost, why});
}

void ScpiMeter::takeTimeout() {
  if (reader_ == &ScpiMeter::readIdentity || reader_ == &ScpiMeter::readSameIdentity) {
    link_.giveUp(netmend::pattern("core", "no answer"));
    return;
  }
  // Meters know one of the two ways to ask for the function, or both.
  if (reader_ == &ScpiMeter::readFunction) asksConf_ = !asksConf_;
  sinks_.status({LinkState::lost, said(netmend::pattern("core", "{} does not answer"), name_)});
  // Late answers may still come; the identity tells where they end.
  ask("*IDN?", &ScpiMeter::readSameIdentity);
}

bool ScpiMeter::readIdentity(std::string_view line) {
  const auto name = parseScpiIdentity(line);
  if (!name) return false;
  identity_ = line;
  lastValue_.reset();
  name_ = name->empty() ? link_.name() : *name;
  link_.proven();
  configure();
  return true;
}

bool ScpiMeter::readSameIdentity(std::string_view line) {
  if (line != identity_) return false;
  configure();
  return true;
}

void ScpiMeter::configure() {
  configureNext_ = false;
  refusal_.clear();
  round_ = {};
  link_.send(fmt::format("{}\n", scpiCommandFor(wanted_)));
  ask("SYST:ERR?", &ScpiMeter::readConfigureError);
}

bool ScpiMeter::readConfigureError(std::string_view line) {
  const auto entry = parseScpiErrorEntry(line);
  if (!entry) return false;
  if (entry->code != 0 && ++round_.errors < mostErrors) {
    if (refusal_.empty()) refusal_ = fmt::format("{} {}", entry->code, entry->text);
    ask("SYST:ERR?", &ScpiMeter::readConfigureError);
    return true;
  }
  // Not READ? yet: it may take long, and which function the meter is at is to be told at once.
  round_ = {};
  ask(asksConf_ ? "CONF?" : "FUNC?", &ScpiMeter::readFunction);
  return true;
}

void ScpiMeter::startRound() {
  const bool wrong = round_.function && *round_.function != wanted_;
  round_ = {};
  if (wrong)
    ask(asksConf_ ? "CONF?" : "FUNC?", &ScpiMeter::readFunction);
  else
    ask("READ?", &ScpiMeter::readValue);
}

bool ScpiMeter::readValue(std::string_view line) {
  const auto value = parseScpiValue(line);
  if (!value) return false;
  round_.value = *value;
  round_.sample = sampleOf(value->reading);
  ask(asksConf_ ? "CONF?" : "FUNC?", &ScpiMeter::readFunction);
  return true;
}

MeterSample ScpiMeter::sampleOf(const MeterValue& reading) {
  MeterSample sample;
  sample.time = meterNow();
  sample.reading = reading;
  sample.span = measuring_.add(sample.time - asked_);
  // While a question is out it is the meter that takes its time, as when it changes its range.
  if (lastValue_) sample.unseen = asked_ - *lastValue_ - pause_.add(asked_ - *lastValue_);
  lastValue_ = sample.time;
  return sample;
}

bool ScpiMeter::readFunction(std::string_view line) {
  const auto function = parseScpiFunction(line);
  if (!function) return false;
  round_.function = *function;
  if (*function != wanted_ && !configureNext_) sinks_.status(wrongFunction());
  ask("SYST:ERR?", &ScpiMeter::readRoundError);
  return true;
}

bool ScpiMeter::readRoundError(std::string_view line) {
  const auto entry = parseScpiErrorEntry(line);
  if (!entry) return false;
  if (entry->code != 0) {
    if (round_.error.empty()) round_.error = fmt::format("{} {}", entry->code, entry->text);
    if (++round_.errors < mostErrors) {
      ask("SYST:ERR?", &ScpiMeter::readRoundError);
      return true;
    }
  }
  endRound();
  return true;
}

void ScpiMeter::endRound() {
  answer_.stop();
  reader_ = nullptr;
  const bool right = round_.function == wanted_;
  pace_.start(right || configureNext_ ? times_.pace : askFunctionAgain);
  if (configureNext_ || !right) return;
  if (!round_.error.empty()) {
    sinks_.status(
        {LinkState::meterError, said(netmend::pattern("core", "{} reports {}"), name_, round_.error)});
  } else if (round_.value && round_.value->notANumber) {
    sinks_.status(
        {LinkState::meterError, said(netmend::pattern("core", "{} has no value (not a number)"), name_)});
  } else if (!round_.doubtful) {
    sinks_.status({LinkState::ready, asItIs(name_)});
    if (round_.value) sinks_.value(round_.sample);
  }
}

LinkStatus ScpiMeter::wrongFunction() const {
  const Said text = said(netmend::pattern("core", "{} is at {}, {} is wanted"), name_,
                         nameOf(*round_.function), nameOf(wanted_));
  if (refusal_.empty()) return {LinkState::wrongFunction, text};
  return {LinkState::wrongFunction,
          said(netmend::pattern("core", "{}; it refused {}: {}"), text, scpiCommandFor(wanted_), refusal_)};
}

} // namespace netmend
