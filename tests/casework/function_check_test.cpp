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
