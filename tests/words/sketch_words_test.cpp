#include <catch2/catch.hpp>

#include "netmend/words/sketch.h"
#include "support/drawn_board.h"

using namespace netmend;
using namespace netmend::test;

namespace {

const ChipSizes& chipSizes() {
  static const ChipSizes sizes = loadChipSizes(NETMEND_SOURCE_DIR "/data/part_sizes.json").value();
  return sizes;
}

using Texts = std::vector<std::string>;

/// What stands under each word of a line.
Texts meanings(const std::string& text, bool netInHand = false, const Board& board = {}) {
  const TypedLine line = readLine(text, board, chipSizes(), netInHand);
  Texts out;
  for (const LineWord& word : line.words)
    out.push_back(word.text + ": " + wordsOf(meaningSaid(word, line.wanted, chipSizes())));
  return out;
}
std::string meaning(WordMeaning meaning, const Wanted& wanted = {}) {
  return wordsOf(meaningSaid({"x", meaning}, wanted, chipSizes()));
}

struct Row {
  WorthGrade grade;
  std::string what;
  std::string more;
  friend bool operator==(const Row&, const Row&) = default;
  friend std::ostream& operator<<(std::ostream& out, const Row& row) {
    return out << static_cast<int>(row.grade) << " \"" << row.what << "\" \"" << row.more << "\"";
  }
};
Row rowOf(const DrawingWorth& worth, std::size_t station) {
  const auto rows = worthRows(worth);
  return {rows.at(station).grade, wordsOf(rows.at(station).what), wordsOf(rows.at(station).more)};
}
constexpr std::size_t walk = 0, find = 1, bridge = 2;

} // namespace

TEST_CASE("What is to be done next while drawing is said in one sentence", "[words]") {
  using Due = SketchDue::What;
  const auto due = [](Due what, const std::string& name = {}, const std::string& pin = {},
                      std::size_t count = 0) {
    return wordsOf(dueSaid({what, name, pin, count}));
  };
  CHECK(due(Due::type) == "Type what is drawn next, or click a pin");
  CHECK(due(Due::firstPin, "J4", "1", 40) == "Click pin 1 of J4");
  CHECK(due(Due::oppositePin, "J4", "40", 40) == "Click pin 40 of J4");
  CHECK(due(Due::takeArray, "J4", "", 40) == "Take J4 as it lies");
  CHECK(due(Due::firstEnd, "R21", "", 8) == "Click the first end of R21");
  CHECK(due(Due::secondEnd, "R21", "", 8) == "Click the other end of R21");
  CHECK(due(Due::lastFirstEnd, "R21", "", 8) == "Click the first end of the last of 8");
  CHECK(due(Due::testPad, "TP") == "Click the test pad");
  CHECK(due(Due::corner) == "Click the next corner");
  CHECK(due(Due::closeCorner, "", "", 3) == "Click the next corner, or the first again");
  CHECK(due(Due::copyPlace) == "Click where the copy's first pad goes");
  CHECK(due(Due::zonePlace) == "Click the part, or the zone's first corner");
  CHECK(due(Due::joinPin, "GND", "J4.1", 2) == "Click what belongs to GND");
  CHECK(due(Due::joinPin, "", "J4.1", 2) == "Click what belongs to J4.1");
  CHECK(due(Due::insideEnd, "GND", "J4.1", 2) == "Click where GND comes out again");
  CHECK(due(Due::insideEnd, "", "J4.1", 2) == "Click where J4.1 comes out again");
  CHECK(due(Due::takeSeries, "", "", 1) == "Take 1 more net like these");
  CHECK(due(Due::takeSeries, "", "", 2) == "Take 2 more nets like these");
  CHECK(due(Due::part, "R28") == "R28 is in hand");
}

