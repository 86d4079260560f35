// A board from a file brought into a drawn one: pins and nets.
#include "merging.h"

using namespace netmend;
using namespace netmend::test;

using What = MergeDifference::What;
using Right = MergeDifference::Right;
using Texts = std::vector<std::string>;

namespace {

MergeDifference netDifference(const Board& drawn, const std::string& label, const std::string& mine,
                              const std::string& theirs, Origin origin, Right right) {
  MergeDifference out;
  out.what = What::net;
  out.label = label;
  out.drawn = mine;
  out.file = theirs;
  out.drawnOrigin = origin;
  out.pin = pinCalled(drawn, label).id;
  out.right = right;
  return out;
}

/// J1.1 J1.2 J1.3 of one net, and of what origin J1.3 is; the file has J1.3 on another one.
struct Disputed {
  Told drawn = drawnBoard();
  Told file = fileBoard();
  explicit Disputed(Origin origin) {
    drawn.pins({{"J1.1", "A"}, {"J1.2", "A"}, {"J1.3", "A"}});
    drawn.with(drawn.board.pins, pinCalled(drawn.board, "J1.3").id,
               [&](Pin& pin) { pin.net.origin = origin; });
    file.pins({{"J1.1", "X"}, {"J1.2", "X"}, {"J1.3", "Y"}, {"R1.1", "Y"}});
  }
};

} // namespace

TEST_CASE("a merge counts the pins that agree, learn, and are told by one side only") {
  auto drawn = drawnBoard();
  drawn.pins({{"J1.1", "A"}, {"J1.2", "A"}, {"J1.3", ""}, {"J1.4", "-"}, {"J1.5", "A"}, {"TP1", "A"}});
  auto file = fileBoard();
  file.pins({{"J1.1", "A"},
             {"J1.2", "A"},
             {"J1.3", "B"},
             {"J1.4", "-"},
             {"J1.5", ""},
             {"R1.1", "B"},
             {"R1.2", "-"}});
  const MergePlan plan = planOf(drawn.board, file.board);
  CHECK(plan.agree == 4); // J1.1, J1.2, J1.4 of no net, and J1.5, of which the file knows nothing
  CHECK(plan.learnt == 1);
  CHECK(plan.onlyInFile == 2);
  CHECK(plan.onlyDrawn == 1);
  CHECK(plan.differences.empty());
  CHECK_FALSE(plan.placesFit);
  CHECK(plan.worstPlace == Length());
  const Board board = mergedBy(drawn.board, file.board, plan);
  CHECK(netsIn(board) == Texts{"A: J1.1 J1.2 J1.5 TP1", "B: J1.3 R1.1"});
  CHECK(pinCalled(board, "J1.1").net.origin == Origin::user);
  CHECK(pinCalled(board, "J1.3").net.origin == Origin::file);
  CHECK(netOfPin(board, "J1.4") == "-");
  CHECK(netOfPin(board, "R1.2") == "-");
  CHECK(partCalled(board, "R1").origin == Origin::file);
  CHECK(pinCalled(board, "R1.1").origin == Origin::file);
  CHECK(board.parts.size() == 2);
}

TEST_CASE("an empty file changes nothing, and into an empty drawing the whole file comes in") {
  auto full = fileBoard();
  full.pins({{"J1.1", "A"}, {"J1.2", "*x"}, {"R1.1", "*x"}, {"R1.2", "-"}, {"TP1", "A"}});
  CHECK(mergedBy(full.board, Board()) == full.board);
  const MergePlan plan = planOf(Board(), full.board);
  CHECK(plan.onlyInFile == 5);
  CHECK(plan.agree + plan.learnt + plan.onlyDrawn == 0);
  const Board board = mergedBy(Board(), full.board, plan);
  CHECK(netsIn(board) == Texts{"A: J1.1 TP1", ": J1.2 R1.1"});
}

