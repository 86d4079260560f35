#include <catch2/catch.hpp>

#include "netmend/casework/known_values.h"
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

TEST_CASE("the checks of a repair by hand must read what good boards read there", "[casework]") {
  const ProbePoint point{PinId{}, "J4.9"};
  ExpectedTable table;
  Expected known;
  known.humps.resize(1);
  known.boards = 8;
  known.shown = {ValueInterval{0.631, 0.659}};
  table.put(point, ReadingSetting{}, known);
  RepairAction action = threeSteps();
  action.kind = RepairKind::resolder;
  action.steps[0].measure = StepMeasure{ReadingMode::volts, point};
  action.steps[2].measure = StepMeasure{ReadingMode::diode, point};
  RepairAction partOff = action;
  addKnownValues(action, table, {});
  CHECK_FALSE(action.steps[0].measure->comparable()); // another mode
  REQUIRE(action.steps[2].measure->interval);
  CHECK(*action.steps[2].measure->interval == ValueInterval{0.631, 0.659});
  CHECK_FALSE(action.steps[2].measure->overLimit);
  partOff.kind = RepairKind::removePart;
  addKnownValues(partOff, table, {});
  CHECK_FALSE(partOff.steps[2].measure->comparable());
  // Where boards differ there is no figure to stop at.
  known.shown.push_back(ValueInterval{0.4, 0.5});
  ExpectedTable differing;
  differing.put(point, ReadingSetting{}, known);
  RepairAction open = threeSteps();
  open.kind = RepairKind::clean;
  open.steps[2].measure = StepMeasure{ReadingMode::diode, point};
  addKnownValues(open, differing, {});
  CHECK_FALSE(open.steps[2].measure->comparable());
}
