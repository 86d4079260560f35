// A board from a file brought into a drawn one: what is told of parts.
#include "merging.h"

using namespace netmend;
using namespace netmend::test;

using What = MergeDifference::What;
using Right = MergeDifference::Right;

TEST_CASE("another value of a part is a difference, and each answer does what it says") {
  for (const auto& [origin, right] : {std::pair{Origin::measured, Right::drawing},
                                      {Origin::guessed, Right::file},
                                      {Origin::user, Right::open},
                                      {Origin::file, Right::open}}) {
    auto drawn = drawnBoard();
    drawn.pins({{"R28.1", ""}, {"R28.2", ""}});
    drawn.with(drawn.board.parts, drawn.part("R28"), [&, of = origin](Part& part) {
      part.value = {"100", of};
    });
    auto file = fileBoard();
    file.pins({{"R28.1", ""}, {"R28.2", ""}});
    file.with(file.board.parts, file.part("R28"),
              [](Part& part) { part.value = fromFile<std::string>("220"); });
    MergeDifference expected;
    expected.what = What::value;
    expected.label = "R28";
    expected.drawn = "100";
    expected.file = "220";
    expected.drawnOrigin = origin;
    expected.part = drawn.part("R28");
    expected.right = right;
    CHECK(planOf(drawn.board, file.board).differences == std::vector{expected});
    const auto valueAfter = [&](Right answer) {
      return partCalled(mergedBy(drawn.board, file.board, answer), "R28").value;
    };
    CHECK(valueAfter(Right::drawing) == Fact<std::string>{"100", origin});
    CHECK(valueAfter(Right::open) == Fact<std::string>{"100", origin});
    CHECK(valueAfter(Right::file) == fromFile<std::string>("220"));
  }
}

TEST_CASE("whether a part is there is told by the board, unless it was only guessed") {
  for (const bool fitted : {true, false})
    for (const auto& [origin, right] : {std::pair{Origin::measured, Right::drawing},
                                        {Origin::guessed, Right::file},
                                        {Origin::user, Right::drawing},
                                        {Origin::file, Right::drawing}}) {
      auto drawn = drawnBoard();
      drawn.pin("C1.1", "");
      drawn.with(drawn.board.parts, drawn.part("C1"), [&, of = origin](Part& part) {
        part.fitted = {fitted, of};
      });
      auto file = fileBoard();
      file.pin("C1.1", "");
      file.with(file.board.parts, file.part("C1"), [&](Part& part) { part.fitted = fromFile(!fitted); });
      MergeDifference expected;
      expected.what = fitted ? What::fitted : What::missing;
      expected.label = "C1";
      expected.drawnOrigin = origin;
      expected.part = drawn.part("C1");
      expected.right = right;
      CHECK(planOf(drawn.board, file.board).differences == std::vector{expected});
      const auto after = [&](Right answer) {
        return partCalled(mergedBy(drawn.board, file.board, answer), "C1").fitted;
      };
      CHECK(after(Right::drawing) == Fact<bool>{fitted, origin});
      CHECK(after(Right::open) == Fact<bool>{fitted, origin});
      CHECK(after(Right::file) == fromFile(!fitted));
    }
}

TEST_CASE("value and fitting of one part are two differences, with their own answers") {
  auto drawn = drawnBoard();
  drawn.pin("C1.1", "");
  drawn.with(drawn.board.parts, drawn.part("C1"), [](Part& part) {
    part.value = fromUser<std::string>("1n");
    part.fitted = fromUser(true);
  });
  auto file = fileBoard();
  file.pin("C1.1", "");
  file.with(file.board.parts, file.part("C1"), [](Part& part) {
    part.value = fromFile<std::string>("2n");
    part.fitted = fromFile(false);
  });
  MergePlan plan = planOf(drawn.board, file.board);
  REQUIRE(plan.differences.size() == 2);
  CHECK(plan.differences[0].what == What::value);
  CHECK(plan.differences[1].what == What::fitted);
  CHECK(plan.differences[1].drawn.empty());
  CHECK(plan.differences[1].file.empty());
  plan.differences[0].right = Right::file;
  const Board first = mergedBy(drawn.board, file.board, plan);
  CHECK(first.parts[0].value == fromFile<std::string>("2n"));
  CHECK(first.parts[0].fitted == fromUser(true));
  std::swap(plan.differences[0].right, plan.differences[1].right);
  const Board second = mergedBy(drawn.board, file.board, plan);
  CHECK(second.parts[0].value == fromUser<std::string>("1n"));
  CHECK(second.parts[0].fitted == fromFile(false));
}

