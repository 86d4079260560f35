#include "operating_point.h"

#include <algorithm>
#include <cmath>

#include <Eigen/Dense>

namespace netmend {

namespace {

/// Current out of a node, its slope, and its integral from 0 to V (the co-content) for one two-pole.
struct Element {
  double current = 0.0;
  double slope = 0.0;
  double coContent = 0.0;
};

Element loadElement(double siemens, double voltage) {
  return {siemens * voltage, siemens, 0.5 * siemens * voltage * voltage};
}

/// With u = (V − I·Rs)/(n·Vt) the integral of I over V is I²·Rs/2 + n·Vt·I − Is·n·Vt·u.
Element junctionElement(const Junction& junction, const JunctionAt& at, double voltage, Celsius temperature) {
  const auto point = junctionCurrent(junction, Volts(voltage), temperature);
  const double i = point.current.value;
  const double inner = voltage - i * at.series.value;
  return {i, point.slope, 0.5 * i * i * at.series.value + at.slope.value * i - at.saturation.value * inner};
}

/// The meter drives, hence the signs. Its current is linear on both sides of the knee, so that the trapezium
/// rule integrates it exactly.
Element meterElement(const MeterSource& meter, double voltage) {
  const auto current = [&](double v) { return -sourceCurrent(meter, Volts(v)).value; };
  const double knee = meter.openCircuit.value - meter.testCurrent.value * meter.outputResistance.value;
  const double now = current(voltage);
  const double first = current(0.0);
  double integral = 0.0;
  if (voltage <= knee || knee <= 0.0) {
    integral = 0.5 * (first + now) * voltage;
  } else {
    const double atKnee = current(knee);
    integral = 0.5 * (first + atKnee) * knee + 0.5 * (atKnee + now) * (voltage - knee);
  }
  return {now, -sourceSlope(meter, Volts(voltage)), integral};
}

struct State {
  double coContent = 0.0;
  Eigen::VectorXd current; ///< out of each node: the gradient
  Eigen::MatrixXd slope;   ///< its derivative
};

void addToNode(State& state, std::size_t node, const Element& element) {
  const auto i = static_cast<Eigen::Index>(node);
  state.coContent += element.coContent;
  state.current[i] += element.current;
  state.slope(i, i) += element.slope;
}

void addBetween(State& state, const TestNetwork::Series& series, const Eigen::VectorXd& v) {
  const auto a = static_cast<Eigen::Index>(series.a);
  const auto b = static_cast<Eigen::Index>(series.b);
  if (a == b) return;
  const double g = 1.0 / series.resistance.value;
  const double drop = v[a] - v[b];
  state.coContent += 0.5 * g * drop * drop;
  state.current[a] += g * drop;
  state.current[b] -= g * drop;
  state.slope(a, a) += g;
  state.slope(b, b) += g;
  state.slope(a, b) -= g;
  state.slope(b, a) -= g;
}

struct Problem {
  const TestNetwork& network;
  std::size_t probe;
  const MeterSource& meter;
  Celsius temperature;
  double leak;
  std::vector<JunctionAt> junctions; ///< parallel to network.clamps