TEST_CASE("How it is done is said where there is something to say", "[words]") {
  using Due = SketchDue::What;
  const auto help = [](Due what) { return wordsOf(dueHelp({what, "J4", "1", 2})); };
  CHECK(help(Due::type) ==
        "Enter opens the line. J4 40 2 rows is a connector, R 100 0402 a resistor, U1 64 4 sides a chip. A "
        "click on a pin takes its net in hand");
  CHECK(help(Due::firstPin) == "Its pad's middle, as well as it is to be seen");
  CHECK(help(Due::oppositePin) == "Diagonally opposite to the first one");
  CHECK(help(Due::takeArray) ==
        "Does every frame lie on its pad? A click on the first row's last pin turns it");
  CHECK(help(Due::joinPin) ==
        "Pins join without copper. A click beside them draws a track to there, V puts a via, I goes inside. "
        "Space: the net is done");
  CHECK(help(Due::part) ==
        "Drag it to move it. Z makes a zone of it, G says that it is missing, Delete takes it off");
  CHECK(help(Due::takeSeries) == "From the last two nets: parts and pins count on as they did");
  for (const Due what : {Due::firstEnd, Due::secondEnd, Due::lastFirstEnd, Due::testPad, Due::corner,
                         Due::closeCorner, Due::copyPlace, Due::zonePlace, Due::insideEnd})
    CHECK(dueHelp({what, "J4", "1", 2}).empty());
}

TEST_CASE("The history calls each act by its name", "[words]") {
  const std::vector<std::pair<SketchAct, std::string>> all = {
      {SketchAct::partPut, "part drawn"},
      {SketchAct::partsPut, "row of parts drawn"},
      {SketchAct::partsCopied, "parts copied"},
      {SketchAct::testPadPut, "test pad drawn"},
      {SketchAct::joined, "pins joined"},
      {SketchAct::named, "net named"},
      {SketchAct::roleSet, "net's role"},
      {SketchAct::trackDrawn, "track drawn"},
      {SketchAct::viaPut, "via drawn"},
      {SketchAct::insideRun, "run inside the board"},
      {SketchAct::areaDrawn, "copper area drawn"},
      {SketchAct::zonePut, "zone drawn"},
      {SketchAct::seriesJoined, "series of nets"},
      {SketchAct::goneSet, "gone or there"},
      {SketchAct::removed, "taken off"},
      {SketchAct::separated, "pin taken out of its net"}};
  CHECK(all.size() == static_cast<std::size_t>(SketchAct::separated)); // but for nothing
  for (const auto& [act, text] : all)
    CHECK(wordsOf(nameOf(act)) == text);
  CHECK(nameOf(SketchAct::nothing).empty());
}

TEST_CASE("What joining did to other nets is said", "[words]") {
  SketchAnswer answer;
  CHECK(conflictSaid(answer, "GND").empty());
  answer.swallowed = {"VCC", "OUT"};
  CHECK(wordsOf(conflictSaid(answer, "GND")) == "VCC is part of GND now. U takes it back");
  answer.groundToSupply = true;
  CHECK(wordsOf(conflictSaid(answer, "GND")) == "Ground and a supply are one net now. U takes it back");
  answer.swallowed.clear();
  CHECK(wordsOf(conflictSaid(answer, "GND")) == "Ground and a supply are one net now. U takes it back");
}

TEST_CASE("Under each word of the line stands what it means", "[words]") {
  CHECK(meanings("J4 40 2 rows pitch 0.5") ==
        Texts{"J4: connector", "40: pins", "2 rows: of 20", "pitch 0.5: mm from pin to pin"});
  CHECK(meanings("R 100 0402 8") ==
        Texts{"R: resistor, counts up", "100: value", "0402: 1 × 0.5 mm", "8: first to last"});
  CHECK(meanings("C 1n 1005m") == Texts{"C: capacitor, counts up", "1n: value", "1005m: 1 × 0.5 mm"});
  CHECK(meanings("U1 64 4 sides") == Texts{"U1: chip", "64: pins", "4 sides: counter-clockwise"});
  CHECK(meanings("KEY_ROW0", true) == Texts{"KEY_ROW0: name of the net"});
  CHECK(meanings("SH1").front() == "SH1: shield, its outline");
  CHECK(meanings("TP").front() == "TP: test pad, counts up");
  CHECK(meanings("what ever") == Texts{"what: not understood", "ever: not understood"});
}