TEST_CASE("what is not known of a part or pin, or only guessed, is learnt") {
  auto drawn = drawnBoard();
  drawn.pins({{"U1.1", ""}, {"U1.2", ""}, {"U2.1", ""}});
  drawn.with(drawn.board.parts, drawn.part("U2"), [](Part& part) {
    part.kind = guessed(PartKind::chip);
    part.value = guessed<std::string>("ABC");
    part.fitted = guessed(true);
    part.package = fromUser<std::string>("mine");
    part.height = fromUser(Length(1));
    part.side = fromUser(Side::bottom);
  });
  auto file = fileBoard();
  file.pins({{"U1.1", ""}, {"U1.2", ""}, {"U2.1", ""}});
  for (const auto* reference : {"U1", "U2"})
    file.with(file.board.parts, file.part(reference), [](Part& part) {
      part.kind = fromFile(PartKind::transistor);
      part.value = fromFile<std::string>("ABC");
      part.package = fromFile<std::string>("SOT-23");
      part.fitted = fromFile(true);
      part.height = fromFile(Length(900'000));
      part.side = fromFile(Side::top);
    });
  file.with(file.board.pins, pinCalled(file.board, "U1.2").id,
            [](Pin& pin) { pin.termination = fromFile(Termination::resistive); });
  const Board board = mergedBy(drawn.board, file.board);
  for (const auto* reference : {"U1", "U2"}) {
    const Part& part = partCalled(board, reference);
    CHECK(part.kind == fromFile(PartKind::transistor));
    CHECK(part.value == fromFile<std::string>("ABC"));
    CHECK(part.fitted == fromFile(true));
    CHECK(part.origin == Origin::user);
  }
  CHECK(partCalled(board, "U1").package == fromFile<std::string>("SOT-23"));
  CHECK(partCalled(board, "U1").height == fromFile(Length(900'000)));
  CHECK(partCalled(board, "U1").side == fromFile(Side::top));
  CHECK(partCalled(board, "U2").package == fromUser<std::string>("mine"));
  CHECK(partCalled(board, "U2").height == fromUser(Length(1)));
  CHECK(partCalled(board, "U2").side == fromUser(Side::bottom));
  CHECK(pinCalled(board, "U1.2").termination == fromFile(Termination::resistive));
}

TEST_CASE("a guessed net that the file confirms is known from then on, a measured one stays measured") {
  auto drawn = drawnBoard();
  drawn.pins({{"J1.1", "A"}, {"J1.2", "A"}, {"J1.3", "A"}, {"J1.4", "-"}});
  const auto comesFrom = [&](const char* label, Origin origin) {
    drawn.with(drawn.board.pins, pinCalled(drawn.board, label).id,
               [&](Pin& pin) { pin.net.origin = origin; });
  };
  comesFrom("J1.1", Origin::guessed);
  comesFrom("J1.2", Origin::measured);
  comesFrom("J1.4", Origin::guessed);
  auto file = fileBoard();
  file.pins({{"J1.1", "A"}, {"J1.2", "A"}, {"J1.3", "A"}, {"J1.4", "-"}});
  const Board board = mergedBy(drawn.board, file.board);
  CHECK(pinCalled(board, "J1.1").net == fromFile(drawn.net("A")));
  CHECK(pinCalled(board, "J1.2").net == measured(drawn.net("A")));
  CHECK(pinCalled(board, "J1.3").net == fromUser(drawn.net("A")));
  CHECK(pinCalled(board, "J1.4").net == fromFile(NetId()));
}

TEST_CASE("labels that stand twice name nothing") {
  auto drawn = drawnBoard();
  drawn.pins({{"TP1", "A"}, {"J1.1", "A"}});
  auto file = fileBoard();
  file.pins({{"TP1", "X"}, {"TP1", "X"}, {"J1.1", "X"}});
  const MergePlan plan = planOf(drawn.board, file.board);
  CHECK(plan.agree == 1);
  CHECK(plan.onlyInFile == 2);
  CHECK(plan.onlyDrawn == 1);
}

TEST_CASE("parts without pins are told by their reference") {
  auto drawn = drawnBoard();
  drawn.part("SH1");
  drawn.pin("R1.1", "");
  auto file = fileBoard();
  Part shield;
  shield.kind = fromFile(PartKind::shield);
  shield.height = fromFile(Length(2'000'000));
  file.part("SH1", shield);
  file.pin("SH1.1", "GND");
  file.part("MH1");
  file.pin("R1.A", "GND"); // other pins: another part
  const Board board = mergedBy(drawn.board, file.board);
  CHECK(board.parts.size() == 4);
  CHECK(partCalled(board, "SH1").id == drawn.part("SH1"));
  CHECK(partCalled(board, "SH1").kind == fromFile(PartKind::shield));
  CHECK(pinCalled(board, "SH1.1").part == drawn.part("SH1"));
  CHECK(pinCalled(board, "R1.A").part != pinCalled(board, "R1.1").part);
}

TEST_CASE("paths through a part and the lid over it name the drawing's pins and parts") {
  auto drawn = drawnBoard();
  drawn.pins({{"L1.1", "A"}, {"L1.2", "B"}});
  auto file = fileBoard();
  file.part("SH1");
  file.pins({{"L1.2", "B"}, {"L1.1", "A"}, {"L2.1", "A"}, {"L2.2", "B"}});
  const auto path = [](const Board& board, const std::string& part) {
    return std::vector{
        Through{pinCalled(board, part + ".1").id, pinCalled(board, part + ".2").id, fromFile(Ohms(0.2))}};
  };
  for (const auto* reference : {"L1", "L2"})
    file.with(file.board.parts, file.part(reference), [&](Part& part) {
      part.lid = fromFile(file.part("SH1"));
      part.through = fromFile(path(file.board, reference));
    });
  const Board board = mergedBy(drawn.board, file.board);
  for (const auto* reference : {"L1", "L2"}) {
    CHECK(partCalled(board, reference).lid == fromFile(partCalled(board, "SH1").id));
    CHECK(partCalled(board, reference).through == fromFile(path(board, reference)));
  }
}
