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

namespace {

/// A check, work, a check.
RepairAction threeSteps() {
  RepairAction action;
  action.steps.resize(3);
  action.steps[0].check = true;
  action.steps[2].check = true;
  return action;
}

} // namespace

TEST_CASE("a check that reads wrong stops the work until it reads right or is overruled", "[casework]") {
  RepairAction action = threeSteps();
  CHECK_FALSE(stoppedAt(action));
  CHECK(isOpenToWork(action, 2));
  action.steps[0].read = CheckRead{0.1, StepOutcome::notCompared};
  CHECK_FALSE(stoppedAt(action));
  action.steps[0].read = CheckRead{0.1, StepOutcome::disagrees};
  CHECK(stoppedAt(action) == 0U);
  CHECK(isOpenToWork(action, 0)); // to be repeated
  CHECK_FALSE(isOpenToWork(action, 1));
  action.steps[0].read = CheckRead{0.6, StepOutcome::agrees};
  CHECK_FALSE(stoppedAt(action));
  action.steps[2].read = CheckRead{std::nullopt, StepOutcome::disagrees};
  CHECK(stoppedAt(action) == 2U);
  CHECK(isOpenToWork(action, 1));
  overrule(action.steps[2], "known from before");
  CHECK(action.steps[2].done);
  CHECK(action.steps[2].note == "known from before");
  CHECK_FALSE(stoppedAt(action));
  CHECK(isOpenToWork(action, 2));
}
