#include "line_meter.h"

#include <fmt/format.h>

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
             [this](const std::string& why) {
               silence_.stop();
               sinks_.status({LinkState::lost, why});
             }}),
      times_(times), sinks_(std::move(sinks)), wanted_(wanted) {
  silence_.setSingleShot(true);
  QObject::connect(&silence_, &QTimer::timeout, &silence_, [this] {
    // The port stays open: a meter that was switched off goes on when it is back.
    framer_ = LineFramer(LineFramer::Begin::anywhere);
    sinks_.status({LinkState::lost, fmt::format("nothing comes from {}", link_.name())});
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
  link_.proven();
  silence_.start(times_.silence);
  sinks_.status({LinkState::connecting, fmt::format("{} is listened to", link_.name())});
}

void LineMeter::takeBytes(std::string_view bytes) {
  for (const auto& line : framer_.add(bytes)) {
    if (!link_.isOpen()) return; // whoever heard of the line before has closed it
    takeLine(line);
  }
}

void LineMeter::takeLine(const Result<std::string>& line) {
  silence_.start(times_.silence);
  const auto reading = line ? parseMeterLine(pattern_, *line) : failure(line.error());
  if (!reading) {
    sinks_.status({LinkState::rubbish, reading.error().text()});
    return;
  }
  if (const auto why = mismatch(*reading, wanted_)) {
    sinks_.status({LinkState::wrongFunction, *why});
    return;
  }
  sinks_.status({LinkState::ready, pattern_.name});
  sinks_.value(reading->reading);
}

} // namespace netmend
