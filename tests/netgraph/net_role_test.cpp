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

TEST_CASE("words of ground are stems, with a number or one letter behind them, or a letter before") {
  // Common practice, no source.
  for (const std::string name :
       {"GND12", "GNDX", "VSS9", "VSSIO_A", "GROUND", "earth", "AGND1", "PGNDA", "0v"}) {
    INFO(name);
    CHECK(roleFromName(name).known() == (name != "VSSIO_A"));
  }
  for (const std::string name :
       {"GNDXY", "GND1A", "XGND", "BGND", "AGNDXY", "GROUNDED", "EARTHY", "10V_X_GND9Z"}) {
    INFO(name);
    CHECK(roleFromName(name) != guessed(NetRole::ground));
  }
}

TEST_CASE("a voltage is a number, V, and a number or up to three letters") {
  for (const std::string name : {"5V", "12V5", "3V3", "5VA", "5VAB", "5VABC", "12VEXT", "1V", "10V25", "+5",
                                 "-12", "+5XYZW", "9V_A"}) {
    INFO(name);
    CHECK(roleFromName(name) == guessed(NetRole::supply));
  }
  for (const std::string name : {"5VABCD", "5VA1", "5V1A", "V5", "V", "X5V", "5X", "5", "5_V", "A3V3"}) {
    INFO(name);
    CHECK_FALSE(roleFromName(name).known());
  }
}

TEST_CASE("each word for a supply is one, as itself or as a stem") {
  for (const std::string name :
       {"VCCX9", "VDDXY", "AVCCZZ", "AVDD_1", "DVDDIO", "VEE", "VEE2",  "VEEA", "VAA",   "VBAT1", "VBUSA",
        "VSYS",  "BATT",  "BATT2",  "VIN",    "VMAIN",  "PWR", "PWR_X", "-VEE", "+VSYS", "vcc"}) {
    INFO(name);
    CHECK(roleFromName(name) == guessed(NetRole::supply));
  }
  for (const std::string name :
       {"VEEXY", "VAAXY", "VBATXY", "VBUSXY", "VSYSXY", "BATTXY", "VINX", "VMAINX", "PWRX", "XVCC"}) {
    INFO(name);
    CHECK_FALSE(roleFromName(name).known());
  }
}

TEST_CASE("each word that makes a net one about a supply does, wherever it comes after the first") {
  for (const std::string word :
       {"SENSE", "SNS", "EN", "ENABLE", "FB", "MON", "PG", "OK", "DET", "GOOD", "ADC", "CTRL"}) {
    INFO(word);
    CHECK_FALSE(roleFromName("VCC_" + word).known());
    CHECK_FALSE(roleFromName("VCC_A_" + word).known());
    CHECK_FALSE(roleFromName("GND_" + word + "_B").known());
    CHECK(roleFromName("VCC_" + word + "X").known());
    CHECK_FALSE(roleFromName(word).known());
  }
}

TEST_CASE("a point between digits is part of the number, any other ends a word") {
  CHECK(roleFromName("1.8V") == guessed(NetRole::supply));
  CHECK(roleFromName("1,8V") == guessed(NetRole::supply));
  CHECK(roleFromName("+12.5") == guessed(NetRole::supply));
  CHECK(roleFromName("VCC.5") == guessed(NetRole::supply)); // of VCC
  CHECK(roleFromName("5V.A") == guessed(NetRole::supply));
  CHECK_FALSE(roleFromName("1.V5").known()); // 1, of V5
  CHECK_FALSE(roleFromName("A.8V").known());
  CHECK_FALSE(roleFromName("5V.EN").known());
  CHECK_FALSE(roleFromName("1;8V").known());
  CHECK_FALSE(roleFromName("8V.").value == NetRole::ground);
  CHECK(roleFromName("8V.") == guessed(NetRole::supply));
}

TEST_CASE("of a pair neither half is a supply, though ground stays ground") {
  CHECK_FALSE(roleFromName("VIN+").known());
  CHECK_FALSE(roleFromName("VIN-").known());
  CHECK(roleFromName("VIN") == guessed(NetRole::supply));
  CHECK(roleFromName("GND-") == guessed(NetRole::ground));
  // A sign inside a word ends it, and is no part of the next.
  CHECK_FALSE(roleFromName("VCC-EN").known());
  CHECK(roleFromName("VCC--EN") == guessed(NetRole::supply)); // of -EN
  CHECK_FALSE(roleFromName("X-5V").known());
  CHECK(roleFromName("a/b/+5V") == guessed(NetRole::supply));
  CHECK_FALSE(roleFromName("VCC/SDA").known());
}
