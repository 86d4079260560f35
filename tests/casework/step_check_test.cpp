#include <catch2/catch.hpp>

#include "netmend/casework/step_check.h"

using namespace netmend;

TEST_CASE("a value agrees with a check from the lowest to the highest that it may read", "[casework]") {
  StepMeasure wanted;
  wanted.interval = ValueInterval{0.6, 0.7};
  CHECK(compareWith(wanted, 0.6) == StepOutcome::agrees);
  CHECK(compareWith(wanted, 0.65) == StepOutcome::agrees);
  CHECK(compareWith(wanted, 0.7) == StepOutcome::agrees);
  CHECK(compareWith(wanted, 0.5999) == StepOutcome::disagrees);
  CHECK(compareWith(wanted, 0.7001) == StepOutcome::disagrees);
  CHECK(compareWith(wanted, std::nullopt) == StepOutcome::disagrees);
}

TEST_CASE("where OL is wanted only OL agrees, unless a value may be read too", "[casework]") {
  StepMeasure wanted;
  wanted.overLimit = true;
  CHECK(compareWith(wanted, std::nullopt) == StepOutcome::agrees);
  CHECK(compareWith(wanted, 0.65) == StepOutcome::disagrees);
  wanted.interval = ValueInterval{0.6, 0.7};
  CHECK(compareWith(wanted, std::nullopt) == StepOutcome::agrees);
  CHECK(compareWith(wanted, 0.65) == StepOutcome::agrees);
  CHECK(compareWith(wanted, 0.75) == StepOutcome::disagrees);
}

TEST_CASE("a check that names neither value nor OL is not compared", "[casework]") {
  const StepMeasure wanted;
  CHECK_FALSE(wanted.comparable());
  CHECK(compareWith(wanted, 0.65) == StepOutcome::notCompared);
  CHECK(compareWith(wanted, std::nullopt) == StepOutcome::notCompared);
}
