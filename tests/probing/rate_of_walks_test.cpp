#include <cmath>

#include "support.h"

using namespace netmend;

TEST_CASE(
    "the rate of a walk is shared by what good boards were read at and by the kinds of the other points") {
  Board board;
  board.info.uuid = "b";
  Part part;
  part.id = board.newId<PartId>();
  part.reference = "J1";
  board.parts.put(part);
  Net net;
  net.id = board.newId<NetId>();
  net.name = "COL";
  net.role = fromUser(NetRole::signal);
  board.nets.put(net);
  std::vector<ProbePoint> points;
  for (int i = 1; i <= 6; ++i) {
    Pin pin;
    pin.id = board.newId<PinId>();
    pin.part = part.id;
    pin.name = std::to_string(i);
    if (i <= 5) pin.net = fromUser(net.id); // of the sixth nothing is known
    board.pins.put(pin);
    points.push_back({pin.id, "J1." + std::to_string(i)});
  }
  const Lookup lookup(board);
  const auto reading = [&](std::size_t i, std::optional<double> value) {
    Reading out;
    out.point = points[i];
    out.value = value;
    out.meter = "handheld-4000";
    return out;
  };
  Walk good = test::walkOf({reading(0, 0.45), reading(1, 0.46)}, Specimen::good);
  good.boardUuid = "b";
  auto table = test::expectedFrom({good}, &lookup);
  Walk walk = test::walkOf({reading(0, 0.45), reading(2, 0.5), reading(5, 0.5)}, Specimen::faulty);
  walk.boardUuid = "b";
  walk.points = {points[0], points[3], points[4], points[5]};
  const auto& data = test::data();
  // Two read on good boards; J1.3, J1.4 and J1.5 by their kind; J1.6 has neither.
  const auto judged = judgeWalk(walk, table, &lookup, data);
  CHECK(judged.points == 2);
  REQUIRE(judged.verdicts.size() == 3);
  CHECK(judged.verdicts[0].falseAlarmRate == Approx(1 - std::pow(0.95, 1 / 5.0)).epsilon(1e-12));
  CHECK(judged.verdicts[1].falseAlarmRate == judged.verdicts[0].falseAlarmRate);
  CHECK(judged.verdicts[0].expected->from == ExpectedFrom::boards);
  CHECK(judged.verdicts[1].expected->from == ExpectedFrom::pinKind);
  CHECK(judged.verdicts[2].kind == VerdictKind::nothingToCompare);
  CHECK(judged.verdicts[2].falseAlarmRate == 0.0);
  // Each with its own meter: the coarse one's own error makes a hump wider.
  walk.readings = {reading(0, 0.47), reading(0, 0.47), reading(0, 0.47)};
  walk.readings[1].meter = "bench-200000";
  walk.readings[2].meter = "nobody knows";
  const auto meters = judgeWalk(walk, table, &lookup, data);
  const Expected* expected = table.find(reading(0, 0.47));
  const auto alone = [&](const Reading& one) {
    return judgeReading(one, expected, findMeter(data.meters, one.meter), data.rules,
                        meters.verdicts[0].falseAlarmRate);
  };
  for (std::size_t i = 0; i < 3; ++i)
    CHECK(meters.verdicts[i] == alone(walk.readings[i]));
  CHECK(meters.verdicts[0].odds < meters.verdicts[1].odds);
  CHECK(meters.verdicts[1].odds < meters.verdicts[2].odds);
  // The same walk as one of another board description: by labels alone, and no kinds.
  walk.boardUuid = "c";
  walk.readings = {reading(0, 0.45), reading(2, 0.5)};
  walk.readings[0].point.pin = PinId(999);
  walk.points.clear();
  const auto strange = judgeWalk(walk, table, &lookup, data);
  CHECK(strange.points == 1);
  CHECK(strange.verdicts[0].falseAlarmRate == Approx(1 - std::pow(0.95, 1 / 2.0)).epsilon(1e-12));
  CHECK(strange.verdicts[1].kind == VerdictKind::nothingToCompare);
  // Without a board there are no kinds either.
  walk.boardUuid = "b";
  walk.readings = {reading(0, 0.45), reading(2, 0.5)};
  const auto boardless = judgeWalk(walk, table, nullptr, data);
  CHECK(boardless.points == 1);
  CHECK(boardless.verdicts[0].falseAlarmRate == Approx(1 - std::pow(0.95, 1 / 2.0)).epsilon(1e-12));
}
