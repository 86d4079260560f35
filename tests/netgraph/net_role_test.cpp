#include <string>

#include <catch2/catch.hpp>

#include "netmend/netgraph/net_role.h"

using namespace netmend;

TEST_CASE("names of grounds are guessed to be ground") {
  // Common practice, no source.
  for (const std::string name : {"GND", "gnd", "AGND", "DGND", "PGND", "GNDA", "GND2", "GND_PWR", "VSS",
                                 "VSSA", "VSS_PLL", "0V", "EARTH", "/power/GND", "CGND"}) {
    INFO(name);
    CHECK(roleFromName(name) == guessed(NetRole::ground));
  }
}

TEST_CASE("names of supplies are guessed to be supplies") {
  for (const std::string name : {"VCC",  "+3V3",     "+3.3V",   "+3,3V",  "VBAT",      "VDD_IO",  "VDDPLL",
                                 "+5V",  "-12V",     "1V8",     "5V_USB", "/psu/+12V", "VCC_PIC", "+5F",
                                 "-VAA", "/-12BATT", "/12Vext", "VBUS",   "VIN",       "+VBAT",   "VDD3"}) {
    INFO(name);
    CHECK(roleFromName(name) == guessed(NetRole::supply));
  }
}

TEST_CASE("names that tell nothing, or tell of a signal about a supply, leave the role unknown") {
  for (const std::string name : {"",
                                 "Net-(R5-Pad2)",
                                 "KEY_COL3",
                                 "USB_D+",
                                 "USB_D-",
                                 "VIDEO",
                                 "CVBS",
                                 "VBAT_SENSE",
                                 "VCC_EN",
                                 "3V3_PG",
                                 "GNDSEL_EN",
                                 "V",
                                 "TVB7",
                                 "SDA",
                                 "/",
                                 "+",
                                 "-",
                                 "VREF",
                                 "/VCC_SENSE-ERROR*",
                                 "unconnected-(U1-Pad3)"}) {
    INFO(name);
    CHECK_FALSE(roleFromName(name).known());
  }
}

TEST_CASE("what the board says of a net's role stands over its name") {
  Net net;
  net.name = "GND";
  CHECK(roleOf(net) == guessed(NetRole::ground));
  net.role = fromUser(NetRole::signal);
  CHECK(roleOf(net) == fromUser(NetRole::signal));
}