TEST_CASE("Every meaning of a word has its text", "[words]") {
  using M = WordMeaning;
  CHECK(meaning(M::notUnderstood) == "not understood");
  CHECK(meaning(M::pins) == "pins");
  CHECK(meaning(M::fourSides) == "counter-clockwise");
  CHECK(meaning(M::grid) == "balls, lettered by rows");
  CHECK(meaning(M::pitch) == "mm from pin to pin");
  CHECK(meaning(M::leftOut) == "no pin there");
  CHECK(meaning(M::tabs) == "one at each end");
  CHECK(meaning(M::padSize) == "mm along and across the row");
  CHECK(meaning(M::holes) == "mm, through the board");
  CHECK(meaning(M::value) == "value");
  CHECK(meaning(M::size) == "value"); // no such size
  CHECK(meaning(M::count) == "first to last");
  CHECK(meaning(M::lid) == "mm above the board");
  CHECK(meaning(M::diameter) == "mm wide");
  CHECK(meaning(M::width) == "mm wide");
  CHECK(meaning(M::zone) == "no wire, with its usual margin");
  CHECK(meaning(M::area) == "copper, its outline");
  CHECK(meaning(M::track) == "tracks from now on");
  CHECK(meaning(M::copy) == "once more, elsewhere");
  CHECK(meaning(M::copied) == "with new numbers");
  CHECK(meaning(M::mirrored) == "left and right changed");
  CHECK(meaning(M::net) == "name of the net");
  CHECK(meaning(M::role) == "what the net is for");
}

TEST_CASE("A size is told in millimetres of its body", "[words]") {
  for (const ChipSize& size : chipSizes().sizes) {
    const std::string text = wordsOf(meaningSaid({size.code, WordMeaning::size}, {}, chipSizes()));
    double width = 0, height = 0;
    REQUIRE(std::sscanf(text.c_str(), "%lf × %lf mm", &width, &height) == 2);
    CHECK(Length::fromMm(width) == size.body.width);
    CHECK(Length::fromMm(height) == size.body.height);
  }
}

TEST_CASE("Rows and orders are told as they are counted", "[words]") {
  const auto array = [](std::size_t pins, std::size_t rows, PinOrder order) {
    ArrayWanted wanted;
    wanted.array.pins = pins;
    wanted.array.rows = rows;
    wanted.array.order = order;
    return Wanted(wanted);
  };
  CHECK(meaning(WordMeaning::rows) == "rows");
  CHECK(meaning(WordMeaning::rows, array(40, 0, {})) == "rows");
  CHECK(meaning(WordMeaning::rows, array(40, 1, {})) == "of 40");
  CHECK(meaning(WordMeaning::rows, array(40, 2, {})) == "of 20");
  CHECK(meaning(WordMeaning::order) == "pins");
  CHECK(meaning(WordMeaning::order, array(4, 2, PinOrder::alternating)) == "1 3 5 over 2 4 6");
  CHECK(meaning(WordMeaning::order, array(4, 2, PinOrder::along)) == "one row after the other");
  CHECK(meaning(WordMeaning::order, array(4, 2, PinOrder::round)) == "counted round the body");
  CHECK(meaning(WordMeaning::order, array(4, 2, PinOrder::lettered)) == "A1 A2 over B1 B2");
}

TEST_CASE("What is wanted is called by its kind", "[words]") {
  const std::vector<std::pair<PartKind, std::string>> kinds = {{PartKind::resistor, "resistor"},
                                                               {PartKind::capacitor, "capacitor"},
                                                               {PartKind::inductor, "inductor"},
                                                               {PartKind::ferrite, "ferrite"},
                                                               {PartKind::fuse, "fuse"},
                                                               {PartKind::diode, "diode"},
                                                               {PartKind::led, "LED"},
                                                               {PartKind::chip, "chip"},
                                                               {PartKind::connector, "connector"},
                                                               {PartKind::crystal, "crystal"},
                                                               {PartKind::transistor, "transistor"},
                                                               {PartKind::switchOrKey, "switch"},
                                                               {PartKind::battery, "battery"},
                                                               {PartKind::antenna, "antenna"},
                                                               {PartKind::shield, "shield"},
                                                               {PartKind::other, "part"},
                                                               {PartKind::mechanical, "part"}};
  for (const auto& [kind, text] : kinds) {
    ArrayWanted array;
    array.label.kind = kind;
    CHECK(meaning(WordMeaning::part, array) == text);
    BodyWanted body;
    body.label.kind = kind;
    CHECK(meaning(WordMeaning::part, body) == text);
    TwoTerminalsWanted two;
    two.kind = kind;
    CHECK(meaning(WordMeaning::part, two) == text + ", counts up");
  }
  CHECK(meaning(WordMeaning::part, ShieldWanted{}) == "shield, its outline");
  CHECK(meaning(WordMeaning::part, TestPadsWanted{}) == "test pad, counts up");
  CHECK(meaning(WordMeaning::part, ZoneWanted{}) == "its name");
  CHECK(meaning(WordMeaning::part) == "part");
}