TEST_CASE("a net is the file's by its pins, whatever it is called, and gets a name if it has none") {
  auto drawn = drawnBoard();
  drawn.pins({{"J1.1", "*a"}, {"R1.1", "*a"}, {"J1.2", ""}, {"R1.2", "*b"}, {"R2.1", "*b"}});
  auto file = fileBoard();
  file.pins({{"J1.1", "KEY"}, {"R1.1", "KEY"}, {"J1.2", "KEY"}, {"R1.2", "*z"}, {"R2.1", "*z"}});
  file.with(file.board.nets, file.net("KEY"), [](Net& net) {
    net.role = fromFile(NetRole::supply);
    net.ratedVoltage = fromFile(Volts(3.3));
    net.ratedCurrent = fromFile(Amperes(0.5));
  });
  const MergePlan plan = planOf(drawn.board, file.board);
  CHECK(plan.agree == 4);
  CHECK(plan.learnt == 1);
  const Board board = mergedBy(drawn.board, file.board, plan);
  CHECK(netsIn(board) == Texts{"KEY: J1.1 R1.1 J1.2", ": R1.2 R2.1"});
  const Net& key = *board.nets.find(drawn.net("*a"));
  CHECK(key.role == fromFile(NetRole::supply));
  CHECK(key.ratedVoltage == fromFile(Volts(3.3)));
  CHECK(key.ratedCurrent == fromFile(Amperes(0.5)));
  CHECK(key.origin == Origin::user);
}

TEST_CASE("what the drawing says of a net outranks the file, what it guesses does not") {
  auto drawn = drawnBoard();
  drawn.pins({{"J1.1", "A"}, {"J1.2", "A"}});
  drawn.with(drawn.board.nets, drawn.net("A"), [](Net& net) {
    net.role = fromUser(NetRole::ground);
    net.ratedVoltage = guessed(Volts(5));
    net.ratedCurrent = measured(Amperes(2));
  });
  auto file = fileBoard();
  file.pins({{"J1.1", "A"}, {"J1.2", "A"}});
  file.with(file.board.nets, file.net("A"), [](Net& net) {
    net.role = fromFile(NetRole::signal);
    net.ratedVoltage = fromFile(Volts(3.3));
    net.ratedCurrent = fromFile(Amperes(1));
  });
  const Board board = mergedBy(drawn.board, file.board);
  CHECK(board.nets[0].role == fromUser(NetRole::ground));
  CHECK(board.nets[0].ratedVoltage == fromFile(Volts(3.3)));
  CHECK(board.nets[0].ratedCurrent == measured(Amperes(2)));
}

TEST_CASE("a pin on another net is a difference: what was measured is right, what was guessed is not") {
  for (const auto& [origin, right] : {std::pair{Origin::measured, Right::drawing},
                                      {Origin::guessed, Right::file},
                                      {Origin::user, Right::open},
                                      {Origin::file, Right::open}}) {
    const Disputed two(origin);
    const MergePlan plan = planOf(two.drawn.board, two.file.board);
    CHECK(plan.agree == 2);
    CHECK(plan.onlyInFile == 1);
    const auto name = std::find_if(plan.differences.begin(), plan.differences.end(),
                                   [](const MergeDifference& d) { return d.what == What::name; });
    REQUIRE(plan.differences.size() == 2);
    REQUIRE(name == plan.differences.begin() + 1);
    CHECK(plan.differences[0] == netDifference(two.drawn.board, "J1.3", "A", "Y", origin, right));
    const Board board = mergedBy(two.drawn.board, two.file.board, plan);
    const Pin& pin = pinCalled(board, "J1.3");
    if (right == Right::file)
      CHECK(netsIn(board) == Texts{"A: J1.1 J1.2", "Y: J1.3 R1.1"});
    else
      CHECK(netsIn(board) == Texts{"A: J1.1 J1.2 J1.3", "Y: R1.1"});
    CHECK(pin.net.origin == (right == Right::file ? Origin::file : origin));
    CHECK(board.nets.size() == 2);
  }
}

