#include "netmend/bench/meter/linked_meter_source.h"

#include <fmt/format.h>

#include "line_meter.h"
#include "scpi_meter.h"

namespace netmend {

namespace {

/// What the meter showed longer ago is not what it shows now.
constexpr std::chrono::milliseconds freshness{1500};

std::chrono::milliseconds now() {
  return std::chrono::duration_cast<std::chrono::milliseconds>(
      std::chrono::steady_clock::now().time_since_epoch());
}

} // namespace

LinkedMeterSource::LinkedMeterSource(ReadingMode mode) : mode_(mode), detector_(settleRulesFor(mode)) {}

LinkedMeterSource::~LinkedMeterSource() = default;

Result<std::unique_ptr<LinkedMeterSource>> LinkedMeterSource::make(const MeterAddress& address,
                                                                   ReadingMode mode,
                                                                   const std::vector<LinePattern>& patterns,
                                                                   const MeterTimes& times) {
  std::unique_ptr<LinkedMeterSource> source(new LinkedMeterSource(mode));
  auto* self = source.get();
  MeterSinks sinks{[self](const MeterValue& reading) { self->takeIn(reading); },
                   [self](const LinkStatus& status) { self->takeStatus(status); }};
  const auto* serial = std::get_if<SerialAddress>(&address);
  if (serial == nullptr || serial->pattern.empty()) {
    source->meter_ = std::make_unique<ScpiMeter>(address, functionFor(mode), times, std::move(sinks));
    return source;
  }
  const auto* pattern = findLinePattern(patterns, serial->pattern);
  if (pattern == nullptr) {
    std::string known;
    for (const auto& one : patterns)
      known += (known.empty() ? "" : ", ") + one.id;
    return failure({"no such line pattern", "", "", serial->pattern, known});
  }
  source->meter_ = std::make_unique<LineMeter>(*serial, *pattern, functionFor(mode), times, std::move(sinks));
  return source;
}

void LinkedMeterSource::start() {
  stopped_ = false;
  std::visit([](const auto& meter) { meter->start(); }, meter_);
}

void LinkedMeterSource::stop() {
  std::visit([](const auto& meter) { meter->stop(); }, meter_);
  stopped_ = true;
  takeStatus({LinkState::lost, "the link was closed"});
}

std::optional<Result<ReadingEvent>> LinkedMeterSource::next() {
  if (events_.empty()) return std::nullopt;
  Result<ReadingEvent> event = std::move(events_.front());
  events_.pop_front();
  return event;
}

bool LinkedMeterSource::ended() const {
  return stopped_ && events_.empty();
}

void LinkedMeterSource::setMode(ReadingMode mode) {
  mode_ = mode;
  setRules(settleRulesFor(mode));
  setFunctionAgain();
}

void LinkedMeterSource::setFunctionAgain() {
  lastValue_.reset();
  std::visit([this](const auto& meter) { meter->setFunction(functionFor(mode_)); }, meter_);
}

void LinkedMeterSource::setRules(const SettleRules& rules) {
  detector_.setRules(rules);
}

Result<void> LinkedMeterSource::takeNow() {
  if (status_.state != LinkState::ready) return failure({"no value can be taken: " + status_.text});
  if (!lastValue_ || now() - *lastValue_ > freshness)
    return failure({"no value has come from the meter yet"});
  const auto taken = detector_.take();
  if (!taken) return failure({"no value has come from the meter yet"});
  give(*taken);
  return {};
}

void LinkedMeterSource::skip() {
  queue(PointSkipped{});
}

void LinkedMeterSource::back() {
  queue(StepBack{});
}

void LinkedMeterSource::undo() {
  queue(UndoLast{});
}

void LinkedMeterSource::takeIn(const MeterValue& reading) {
  lastValue_ = now();
  const auto taken = detector_.add({*lastValue_, reading});
  if (live_) live_({reading, mode_, detector_.phase()});
  if (taken && autoTake_) give(*taken);
}

void LinkedMeterSource::takeStatus(const LinkStatus& status) {
  if (status.state != LinkState::ready) {
    detector_.interrupt();
    lastValue_.reset();
  }
  if (status == status_) return;
  status_ = status;
  if (statusHandler_) statusHandler_(status_);
}

void LinkedMeterSource::give(const SettleDetector::Taken& taken) {
  ValueTaken value;
  value.value = taken.reading.value;
  value.mode = mode_;
  value.settling = taken.settling;
  queue(value);
}

void LinkedMeterSource::queue(ReadingEvent event) {
  events_.push_back(std::move(event));
  announce();
}

} // namespace netmend