  [[nodiscard]] State at(const Eigen::VectorXd& v) const {
    const auto n = v.size();
    State state{0.0, Eigen::VectorXd::Zero(n), Eigen::MatrixXd::Zero(n, n)};
    const auto voltage = [&](std::size_t node) { return v[static_cast<Eigen::Index>(node)]; };
    for (std::size_t i = 0; i < network.nodes; ++i)
      addToNode(state, i, loadElement(leak, voltage(i)));
    for (const auto& load : network.loads)
      addToNode(state, load.node, loadElement(1.0 / load.resistance.value, voltage(load.node)));
    for (std::size_t k = 0; k < network.clamps.size(); ++k) {
      const auto& clamp = network.clamps[k];
      addToNode(state, clamp.node,
                junctionElement(clamp.junction, junctions[k], voltage(clamp.node), temperature));
    }
    for (const auto& series : network.series)
      addBetween(state, series, v);
    addToNode(state, probe, meterElement(meter, voltage(probe)));
    return state;
  }
};

Eigen::VectorXd minimise(const Problem& problem, Eigen::VectorXd v) {
  State state = problem.at(v);
  for (int step = 0; step < 500; ++step) {
    const Eigen::VectorXd move = state.slope.ldlt().solve(-state.current);
    const double slope = state.current.dot(move);
    if (!(slope < 0.0) || move.lpNorm<Eigen::Infinity>() < 1e-13) break;
    double share = 1.0;
    Eigen::VectorXd next = v + move;
    State nextState = problem.at(next);
    // Near the minimum the co-content's digits run out before the gradient's do.
    const auto better = [&] {
      return nextState.coContent <= state.coContent + 1e-4 * share * slope ||
             (std::abs(share * slope) < 1e-12 * (1e-9 + std::abs(state.coContent)) &&
              nextState.current.norm() <= state.current.norm());
    };
    while (!better() && share > 1e-12) {
      share *= 0.5;
      next = v + share * move;
      nextState = problem.at(next);
    }
    if (share <= 1e-12) break;
    v = std::move(next);
    state = std::move(nextState);
  }
  return v;
}

/// Voltage with nothing but resistances; the source is linear on both sides of its knee.
double withoutJunction(const MeterSource& meter, double siemens) {
  const double g = siemens + 1.0 / meter.inputResistance.value;
  const double driven = meter.testCurrent.value / g;
  const double rout = meter.outputResistance.value;
  if (driven <= meter.openCircuit.value - meter.testCurrent.value * rout) return driven;
  return meter.openCircuit.value / (1.0 + rout * g);
}

} // namespace

std::vector<Volts> operatingPoint(const TestNetwork& network, std::size_t probe, const MeterSource& meter,
                                  Celsius temperature, Ohms leak) {
  std::vector<Volts> result(network.nodes);
  if (probe >= network.nodes) return result;
  Problem problem{network, probe, meter, temperature, 1.0 / leak.value, {}};
  for (const auto& clamp : network.clamps)
    problem.junctions.push_back(junctionAt(clamp.junction, temperature));
  const auto v = minimise(problem, Eigen::VectorXd::Constant(static_cast<Eigen::Index>(network.nodes),
                                                             0.25 * meter.openCircuit.value));
  for (std::size_t i = 0; i < network.nodes; ++i)
    result[i] = Volts(v[static_cast<Eigen::Index>(i)]);
  return result;
}

Junction scaled(const Junction& junction, double area) {
  Junction result = junction;
  result.saturation = junction.saturation * area;
  result.series = junction.series / area;
  return result;
}

JunctionAt junctionAt(const Junction& junction, Celsius temperature) {
  return {saturationCurrent(junction, temperature), thermalVoltage(temperature) * junction.ideality,
          junction.series};
}

Volts operatingPoint(const JunctionAt& junction, const NodeLoad& node, const MeterSource& meter) {
  if (!(node.area > 0.0)) return Volts(withoutJunction(meter, node.load.value));
  // Solved for the junction's current x: V(x) is closed, and what the meter leaves at V(x) falls with x.
  const double slope = junction.slope.value;
  const double is = junction.saturation.value * node.area;
  const double rs = junction.series.value / node.area;
  const double ceiling = meter.testCurrent.value;
  const auto voltage = [&](double x) { return slope * std::log1p(x / is) + x * rs; };
  const double g = node.load.value;
  const double gin = 1.0 / meter.inputResistance.value;
  const double gout = 1.0 / meter.outputResistance.value;
  double low = 0.0;
  double high = ceiling;
  double x = std::max(0.01 * ceiling, ceiling - (g + gin) * voltage(ceiling));
  for (int step = 0; step < 200; ++step) {
    const double v = voltage(x);
    const double limited = (meter.openCircuit.value - v) * gout;
    const bool free = limited > ceiling;
    const double excess = (free ? ceiling : limited) - (g + gin) * v - x;
    (excess > 0.0 ? low : high) = x;
    const double fall = (g + gin + (free ? 0.0 : gout)) * (slope / (is + x) + rs) + 1.0;
    double next = x + excess / fall;
    if (!(next > low && next < high)) next = 0.5 * (low + high);
    // The last step is so small that the tangent says what the junction's logarithm would.
    if (std::abs(next - x) <= 1e-6 * x) return Volts(v + (next - x) * (slope / (is + x) + rs));
    if (high - low <= 1e-15 * ceiling) return Volts(voltage(next));
    x = next;
  }
  return Volts(voltage(x));
}

} // namespace netmend