TEST_CASE("each answer to a net's difference does what it says") {
  const Disputed two(Origin::measured);
  const Board& drawn = two.drawn.board;
  CHECK(netsIn(mergedBy(drawn, two.file.board, Right::file)) == Texts{"X: J1.1 J1.2", "Y: J1.3 R1.1"});
  for (const Right right : {Right::drawing, Right::open}) {
    const Board board = mergedBy(drawn, two.file.board, right);
    CHECK(netsIn(board) == Texts{"A: J1.1 J1.2 J1.3", "Y: R1.1"});
    for (const Pin& pin : drawn.pins)
      CHECK(*board.pins.find(pin.id) == pin);
  }
}

TEST_CASE("nets without a name are told by some of their other pins") {
  auto drawn = drawnBoard();
  drawn.pins({{"J1.1", "*a"},
              {"J1.2", "*a"},
              {"J1.3", "*a"},
              {"J1.4", "*a"},
              {"J1.5", "*a"},
              {"J2.1", "*b"},
              {"J2.2", "*b"},
              {"J2.3", "-"}});
  auto file = fileBoard();
  file.pins({{"J1.1", "*x"},
             {"J1.2", "*x"},
             {"J1.3", "*x"},
             {"J1.4", "*x"},
             {"J1.5", "*y"},
             {"J2.1", "*y"},
             {"J2.2", "-"},
             {"J2.3", "*y"}});
  const MergePlan plan = planOf(drawn.board, file.board);
  REQUIRE(plan.differences.size() == 3);
  // Three of them at most.
  CHECK(plan.differences[0] ==
        netDifference(drawn.board, "J1.5", "J1.1 J1.2 J1.3", "J2.1 J2.3", Origin::user, Right::open));
  CHECK(plan.differences[1] == netDifference(drawn.board, "J2.2", "J2.1", "", Origin::user, Right::open));
  CHECK(plan.differences[2] ==
        netDifference(drawn.board, "J2.3", "", "J1.5 J2.1", Origin::user, Right::open));
  CHECK(plan.agree == 5);
  CHECK(netsIn(mergedBy(drawn.board, file.board, Right::file)) ==
        Texts{": J1.1 J1.2 J1.3 J1.4", ": J1.5 J2.1 J2.3"});
  CHECK(netOfPin(mergedBy(drawn.board, file.board, Right::file), "J2.2") == "-");
}

TEST_CASE("a net of which one pin is drawn is the file's, unless it has another name") {
  auto drawn = drawnBoard();
  drawn.pins({{"J1.1", "A"}, {"J1.2", "A"}, {"J1.3", "*lone"}, {"J1.4", "B"}, {"J1.5", "KEY"}});
  auto file = fileBoard();
  file.pins({{"J1.1", "A"}, {"J1.2", "A"}, {"J1.3", "A"}, {"J1.4", "B"}, {"J1.5", "A"}});
  const MergePlan plan = planOf(drawn.board, file.board);
  CHECK(plan.agree == 4);
  REQUIRE(plan.differences.size() == 1);
  CHECK(plan.differences[0] == netDifference(drawn.board, "J1.5", "KEY", "A", Origin::user, Right::open));
  const Board board = mergedBy(drawn.board, file.board, plan);
  CHECK(netsIn(board) == Texts{"A: J1.1 J1.2 J1.3", "B: J1.4", "KEY: J1.5"});
  CHECK(board.nets.size() == 3); // nothing is left of the one without a name
  CHECK(pinCalled(board, "J1.4").net == fromUser(drawn.net("B")));
  CHECK(netsIn(mergedBy(drawn.board, file.board, Right::file)) == Texts{"A: J1.1 J1.2 J1.3 J1.5", "B: J1.4"});
}

