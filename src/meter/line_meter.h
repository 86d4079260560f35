#pragma once

#include <string>
#include <string_view>

#include <QTimer>

#include "line_framer.h"
#include "meter_link.h"
#include "netmend/meter/line_pattern.h"
#include "sample_clock.h"
#include "scpi_meter.h"

namespace netmend {

/// A serial meter that sends lines by itself. Its knob cannot be turned from here: at another function than
/// the one wanted, that is told and nothing handed on.
class LineMeter {
public:
  LineMeter(const SerialAddress& address, LinePattern pattern, MeterFunction wanted, const MeterTimes& times,
            MeterSinks sinks);

  void start();
  void stop();
  void setFunction(MeterFunction wanted) { wanted_ = wanted; }

private:
  void begin();
  void takeBytes(std::string_view bytes);
  void takeLine(const Result<LineReading>& reading, SampleClock::Moment sent);

  LinePattern pattern_;
  MeterLink link_;
  MeterTimes times_;
  MeterSinks sinks_;
  LineFramer framer_{LineFramer::Begin::anywhere};
  SampleClock clock_;
  QTimer silence_;
  MeterFunction wanted_;
};

} // namespace netmend
