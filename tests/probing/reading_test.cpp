#include "netmend/probing/reading.h"

#include <catch2/catch.hpp>

using namespace netmend;

TEST_CASE("two points are the same by their pins, or by their labels where one has none") {
  const ProbePoint one{PinId(1), "J1.1"}, renamed{PinId(1), "P1.1"}, other{PinId(2), "J1.1"},
      typed{{}, "J1.1"};
  CHECK(samePoint(one, renamed));
  CHECK_FALSE(samePoint(one, other));
  CHECK(samePoint(one, typed));
  CHECK(samePoint(typed, other));
  CHECK_FALSE(samePoint(typed, renamed));
}

TEST_CASE("the temperature makes no other condition of it, everything else does") {
  const Condition plain;
  Condition warm;
  warm.temperature = Celsius(31);
  CHECK(sameCondition(plain, warm));
  for (auto change :
       {+[](Condition& c) { c.plugged = {"battery"}; }, +[](Condition& c) { c.powered = true; },
        +[](Condition& c) { c.lifted = {"R5"}; }, +[](Condition& c) { c.handling = "pressed"; }}) {
    Condition changed;
    change(changed);
    CHECK_FALSE(sameCondition(plain, changed));
  }
}

TEST_CASE("a measurement is a point, a mode, the other lead, the condition and the current injected") {
  Reading reading;
  reading.point = {PinId(1), "J1.1"};
  reading.value = 0.45;
  Reading again = reading;
  again.value.reset();
  again.meter = "bench";
  again.by = "KB";
  again.settling = Settling::rising;
  CHECK(sameMeasurement(reading, again));
  for (auto change :
       {+[](Reading& r) { r.point.pin = PinId(2); }, +[](Reading& r) { r.mode = ReadingMode::ohms; },
        +[](Reading& r) { r.other.label = "J1.2"; }, +[](Reading& r) { r.injected = Amperes(1.0); },
        +[](Reading& r) { r.condition.powered = true; }}) {
    Reading changed = reading;
    change(changed);
    CHECK_FALSE(sameMeasurement(reading, changed));
    CHECK(sameSetting(settingOf(reading), changed) == (changed.point.pin != reading.point.pin));
  }
}