TEST_CASE("a net of one pin in the file is as good as none") {
  auto drawn = drawnBoard();
  drawn.pins({{"J1.1", "-"}, {"J1.2", "-"}, {"J1.3", "-"}});
  drawn.with(drawn.board.pins, pinCalled(drawn.board, "J1.2").id,
             [](Pin& pin) { pin.net.origin = Origin::measured; });
  auto file = fileBoard();
  file.pins({{"J1.1", "ROW"}, {"J1.2", "COL"}, {"J1.3", "X"}, {"J1.4", "X"}});
  const MergePlan plan = planOf(drawn.board, file.board);
  CHECK(plan.agree == 2);
  REQUIRE(plan.differences.size() == 1);
  CHECK(plan.differences[0].label == "J1.3");
  const Board board = mergedBy(drawn.board, file.board, plan);
  CHECK(netsIn(board) == Texts{"ROW: J1.1", "X: J1.4"});
  CHECK(pinCalled(board, "J1.2").net == measured(NetId()));
  CHECK(board.nets.size() == 2);
}

TEST_CASE("a net drawn as two that is one in the file") {
  auto drawn = drawnBoard();
  drawn.pins({{"J1.1", "A"}, {"J1.2", "A"}, {"J1.3", "A"}, {"J2.1", "B"}, {"J2.2", "B"}});
  auto file = fileBoard();
  file.pins({{"J2.1", "B"}, {"J2.2", "B"}, {"J1.1", "B"}, {"J1.2", "B"}, {"J1.3", "B"}, {"R1.1", "B"}});
  const MergePlan plan = planOf(drawn.board, file.board);
  REQUIRE(plan.differences.size() == 3);
  // The file's has most pins in common with A.
  CHECK(plan.differences[0] == netDifference(drawn.board, "J2.1", "B", "B", Origin::user, Right::open));
  CHECK(plan.differences[1].label == "J2.2");
  CHECK(plan.differences[2].what == What::name);
  CHECK(plan.differences[2].net == drawn.net("A"));
  CHECK(netsIn(mergedBy(drawn.board, file.board)) == Texts{"A: J1.1 J1.2 J1.3 R1.1", "B: J2.1 J2.2"});
  const Board joined = mergedBy(drawn.board, file.board, Right::file);
  CHECK(netsIn(joined) == Texts{"B: J1.1 J1.2 J1.3 J2.1 J2.2 R1.1"});
  CHECK(joined.nets.size() == 1);
}

TEST_CASE("of as many pins the net of the same name is meant") {
  auto drawn = drawnBoard();
  drawn.pins({{"J1.1", "A"}, {"J1.2", "A"}, {"J2.1", "B"}, {"J2.2", "B"}});
  auto file = fileBoard();
  file.pins({{"J1.1", "B"}, {"J1.2", "B"}, {"J2.1", "B"}, {"J2.2", "B"}});
  const MergePlan plan = planOf(drawn.board, file.board);
  REQUIRE(plan.differences.size() == 2);
  CHECK(plan.differences[0].label == "J1.1");
  CHECK(plan.differences[1].label == "J1.2");
}

TEST_CASE("a net drawn as one that is two in the file") {
  auto drawn = drawnBoard();
  drawn.pins({{"J1.1", "A"}, {"J1.2", "A"}, {"J2.1", "A"}, {"J2.2", "A"}, {"J2.3", "A"}});
  auto file = fileBoard();
  file.pins({{"J1.1", "X"}, {"J1.2", "X"}, {"J2.1", "A"}, {"J2.2", "A"}, {"J2.3", "A"}});
  const MergePlan plan = planOf(drawn.board, file.board);
  REQUIRE(plan.differences.size() == 2);
  CHECK(plan.differences[0] == netDifference(drawn.board, "J1.1", "A", "X", Origin::user, Right::open));
  CHECK(plan.differences[1].label == "J1.2");
  const Board kept = mergedBy(drawn.board, file.board);
  CHECK(netsIn(kept) == Texts{"A: J1.1 J1.2 J2.1 J2.2 J2.3"});
  CHECK(kept == drawn.board); // no net comes in that nothing would be of
  CHECK(netsIn(mergedBy(drawn.board, file.board, Right::file)) == Texts{"X: J1.1 J1.2", "A: J2.1 J2.2 J2.3"});
}

