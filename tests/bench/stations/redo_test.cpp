#include "demo_desk.h"

using namespace netmend;
using namespace netmend::testing;

namespace {

RepairAction resolder() {
  RepairAction action;
  action.kind = RepairKind::resolder;
  action.target = "J4.9";
  action.steps = {{"Warm the joint", false, "", false, ""}, {"Look at it", true, "shines", false, ""}};
  return action;
}

JobReading proofReading() {
  JobReading reading;
  reading.purpose = ReadingPurpose::proof;
  reading.reading.point.label = "J4.9";
  reading.reading.value = 0.651;
  return reading;
}

} // namespace

TEST_CASE("what was done with a repair action is done again by redo, from its beginning") {
  const DemoDesk demo(DemoDesk::Until::walked);
  BenchJob& job = *demo.job;
  REQUIRE(job.addAction(resolder()));
  const RepairActionId id = job.job()->actions.back().id;
  REQUIRE(
      job.addReadingFor(id, QStringLiteral("proof"), proofReading(),
                        [](RepairAction& action, JobReadingId reading) { action.proof.push_back(reading); }));
  RepairAction ticked = job.job()->actions.back();
  ticked.steps.front().done = true;
  REQUIRE(job.updateAction(QStringLiteral("tick"), ticked));
  const auto readings = job.job()->readings.size();
  const RepairAction before = job.job()->actions.back();

  for (int i = 0; i < 3; ++i)
    REQUIRE(job.undo());
  REQUIRE(job.job()->actions.empty());
  REQUIRE(job.job()->readings.size() == readings - 1);
  for (int i = 0; i < 3; ++i)
    REQUIRE(job.redo());
  CHECK(demo.failures.isEmpty());
  REQUIRE(job.job()->actions.size() == 1);
  const RepairAction& after = job.job()->actions.back();
  CHECK(after.id == before.id);
  CHECK(after.steps.front().done);
  CHECK(after.proof == before.proof);
  CHECK(job.job()->readings.size() == readings);
  // And so it stands in the book.
  const auto kept = job.book().job(job.job()->id);
  REQUIRE(kept);
  REQUIRE(kept->actions.size() == 1);
  CHECK(kept->actions.front().steps.front().done);
  CHECK(kept->actions.front().proof == before.proof);
}

TEST_CASE("a charge that was taken out comes back by undo as the one it was") {
  const DemoDesk demo(DemoDesk::Until::walked);
  BenchJob& job = *demo.job;
  Charge charge;
  charge.what = "Wire";
  REQUIRE(job.addCharge(charge));
  const ChargeId id = job.job()->charges.front().id;
  REQUIRE(job.removeCharge(id));
  REQUIRE(job.undo());
  REQUIRE(job.job()->charges.size() == 1);
  CHECK(job.job()->charges.front().id == id);
  REQUIRE(job.removeCharge(id));
  CHECK(job.job()->charges.empty());
}

TEST_CASE("a photo that nobody had looked at is taken out and put back whole") {
  const DemoDesk demo(DemoDesk::Until::walked);
  BenchJob& job = *demo.job;
  const std::string content("\x89PNG\r\n\0 and more", 16);
  REQUIRE(job.addPhoto({PhotoId{}, "salt at J4", "image/png", content}));
  REQUIRE(waitFor([&] { return job.job()->photos.size() == 1; }));
  // As after the window was closed: the job is read anew, its photos are not.
  const JobId id = job.job()->id;
  job.closeJob();
  REQUIRE(job.openJob(id));
  const PhotoId photo = job.job()->photos.front().id;
  REQUIRE(job.removePhoto(photo));
  REQUIRE(waitFor([&] { return job.job()->photos.empty(); }));
  REQUIRE(job.undo());
  REQUIRE(waitFor([&] { return job.job()->photos.size() == 1; }));
  CHECK(job.book().job(id)->photos.front().bytes.text() == content);
}
