#include "line_meter.h"

#include <algorithm>
#include <vector>

namespace netmend {

namespace {

SerialSettings settingsFor(const SerialAddress& address, const LinePattern& pattern) {
  return {address.baud != 0 ? address.baud : pattern.baud, pattern.dataBits, pattern.stopBits, pattern.parity,
          pattern.raisesDtr};
}

} // namespace

LineMeter::LineMeter(const SerialAddress& address, LinePattern pattern, MeterFunction wanted,
                     const MeterTimes& times, MeterSinks sinks)
    : pattern_(std::move(pattern)),
      link_(address, settingsFor(address, pattern_), times,
            {[this] { begin(); }, [this](std::string_view bytes) { takeBytes(bytes); },
             [this](const Said& why) {
               silence_.stop();
               sinks_.status({LinkState::lost, why});
             }}),
      times_(times), sinks_(std::move(sinks)), wanted_(wanted) {
  silence_.setSingleShot(true);
  QObject::connect(&silence_, &QTimer::timeout, &silence_, [this] {
    // The port stays open: a meter that was switched off goes on when it is back.
    framer_ = LineFramer(LineFramer::Begin::anywhere);
    sinks_.status({LinkState::lost, said(netmend::pattern("core", "nothing comes from {}"), link_.name())});
  });
}

void LineMeter::start() {
  sinks_.status({LinkState::connecting, link_.name()});
  link_.open();
}

void LineMeter::stop() {
  silence_.stop();
  link_.close();
}

void LineMeter::begin() {
  framer_ = LineFramer(LineFramer::Begin::anywhere);
  clock_ = {};
  link_.proven();
  silence_.start(times_.silence);
  sinks_.status({LinkState::connecting, said(netmend::pattern("core", "{} is listened to"), link_.name())});
}

void LineMeter::takeBytes(std::string_view bytes) {
  const auto now = meterNow();
  std::vector<Result<LineReading>> readings;
  for (const auto& line : framer_.add(bytes))
    readings.push_back(line ? parseMeterLine(pattern_, *line) : failure(line.error()));
  const auto values = static_cast<std::size_t>(std::count_if(
      readings.begin(), readings.end(), [](const auto& reading) { return reading.has_value(); }));
  const auto times = clock_.arrived(now, values);
  auto time = times.begin();
  for (const auto& reading : readings) {
    if (!link_.isOpen()) return; // whoever heard of the line before has closed it
    takeLine(reading, reading ? *time++ : SampleClock::Moment{});
  }
}

void LineMeter::takeLine(const Result<LineReading>& reading, SampleClock::Moment sent) {
  silence_.start(times_.silence);
  if (!reading) {
    sinks_.status({LinkState::rubbish, reading.error().said()});
    return;
  }
  if (const auto why = mismatch(*reading, wanted_)) {
    sinks_.status({LinkState::wrongFunction, *why});
    return;
  }
  sinks_.status({LinkState::ready, asItIs(pattern_.name)});
  using std::chrono::milliseconds;
  sinks_.value({std::chrono::round<milliseconds>(sent), reading->reading,
                std::chrono::floor<milliseconds>(clock_.cadence()), milliseconds{}});
}

} // namespace netmend
