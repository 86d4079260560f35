#include "netmend/probing/meter_model.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include <boost/math/special_functions/lambert_w.hpp>

namespace netmend {

namespace {

constexpr double nominalKelvin = 300.15;

double kelvin(Celsius t) {
  return t.value + 273.15;
}

/// x = a·e^x/… : solves w + ln w = lnz for large arguments, where e^lnz would overflow. Newton from above.
double lambertOfLog(double lnz) {
  if (lnz < 700.0) return boost::math::lambert_w0(std::exp(lnz));
  double w = lnz - std::log(lnz);
  for (int i = 0; i < 8; ++i)
    w -= (w + std::log(w) - lnz) * w / (w + 1.0);
  return w;
}

} // namespace

Volts thermalVoltage(Celsius temperature) {
  return Volts(boltzmannOverCharge * kelvin(temperature));
}

std::optional<MeterSource> meterSource(const MeterProfile& meter, ReadingMode readingMode) {
  const auto* mode = meter.mode(readingMode);
  const bool feeds = readingMode == ReadingMode::diode || readingMode == ReadingMode::diodeReverse ||
                     readingMode == ReadingMode::ohms || readingMode == ReadingMode::continuity;
  if (mode == nullptr || !feeds || !mode->testCurrent || !mode->compliance) return std::nullopt;
  MeterSource source;
  source.testCurrent = *mode->testCurrent;
  source.openCircuit = *mode->compliance;
  source.inputResistance = meter.inputResistance;
  source.leadResistance = meter.leadResistance;
  const bool diode = readingMode == ReadingMode::diode || readingMode == ReadingMode::diodeReverse;
  source.displayLimit = diode ? Volts(mode->displayLimit()) : *mode->compliance;
  const Volts headroom = *mode->compliance - source.displayLimit;
  source.outputResistance =
      headroom.value > 0.0 ? headroom / source.testCurrent : *mode->compliance / source.testCurrent;
  return source;
}

Amperes sourceCurrent(const MeterSource& source, Volts voltage) {
  const Amperes limited = (source.openCircuit - voltage) / source.outputResistance;
  return std::min(source.testCurrent, limited) - voltage / source.inputResistance;
}

double sourceSlope(const MeterSource& source, Volts voltage) {
  const Amperes limited = (source.openCircuit - voltage) / source.outputResistance;
  const double own = -1.0 / source.inputResistance.value;
  return limited < source.testCurrent ? own - 1.0 / source.outputResistance.value : own;
}

Amperes saturationCurrent(const Junction& junction, Celsius temperature) {
  const double ratio = kelvin(temperature) / nominalKelvin;
  const double vt = thermalVoltage(temperature).value;
  const double n = junction.ideality;
  return junction.saturation *
         std::exp(junction.xti / n * std::log(ratio) + junction.bandGap.value / (n * vt) * (ratio - 1.0));
}

CurrentAndSlope junctionCurrent(const Junction& junction, Volts voltage, Celsius temperature) {
  const double nvt = junction.ideality * thermalVoltage(temperature).value;
  const double is = saturationCurrent(junction, temperature).value;
  const double rs = junction.series.value;
  if (rs <= 0.0) {
    // Beyond any real current the exponential goes on as its tangent, so that a solver meets no infinity.
    const double x = std::min(voltage.value / nvt, 300.0);
    const double e = std::exp(x);
    const double slope = is * e / nvt;
    return {Amperes(is * (e - 1.0) + slope * (voltage.value - x * nvt)), slope};
  }
  // I = (nVt/Rs)·W(Is·Rs/nVt · exp((V + Is·Rs)/nVt)) − Is (Banwell and Jayakumar, Electronics Letters 36,
  // 2000)
  const double lnz = std::log(is * rs / nvt) + (voltage.value + is * rs) / nvt;
  const double w = lambertOfLog(lnz);
  return {Amperes(nvt / rs * w - is), w / (rs * (1.0 + w))};
}

double junctionTemperatureSlope(Volts drop, Celsius temperature, Volts bandGap, double xti) {
  return (drop.value - bandGap.value - xti * thermalVoltage(temperature).value) / kelvin(temperature);
}

} // namespace netmend
