#include "simulation/circuit.h"

#include <algorithm>
#include <cmath>

#include <Eigen/Dense>

namespace netmend::simulation {

namespace {

constexpr double boltzmannPerCharge = 8.617333262e-5; ///< V/K (CODATA 2018, exact by the SI of 2019)
constexpr double zeroCelsius = 273.15;
constexpr double nominal = 25.0;
constexpr double xti = 3.0;

struct Linear {
  Eigen::VectorXd gradient;
  Eigen::MatrixXd slope;
  double content = 0.0;
};

void stampConductance(Linear& out, std::size_t a, std::size_t b, double siemens, double amperes) {
  const auto i = static_cast<Eigen::Index>(a), j = static_cast<Eigen::Index>(b);
  out.gradient[i] += amperes;
  out.gradient[j] -= amperes;
  out.slope(i, i) += siemens;
  out.slope(j, j) += siemens;
  out.slope(i, j) -= siemens;
  out.slope(j, i) -= siemens;
}

struct MeterFlow {
  double amperes, slope, content;
};

MeterFlow flowOf(const Source& meter, double volts) {
  const double knee = meter.openVolts - meter.testCurrent * meter.outputOhms;
  if (volts <= knee) return {meter.testCurrent, 0.0, meter.testCurrent * volts};
  const double over = (volts - knee) * meter.openVolts - 0.5 * (volts * volts - knee * knee);
  return {(meter.openVolts - volts) / meter.outputOhms, 1.0 / meter.outputOhms,
          meter.testCurrent * knee + over / meter.outputOhms};
}

class Solve {
public:
  Solve(const Circuit& circuit, const Source& meter, std::size_t red, std::size_t black)
      : circuit_(circuit), meter_(meter), red_(red), black_(black), volts_(circuit.nodes, 0.0) {}

  std::vector<double> run() {
    for (int round = 0; round < 400; ++round) {
      const Linear at = stamp(volts_, true);
      const Eigen::VectorXd step = at.slope.ldlt().solve(-at.gradient);
      const double fall = at.gradient.dot(step);
      if (step.lpNorm<Eigen::Infinity>() < 1e-9) {
        take(step, 1.0);
        break;
      }
      double share = std::min(1.0, 0.5 / step.lpNorm<Eigen::Infinity>());
      const auto before = volts_;
      while (share > 1e-12) {
        take(step, share);
        // What rounding leaves of a content of some milliwatts.
        if (stamp(volts_, false).content <= at.content + 1e-4 * share * fall + 1e-18) break;
        volts_ = before;
        share *= 0.5;
      }
      if (share <= 1e-12) break;
    }
    return volts_;
  }

private:
  void take(const Eigen::VectorXd& step, double share) {
    for (std::size_t i = 0; i < volts_.size(); ++i)
      volts_[i] += share * step[static_cast<Eigen::Index>(i)];
    volts_[black_] = 0.0;
  }

  Linear stamp(const std::vector<double>& v, bool slopes) const {
    const auto n = static_cast<Eigen::Index>(v.size());
    Linear out{Eigen::VectorXd::Zero(n), slopes ? Eigen::MatrixXd::Zero(n, n) : Eigen::MatrixXd(), 0.0};
    const auto flow = [&](std::size_t a, std::size_t b, double siemens, double amperes, double content) {
      out.content += content;
      if (slopes) stampConductance(out, a, b, siemens, amperes);
    };
    const auto resistor = [&](std::size_t a, std::size_t b, double ohms, double emf) {
      const double across = v[a] - v[b] - emf;
      flow(a, b, 1.0 / ohms, across / ohms, 0.5 * across * across / ohms);
    };
    for (const auto& r : circuit_.resistors)
      if (r.a != r.b) resistor(r.a, r.b, r.ohms, 0.0);
    for (const auto& c : circuit_.cells)
      if (c.a != c.b) resistor(c.a, c.b, c.ohms, c.volts);
    for (std::size_t node = 1; node < v.size(); ++node)
      resistor(node, 0, nodeLeakOhms, 0.0);
    for (const auto& d : circuit_.diodes) {
      if (d.anode == d.cathode) continue;
      const JunctionFlow f = flowThrough(d.law, v[d.anode] - v[d.cathode]);
      flow(d.anode, d.cathode, f.slope, f.amperes, f.content);
    }
    resistor(red_, black_, meter_.inputOhms, 0.0);
    const MeterFlow m = flowOf(meter_, v[red_] - v[black_]);
    flow(red_, black_, m.slope, -m.amperes, -m.content);
    if (slopes) {
      const auto b = static_cast<Eigen::Index>(black_);
      out.slope.row(b).setZero();
      out.slope.col(b).setZero();
      out.slope(b, b) = 1.0;
      out.gradient[b] = 0.0;
    }
    return out;
  }

  const Circuit& circuit_;
  const Source& meter_;
  std::size_t red_, black_;
  std::vector<double> volts_;
};

} // namespace

JunctionLaw lawAt(const Junction& junction, double celsius) {
  const double reference = boltzmannPerCharge * (nominal + zeroCelsius);
  const double ratio = (celsius + zeroCelsius) / (nominal + zeroCelsius);
  const double thermal = reference * ratio;
  const double inner = junction.drop - 1e-3 * junction.series;
  const double saturation = 1e-3 / std::expm1(inner / (junction.emission * reference));
  const double factor = std::exp((ratio - 1.0) * junction.gap / (junction.emission * thermal) +
                                 xti / junction.emission * std::log(ratio));
  return {saturation * factor, junction.emission * thermal, junction.series};
}

JunctionFlow flowThrough(const JunctionLaw& law, double volts) {
  // The inner voltage u of u + Rs·I(u) = V; from the right the convex left side is met without overshoot.
  double u = volts;
  if (volts > 0.0 && law.series > 0.0)
    u = std::min(volts, law.slope * std::log1p(volts / (law.series * law.saturation)));
  for (int round = 0; round < 60; ++round) {
    const double e = law.saturation * std::exp(u / law.slope);
    const double off = u + law.series * (e - law.saturation) - volts;
    const double step = off / (1.0 + law.series * e / law.slope);
    u -= step;
    if (std::abs(step) < 1e-14) break;
  }
  const double e = law.saturation * std::exp(u / law.slope);
  const double amperes = e - law.saturation;
  const double inner = e / law.slope;
  return {amperes, inner / (1.0 + law.series * inner),
          law.slope * amperes - law.saturation * u + 0.5 * law.series * amperes * amperes};
}

std::vector<double> operatingPoint(const Circuit& circuit, const Source& meter, std::size_t red,
                                   std::size_t black) {
  return Solve(circuit, meter, red, black).run();
}

double meterCurrent(const Source& meter, double volts) {
  return flowOf(meter, volts).amperes;
}

} // namespace netmend::simulation
