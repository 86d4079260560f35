#include "strip_scale.h"

#include <algorithm>
#include <cmath>

namespace netmend {

namespace {

std::vector<double> valuesOf(const PinStrip& strip) {
  std::vector<double> out;
  const auto add = [&](double v) {
    if (std::isfinite(v)) out.push_back(v);
  };
  for (const StripPin& pin : strip.pins) {
    for (const StripInterval& interval : pin.expected) {
      add(interval.low);
      add(interval.high);
    }
    for (const auto* reading : {&pin.reading, &pin.after})
      if (*reading && (*reading)->value) add(*(*reading)->value);
  }
  return out;
}

bool byDecades(ReadingMode mode) {
  return mode == ReadingMode::ohms || mode == ReadingMode::milliohms || mode == ReadingMode::continuity;
}

QString unitOf(ReadingMode mode) {
  if (mode == ReadingMode::temperature) return QStringLiteral("°C");
  return byDecades(mode) ? QStringLiteral("Ω") : QStringLiteral("V");
}

QString ohmText(double ohms) {
  if (ohms >= 0.9e6) return QStringLiteral("%1 MΩ").arg(ohms / 1e6, 0, 'g', 6);
  if (ohms >= 0.9e3) return QStringLiteral("%1 kΩ").arg(ohms / 1e3, 0, 'g', 6);
  if (ohms >= 0.9) return QStringLiteral("%1 Ω").arg(ohms, 0, 'g', 6);
  return QStringLiteral("%1 mΩ").arg(ohms * 1e3, 0, 'g', 6);
}

StripScale decadeScale(const std::vector<double>& values) {
  double least = 1e300;
  double most = 0;
  for (const double v : values) {
    if (v > 0) least = std::min(least, v);
    most = std::max(most, v);
  }
  if (most <= 0) {
    least = 1;
    most = 10;
  }
  // Zero has no place among decades: it stands at the bottom. Nothing below a micro-ohm is read.
  least = std::max(least, 1e-6);
  StripScale scale;
  scale.decades = true;
  const double first = std::floor(std::log10(least));
  const double last = std::max(first + 1, std::ceil(std::log10(std::max(most, least))));
  scale.low = std::pow(10.0, first);
  scale.high = std::pow(10.0, last);
  const double step = std::max(1.0, std::ceil((last - first) / 6));
  for (double e = first; e <= last + 0.5; e += step) {
    const double v = std::pow(10.0, e);
    scale.ticks.push_back({v, ohmText(v)});
  }
  return scale;
}

StripScale evenScale(const std::vector<double>& values, const QString& unit) {
  double low = 0;
  double high = 0;
  for (const double v : values) {
    low = std::min(low, v);
    high = std::max(high, v);
  }
  if (high - low < 1e-9) high = low + 1;
  const double rough = (high - low) / 5;
  const double power = std::pow(10.0, std::floor(std::log10(rough)));
  double step = 10 * power;
  for (const double f : {5.0, 2.0, 1.0})
    if (f * power >= rough * 0.999) step = f * power;
  StripScale scale;
  scale.low = std::floor(low / step + 1e-9) * step;
  scale.high = std::ceil(high / step - 1e-9) * step;
  const int count = static_cast<int>(std::lround((scale.high - scale.low) / step));
  for (int i = 0; i <= count; ++i) {
    const double v = scale.low + i * step;
    const double shown = std::abs(v) < step * 1e-6 ? 0.0 : v;
    scale.ticks.push_back({shown, QStringLiteral("%1 %2").arg(shown, 0, 'g', 6).arg(unit)});
  }
  return scale;
}

} // namespace

double StripScale::share(double value) const {
  double share = 0;
  if (!decades)
    share = (value - low) / (high - low);
  else if (value > 0)
    share = std::log(value / low) / std::log(high / low);
  return std::isnan(share) ? 0.0 : std::clamp(share, 0.0, 1.0);
}

StripScale stripScale(const PinStrip& strip) {
  const std::vector<double> values = valuesOf(strip);
  return byDecades(strip.mode) ? decadeScale(values) : evenScale(values, unitOf(strip.mode));
}

} // namespace netmend
