#include "netmend/meter/linked_meter_source.h"

#include "line_meter.h"
#include "own_thread.h"
#include "scpi_meter.h"

namespace netmend {

namespace {

/// What the meter showed longer ago is not what it shows now.
constexpr std::chrono::milliseconds freshness{1500};

} // namespace

LinkedMeterSource::LinkedMeterSource(ReadingMode mode)
    : thread_(std::make_unique<OwnThread>()), mode_(mode), detector_(settleRulesFor(mode)) {}

LinkedMeterSource::~LinkedMeterSource() {
  thread_->call([this] { meter_ = {}; });
}

Result<std::unique_ptr<LinkedMeterSource>> LinkedMeterSource::make(const MeterAddress& address,
                                                                   ReadingMode mode,
                                                                   const std::vector<LinePattern>& patterns,
                                                                   const MeterTimes& times) {
  std::unique_ptr<LinkedMeterSource> source(new LinkedMeterSource(mode));
  auto* self = source.get();
  // Called in the meter's thread.
  MeterSinks sinks{[self](const MeterSample& sample) {
                     self->thread_->hand(
                         [self, sample, epoch = self->meterEpoch_] { self->takeIn(sample, epoch); });
                   },
                   [self](const LinkStatus& status) {
                     self->thread_->hand([self, status] { self->takeStatus(status); });
                   }};
  const auto* serial = std::get_if<SerialAddress>(&address);
  if (serial == nullptr || serial->pattern.empty()) {
    source->thread_->call([&] {
      self->meter_ = std::make_unique<ScpiMeter>(address, functionFor(mode), times, std::move(sinks));
    });
    return source;
  }
  const auto* pattern = findLinePattern(patterns, serial->pattern);
  if (pattern == nullptr) {
    std::string known;
    for (const auto& one : patterns)
      known += (known.empty() ? "" : ", ") + one.id;
    return failure({netmend::pattern("core", "no such line pattern"), "", "", serial->pattern, known});
  }
  source->thread_->call([&] {
    self->meter_ = std::make_unique<LineMeter>(*serial, *pattern, functionFor(mode), times, std::move(sinks));
  });
  return source;
}

void LinkedMeterSource::start() {
  stopped_ = false;
  thread_->call([this] { std::visit([](const auto& meter) { meter->start(); }, meter_); });
}

void LinkedMeterSource::stop() {
  thread_->call([this] { std::visit([](const auto& meter) { meter->stop(); }, meter_); });
  thread_->forgetHanded();
  stopped_ = true;
  takeStatus({LinkState::lost, netmend::pattern("core", "the link was closed")});
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
  ++epoch_;
  thread_->call([this] {
    meterEpoch_ = epoch_;
    std::visit([this](const auto& meter) { meter->setFunction(functionFor(mode_)); }, meter_);
  });
}

void LinkedMeterSource::setRules(const SettleRules& rules) {
  detector_.setRules(rules);
}

Result<void> LinkedMeterSource::takeNow() {
  if (status_.state != LinkState::ready)
    return failure({said(netmend::pattern("core", "no value can be taken: {}"), status_.text)});
  if (!lastValue_ || meterNow() - *lastValue_ > freshness)
    return failure({netmend::pattern("core", "no value has come from the meter yet")});
  const auto taken = detector_.take();
  if (!taken) return failure({netmend::pattern("core", "no value has come from the meter yet")});
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

void LinkedMeterSource::takeIn(const MeterSample& sample, int epoch) {
  if (epoch != epoch_) return;
  lastValue_ = sample.time;
  const auto taken = detector_.add(sample);
  if (live_) live_({sample.reading, mode_, detector_.phase(), detector_.settledShare()});
  if (detector_.takeMissed() && autoTake_ && missed_) missed_();
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
  value.again = taken.again;
  queue(value);
}

void LinkedMeterSource::queue(ReadingEvent event) {
  events_.push_back(std::move(event));
  announce();
}

} // namespace netmend