TEST_CASE("What a drawing is good for at Walk goes by its connector", "[words]") {
  DrawingWorth worth;
  CHECK(rowOf(worth, walk) == Row{WorthGrade::nothing, "no connector yet", "type one: J4 40 2 rows"});
  worth.connector = "J4";
  worth.pins = 40;
  worth.placedPins = 39;
  worth.pinsWithNet = 40;
  CHECK(rowOf(worth, walk) ==
        Row{WorthGrade::some, "J4 as a list of 40 pins", "placed on the photo, each pin is shown"});
  worth.placedPins = 40;
  CHECK(rowOf(worth, walk) == Row{WorthGrade::enough, "J4: 40 pins at their places, 40 have a net", ""});
  worth.pinsWithNet = 39;
  CHECK(rowOf(worth, walk) == Row{WorthGrade::enough, "J4: 40 pins at their places, 39 have a net",
                                  "names: click a pin and type, or paste a list"});
}

TEST_CASE("What a drawing is good for at Find goes by the net in hand", "[words]") {
  DrawingWorth worth;
  worth.lines = worth.linesWithCopper = 9;
  worth.net = "KEY_COL3";
  worth.netPins = 1;
  worth.netTracks = 5;
  CHECK(rowOf(worth, find) ==
        Row{WorthGrade::nothing, "KEY_COL3 leads nowhere yet", "a click on its other end is enough"});
  worth.netPins = 2;
  worth.netTracks = 0;
  CHECK(rowOf(worth, find) ==
        Row{WorthGrade::some, "no copper known for KEY_COL3: finding works between pins, not along the track",
            "its track, click by click, tells which piece is open"});
  worth.netTracks = 1;
  worth.netUnknownWays = 2;
  CHECK(rowOf(worth, find) == Row{WorthGrade::enough, "KEY_COL3: 1 pieces of copper, 2 of unknown way", ""});
}

TEST_CASE("What a drawing is good for at Find goes by all lines where no net is in hand", "[words]") {
  DrawingWorth worth;
  CHECK(rowOf(worth, find) ==
        Row{WorthGrade::nothing, "no line known yet", "two pins joined are enough to begin"});
  worth.lines = 3;
  worth.linesWithCopper = 2;
  CHECK(rowOf(worth, find) == Row{WorthGrade::some, "3 lines, 2 of them with copper",
                                  "copper tells where on the line; without it, between which pins"});
  worth.linesWithCopper = 3;
  CHECK(rowOf(worth, find) == Row{WorthGrade::enough, "3 lines, 3 of them with copper", ""});
}

TEST_CASE("What a drawing is good for at Bridge goes by landings and zones", "[words]") {
  DrawingWorth worth;
  worth.zones = 3;
  CHECK(rowOf(worth, bridge) ==
        Row{WorthGrade::nothing, "no landing known yet", "each pad placed is a landing"});
  worth.landings = 7;
  CHECK(rowOf(worth, bridge) == Row{WorthGrade::enough, "7 landings, 3 zones", ""});
  worth.zones = 1;
  CHECK(rowOf(worth, bridge) == Row{WorthGrade::enough, "7 landings, 1 zone", ""});
  worth.zones = 0;
  CHECK(rowOf(worth, bridge) == Row{WorthGrade::some,
                                    "7 landings, no zone: a wire may cross a plug or the battery",
                                    "a part's zone: click it, then Z"});
}