TEST_CASE("nets are matched one to one: where one is taken, the next best is meant") {
  auto drawn = drawnBoard();
  drawn.pins({{"J1.1", "*a"}, {"J1.2", "*b"}, {"J1.3", "*b"}, {"J1.4", "*b"}, {"J1.5", "*a"}});
  auto file = fileBoard();
  file.pins({{"J1.1", "*x"}, {"J1.2", "*x"}, {"J1.3", "*x"}, {"J1.4", "*y"}, {"J1.5", "*z"}});
  // b and x have two pins in common; then a and z, or b and y: b is taken.
  const MergePlan plan = planOf(drawn.board, file.board);
  REQUIRE(plan.differences.size() == 2);
  CHECK(plan.differences[0].label == "J1.1");
  CHECK(plan.differences[1].label == "J1.4");
}

TEST_CASE("nets of the same name are one, also where they have no pin in common") {
  auto drawn = drawnBoard();
  drawn.pins({{"TP1", "GND"}, {"TP2", "*a"}});
  auto file = fileBoard();
  file.pins({{"R1.1", "GND"}, {"R1.2", "VCC"}});
  CHECK(netsIn(mergedBy(drawn.board, file.board)) == Texts{"GND: TP1 R1.1", ": TP2", "VCC: R1.2"});
  // Where the name stands twice it tells nothing.
  drawn.put(drawn.board.nets, [] {
    Net net;
    net.name = "GND";
    return net;
  }());
  CHECK(netsIn(mergedBy(drawn.board, file.board)).size() == 4);
}

TEST_CASE("another name of the same net is a difference") {
  auto drawn = drawnBoard();
  drawn.pins({{"J1.1", "A"}, {"J1.2", "A"}, {"J2.1", "*b"}, {"J2.2", "*b"}});
  auto file = fileBoard();
  file.pins({{"J1.1", "X"}, {"J1.2", "X"}, {"J2.1", "Y"}, {"J2.2", "Y"}});
  MergeDifference expected;
  expected.what = What::name;
  expected.label = "A";
  expected.drawn = "A";
  expected.file = "X";
  expected.drawnOrigin = Origin::user;
  expected.net = drawn.net("A");
  expected.right = Right::open;
  CHECK(planOf(drawn.board, file.board).differences == std::vector{expected});
  CHECK(netsIn(mergedBy(drawn.board, file.board)) == Texts{"A: J1.1 J1.2", "Y: J2.1 J2.2"});
  CHECK(netsIn(mergedBy(drawn.board, file.board, Right::drawing))[0] == "A: J1.1 J1.2");
  CHECK(netsIn(mergedBy(drawn.board, file.board, Right::file))[0] == "X: J1.1 J1.2");
  for (const auto& [origin, right] :
       {std::pair{Origin::measured, Right::drawing}, {Origin::guessed, Right::file}}) {
    drawn.with(drawn.board.nets, drawn.net("A"), [&, of = origin](Net& net) { net.origin = of; });
    const MergePlan plan = planOf(drawn.board, file.board);
    CHECK(plan.differences.front().right == right);
    CHECK(plan.differences.front().drawnOrigin == origin);
  }
  // A file that has no name tells no other one.
  file.with(file.board.nets, file.net("X"), [](Net& net) { net.name.clear(); });
  CHECK(planOf(drawn.board, file.board).differences.empty());
  CHECK(netsIn(mergedBy(drawn.board, file.board))[0] == "A: J1.1 J1.2");
}
