#include <catch2/catch.hpp>

#include "netmend/casework/function_check.h"

using namespace netmend;

TEST_CASE("a function check is known from the work's own checks", "[casework]") {
  const WorkStep made = functionCheck("keys 3, 6, 9 and Enter");
  CHECK(isFunctionCheck(made));
  CHECK(made.text == "keys 3, 6, 9 and Enter");
  CHECK(made.check);
  CHECK_FALSE(made.done);
  CHECK_FALSE(isFunctionCheck(WorkStep{}));
  WorkStep another;
  another.check = true;
  CHECK_FALSE(isFunctionCheck(another));
}

TEST_CASE("a proof is about the last repair that was made", "[casework]") {
  Job job;
  CHECK(actionToProve(job) == nullptr);
  const auto act = [&](RepairKind kind) {
    RepairAction action;
    action.id = RepairActionId{job.actions.size() + 1};
    action.kind = kind;
    job.actions.push_back(action);
  };
  act(RepairKind::notEconomic);
  CHECK(actionToProve(job) == nullptr);
  for (const RepairKind kind : {RepairKind::jumper, RepairKind::resolder, RepairKind::removePart,
                                RepairKind::replacePart, RepairKind::clean, RepairKind::cutTrack}) {
    act(kind);
    CHECK(actionToProve(job) == &job.actions.back());
  }
  act(RepairKind::notEconomic);
  CHECK(actionToProve(job)->id == RepairActionId{7});
}

TEST_CASE("a list in the symptom names the functions to try", "[casework]") {
  using Names = std::vector<std::string>;
  CHECK(functionsIn("3, 6, 9 and Enter do nothing") == Names{"3", "6", "9", "Enter"});
  CHECK(functionsIn("Third column of the keypad is dead: 3, 6, 9 and Enter do nothing.") ==
        Names{"Key 3", "Key 6", "Key 9", "Enter"});
  CHECK(functionsIn("Keys 3 and 6 dead") == Names{"Key 3", "Key 6"});
  CHECK(functionsIn("key F2 sticks") == Names{"Key F2"});
  CHECK(functionsIn("Button A, B or Stop") == Names{"Button A", "Button B", "Stop"});
  CHECK(functionsIn("Die Tasten 3, 6 und 9 gehen nicht") == Names{"Taste 3", "Taste 6", "Taste 9"});
  CHECK(functionsIn("keys 3, 3 and 6") == Names{"Key 3", "Key 6"});
}

TEST_CASE("a symptom without a list of functions names none", "[casework]") {
  for (const char* symptom :
       {"", "dead", "Third column of the keypad is dead", "Keys of one column do nothing",
        "Fell into the harbour basin", "drops at 3 and 5 V", "restarts after 10, 20 or 30 s", "reads 3 only",
        "came back in 2024, 2025 and 2026", "J4, J5 and U3 corroded", "3.3 and 5 V are missing"}) {
    INFO(symptom);
    CHECK(functionsIn(symptom).empty());
  }
}