TEST_CASE("What drawing and file tell differently is said of each kind", "[words]") {
  using Differs = MergeDifference::What;
  const auto text = [](Differs what, const std::string& label, const std::string& drawn,
                       const std::string& file) {
    MergeDifference difference;
    difference.what = what;
    difference.label = label;
    difference.drawn = drawn;
    difference.file = file;
    return wordsOf(differenceSaid(difference));
  };
  CHECK(text(Differs::net, "J4.9", "KEY_COL3", "R28.1 C28.1") ==
        "J4.9: drawn with KEY_COL3, in the file with R28.1 C28.1");
  CHECK(text(Differs::net, "J4.9", "", "GND") == "J4.9: drawn with nothing, in the file with GND");
  CHECK(text(Differs::net, "J4.9", "GND", "") == "J4.9: drawn with GND, in the file with nothing");
  CHECK(text(Differs::name, "GND", "GND", "VSS") == "net GND: called VSS in the file");
  CHECK(text(Differs::value, "R28", "100", "220") == "R28: drawn as 100, in the file 220");
  CHECK(text(Differs::fitted, "C1", "", "") == "C1: there in the drawing, left out in the file");
  CHECK(text(Differs::missing, "C1", "", "") == "C1: missing in the drawing, fitted in the file");
}

TEST_CASE("Why one of them is proposed is said, whatever is decided then", "[words]") {
  using Differs = MergeDifference::What;
  using Right = MergeDifference::Right;
  for (const Right right : {Right::drawing, Right::file, Right::open})
    for (const Differs what :
         {Differs::net, Differs::name, Differs::value, Differs::fitted, Differs::missing}) {
      const auto why = [&](Origin origin) {
        MergeDifference difference;
        difference.what = what;
        difference.drawnOrigin = origin;
        difference.right = right;
        return wordsOf(proposalSaid(difference));
      };
      CHECK(why(Origin::measured) == "Measured, so the drawing is proposed");
      CHECK(why(Origin::guessed) == "Only guessed in the drawing, so the file is proposed");
      const bool seen = what == Differs::fitted || what == Differs::missing;
      for (const Origin origin : {Origin::user, Origin::file})
        CHECK(why(origin) == (seen ? "Seen on the board, so the drawing is proposed" : ""));
    }
}

TEST_CASE("What there is to merge is said in figures", "[words]") {
  MergePlan plan;
  plan.agree = 31;
  plan.learnt = 2;
  plan.onlyInFile = 400;
  plan.onlyDrawn = 3;
  CHECK(wordsOf(mergeSaid(plan)) == "31 pins agree, 2 learn their net, 400 only in the file, 3 only drawn");
}

TEST_CASE("Where a pin leads to: six others by name, more are counted", "[words]") {
  for (const auto& [others, text] : {std::pair{0, ""},
                                     {1, "leads to R1.1"},
                                     {2, "leads to R1.1, R2.1"},
                                     {6, "leads to R1.1, R2.1, R3.1, R4.1, R5.1, R6.1"},
                                     {7, "leads to R1.1, R2.1, R3.1, R4.1, R5.1, R6.1 and 1 more"},
                                     {9, "leads to R1.1, R2.1, R3.1, R4.1, R5.1, R6.1 and 3 more"}}) {
    DrawnBoard drawn;
    const NetId net = drawn.net("A");
    const PinId pin = drawn.pin(drawn.part("J4", Side::top, {}), "9", net);
    for (int i = 1; i <= others; ++i)
      drawn.pin(drawn.part("R" + std::to_string(i), Side::top, {}), "1", net);
    CHECK(wordsOf(leadsToSaid(Lookup(drawn.board), pin)) == text);
  }
  DrawnBoard drawn;
  const PinId nothing = drawn.pin(PartId(), "TP1", NetId());
  Pin unknown = *drawn.board.pins.find(nothing);
  unknown.id = drawn.board.newId<PinId>();
  unknown.net = {};
  drawn.board.pins.put(unknown);
  drawn.pin(PartId(), "TP2", NetId());
  CHECK(leadsToSaid(Lookup(drawn.board), nothing).empty());
  CHECK(leadsToSaid(Lookup(drawn.board), unknown.id).empty());
  CHECK(leadsToSaid(Lookup(drawn.board), PinId(999)).empty());
}
