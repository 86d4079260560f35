#include <cmath>

#include <catch2/catch.hpp>

#include "simulation/circuit.h"

using namespace netmend::simulation;

TEST_CASE("a junction reads its drop at a milliampere and 25 degrees") {
  for (const double drop : {0.25, 0.45, 0.8}) {
    Circuit circuit;
    circuit.nodes = 2;
    circuit.diodes.push_back({1, 0, lawAt({drop, 1.3, 12.0, 1.11}, 25.0)});
    const auto volts = operatingPoint(circuit, {1e-3, 3.0, 500.0, 1e12}, 1);
    CHECK(volts[1] == Approx(drop).margin(1e-9));
  }
}

TEST_CASE("two equal junctions read n Vt ln 2 lower than one") {
  // Closed form; 17.81 mV at 298.15 K and n = 1 (CODATA).
  Circuit circuit;
  circuit.nodes = 2;
  for (int i = 0; i < 2; ++i)
    circuit.diodes.push_back({1, 0, lawAt({0.6, 1.0, 0.0, 1.11}, 25.0)});
  const auto volts = operatingPoint(circuit, {1e-3, 3.0, 500.0, 1e12}, 1);
  CHECK(0.6 - volts[1] == Approx(0.017809).margin(1e-6));
}

TEST_CASE("an open node shows the meter's open voltage, a loaded one the lesser of its currents") {
  Circuit circuit;
  circuit.nodes = 2;
  CHECK(operatingPoint(circuit, {1e-3, 3.0, 500.0, 10e6}, 1)[1] ==
        Approx(3.0 * 10e6 / (10e6 + 500)).margin(1e-4));
  circuit.resistors.push_back({1, 0, 1000.0});
  CHECK(operatingPoint(circuit, {1e-3, 3.0, 500.0, 1e12}, 1)[1] == Approx(1.0).margin(1e-6));
  circuit.resistors.back().ohms = 5500.0; // above the knee: 3 V × 5.5 / 6
  CHECK(operatingPoint(circuit, {1e-3, 3.0, 500.0, 1e12}, 1)[1] == Approx(2.75).margin(1e-6));
}

TEST_CASE("a cell behind its resistance moves a loaded node, and pins and ground keep their signs") {
  Circuit circuit;
  circuit.nodes = 2;
  circuit.resistors.push_back({1, 0, 1000.0});
  circuit.cells.push_back({1, 0, 0.2, 1000.0});
  // A milliampere into 500 ohm, and half of the cell.
  CHECK(operatingPoint(circuit, {1e-3, 3.0, 500.0, 1e12}, 1)[1] == Approx(0.6).margin(1e-6));
}

TEST_CASE("between two nodes the meter sees what lies between them") {
  Circuit circuit;
  circuit.nodes = 4;
  circuit.resistors = {{1, 2, 100.0}, {2, 3, 47.0}};
  const Source ohmmeter{5e-4, 0.5, 333.0, 1e12};
  const auto volts = operatingPoint(circuit, ohmmeter, 1, 3);
  CHECK(volts[3] == 0.0);
  CHECK(volts[1] / meterCurrent(ohmmeter, volts[1]) == Approx(147.0).margin(1e-3));
}

TEST_CASE("a junction falls with temperature as in SPICE") {
  // ngspice 39 at 1 mA, Is 1e-14, n = 1, default XTI and Eg: -1.78 mV/K.
  const double reference = 8.617333262e-5 * 298.15;
  const Junction junction{reference * std::log(1e-3 / 1e-14 + 1.0), 1.0, 0.0, 1.11};
  const auto at = [&](double celsius) {
    Circuit circuit;
    circuit.nodes = 2;
    circuit.diodes.push_back({1, 0, lawAt(junction, celsius)});
    return operatingPoint(circuit, {1e-3, 3.0, 500.0, 1e12}, 1)[1];
  };
  CHECK((at(30.0) - at(20.0)) / 10.0 == Approx(-1.78e-3).margin(0.02e-3));
}
