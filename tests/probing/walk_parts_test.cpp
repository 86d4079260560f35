#include <sstream>

#include <fmt/format.h>

#include "netmend/probing/point_index.h"
#include "netmend/probing/walk_session.h"
#include "probing/plain_text.h"
#include "probing/time_text.h"
#include "support.h"

// What walks are made of: times, texts, numbered points, events, lines typed, the order of pins.

using namespace netmend;
using std::chrono::milliseconds;

namespace {

constexpr std::chrono::sys_time<milliseconds> midday{milliseconds(1772366400123)};

} // namespace

TEST_CASE("times are written and read in UTC to the millisecond, and nothing but times is one") {
  using probing::timeFrom;
  using probing::timeText;
  CHECK(timeText(midday) == "2026-03-01T12:00:00.123Z");
  CHECK(timeFrom("2026-03-01T12:00:00.123Z") == midday);
  CHECK(timeFrom("2026-03-01T12:00:00Z") == midday - milliseconds(123));
  // 1972-02-29 is day 789 after 1970-01-01: 730 for two years, 31 for January, 28.
  const std::chrono::sys_time<milliseconds> leap{milliseconds(((789LL * 24 + 23) * 60 + 59) * 60000 + 59999)};
  CHECK(timeText(leap) == "1972-02-29T23:59:59.999Z");
  CHECK(timeFrom("1972-02-29T23:59:59.999Z") == leap);
  CHECK(timeText(std::chrono::sys_time<milliseconds>{}) == "1970-01-01T00:00:00.000Z");
  CHECK(timeFrom("1970-01-01T00:00:00Z") == std::chrono::sys_time<milliseconds>{});
  const std::string good = "2026-03-01T12:34:56.789Z";
  REQUIRE(timeFrom(good));
  for (std::size_t i = 0; i < good.size(); ++i)
    for (const char c : {'x', '/', ':', ' '}) {
      std::string bad = good;
      if (bad[i] == c) continue;
      bad[i] = c;
      INFO(bad);
      CHECK_FALSE(timeFrom(bad));
    }
  for (const char* bad :
       {"2026-13-01T12:00:00Z", "2026-00-01T12:00:00Z", "2026-02-29T12:00:00Z", "2026-03-32T12:00:00Z",
        "2026-03-00T12:00:00Z", "2026-03-01T24:00:00Z", "2026-03-01T12:60:00Z", "2026-03-01T12:00:60Z",
        "2026-03-01T12:00:00", "2026-03-01T12:00:00.12Z", "2026-03-01T12:00:00.1234Z", "", "Z"})
    CHECK_FALSE(timeFrom(bad));
  for (const char* fine :
       {"2026-03-01T23:00:00Z", "2026-03-01T00:59:00Z", "2026-03-01T00:00:59Z", "2028-02-29T00:00:00Z"})
    CHECK(timeFrom(fine));
}

TEST_CASE("plain text is well-formed UTF-8 without control characters: Unicode 15, table 3-7, edge by edge") {
  using probing::isPlainText;
  using namespace std::string_view_literals;
  for (const auto good : {""sv, "a\tb ~"sv, "\x20"sv, "\x7f"sv, "\xc2\x80"sv, "\xdf\xbf"sv, "\xe0\xa0\x80"sv,
                          "\xec\x80\x80"sv, "\xed\x9f\xbf"sv, "\xee\x80\x80"sv, "\xef\xbf\xbf"sv,
                          "\xf0\x90\x80\x80"sv, "\xf4\x8f\xbf\xbf"sv, "\xc2\xb5x\xe2\x84\xa6y"sv}) {
    INFO(good);
    CHECK(isPlainText(good));
  }
  for (const auto bad : {"\x1f"sv,
                         "\0"sv,
                         "\n"sv,
                         "\x08"sv,
                         "\x80"sv,
                         "\xbf"sv,
                         "\xc0\x80"sv,
                         "\xc1\xbf"sv,
                         "\xc2"sv,
                         "\xc2\x7f"sv,
                         "\xc2\xc0"sv,
                         "\xe0\x9f\xbf"sv,
                         "\xed\xa0\x80"sv,
                         "\xed\xbf\xbf"sv,
                         "\xef\xbf"sv,
                         "\xf0\x8f\xbf\xbf"sv,
                         "\xf4\x90\x80\x80"sv,
                         "\xf5\x80\x80\x80"sv,
                         "\xf0\x90\x80"sv,
                         "a\xe2\x84z"sv,
                         "\xff"sv}) {
    INFO(bad.size() << " bytes, first " << static_cast<int>(static_cast<unsigned char>(bad.front())));
    CHECK_FALSE(isPlainText(bad));
  }
}

TEST_CASE("points are numbered by pin and label, setting by setting") {
  PointIndex index;
  Reading reading;
  reading.point = {PinId{}, "J1.1"};
  const auto ohms = [] {
    ReadingSetting setting;
    setting.mode = ReadingMode::ohms;
    return setting;
  }();
  CHECK(index.count({}) == 0);
  CHECK(index.add(reading) == 0);
  CHECK(index.add({PinId(7), "J1.1"}, ReadingSetting{}) == 0); // learns its pin
  CHECK(index[0].point == ProbePoint{PinId(7), "J1.1"});
  CHECK(index.find({PinId(7), "renamed"}, ReadingSetting{}) == 0);
  CHECK(index.add({PinId(8), "J1.1"}, ReadingSetting{}) == 1); // another pin of that label
  CHECK(index[0].point.pin == PinId(7));
  CHECK(index.find({PinId(8), ""}, ReadingSetting{}) == 1);
  CHECK_FALSE(index.find({PinId(9), "J1.1"}, ReadingSetting{}));
  CHECK(index.find({PinId{}, "J1.1"}, ReadingSetting{}) == 0);
  CHECK_FALSE(index.find({PinId{}, ""}, ReadingSetting{}));
  CHECK_FALSE(index.find({PinId(9), ""}, ReadingSetting{}));
  CHECK_FALSE(index.find({PinId(7), "J1.1"}, ohms));
  CHECK(index.count({}) == 2);
  CHECK(index.count(ohms) == 0);
  CHECK(index.add({PinId(7), "J1.1"}, ohms) == 2);
  CHECK(index[2].setting == 1);
  CHECK(index.setting(1).mode == ReadingMode::ohms);
  reading.mode = ReadingMode::ohms;
  CHECK(index.find(reading) == 2);
  reading.mode = ReadingMode::volts;
  CHECK_FALSE(index.find(reading));
  CHECK(index.add(reading) == 3);
  CHECK(index.count(settingOf(reading)) == 1);
  // Points of no label and no pin are never the same.
  CHECK(index.add({PinId{}, ""}, ohms) == 4);
  CHECK(index.add({PinId{}, ""}, ohms) == 5);
  CHECK(index.size() == 6);
  CHECK(index.count(ohms) == 3);
}

TEST_CASE("one event of a walk changes what it says, and nothing else") {
  const auto started = [] {
    WalkSession session;
    session.walk.points = {{PinId(1), "A"}, {PinId(2), "B"}, {PinId{}, "A"}};
    session.walk.meter = "m";
    session.walk.by = "me";
    session.walk.mode = ReadingMode::ohms;
    session.walk.other = {PinId(9), "TP1"};
    session.walk.condition.powered = true;
    return session;
  };
  auto session = started();
  ValueTaken value;
  value.value = 470.0;
  value.settling = Settling::settled;
  REQUIRE(take(session, value, midday));
  CHECK(session.walk.readings.back() == Reading{{PinId(1), "A"},
                                                {PinId(9), "TP1"},
                                                ReadingMode::ohms,
                                                470.0,
                                                Settling::settled,
                                                midday,
                                                "m",
                                                "me",
                                                session.walk.condition,
                                                {}});
  CHECK(session.turn == 1);
  // A label that stands twice is meant from here on, and then from the beginning.
  value.label = "A";
  REQUIRE(take(session, value, midday));
  CHECK(session.turn == 1); // B has been left out
  CHECK(session.walk.readings.back().point == ProbePoint{PinId{}, "A"});
  session.turn = 3;
  REQUIRE(take(session, value, midday));
  CHECK(session.turn == 1);
  value.mode = ReadingMode::volts;
  value.label = "C";
  REQUIRE(take(session, value, midday));
  CHECK(session.walk.readings.back().mode == ReadingMode::volts);
  CHECK(session.walk.points.back() == ProbePoint{PinId{}, "C"});
  CHECK(session.turn == 1);
  session.turn = 4;
  CHECK(session.finished());
  CHECK_FALSE(take(session, PointSkipped{}, midday));
  value.label.clear();
  CHECK_FALSE(take(session, value, midday));
  REQUIRE(take(session, UndoLast{}, midday));
  CHECK(session.walk.points.size() == 3);
  CHECK(session.turn == 1);
  CHECK(session.walk.readings.size() == 3);
  REQUIRE(take(session, PointSkipped{}, midday));
  CHECK(session.turn == 2);
  CHECK(session.walk.skipped == std::vector<ProbePoint>{{PinId(2), "B"}});
  REQUIRE(take(session, StepBack{}, midday));
  CHECK(session.turn == 1);
  REQUIRE(take(session, ModeChanged{ReadingMode::diode}, midday));
  CHECK(session.walk.mode == ReadingMode::diode);
  REQUIRE(take(session, UndoLast{}, midday));
  CHECK(session.walk.mode == ReadingMode::ohms);
  REQUIRE(take(session, UndoLast{}, midday));
  CHECK(session.turn == 2);
  REQUIRE(take(session, UndoLast{}, midday));
  CHECK(session.walk.skipped.empty());
  CHECK(session.turn == 1);

  // What a source knows of the whole reading is kept; the point is the list's, found by pin or by label.
  session = started();
  ValueTaken whole;
  Reading known = test::at(5, 0.45);
  known.point = {PinId(2), "known elsewhere"};
  known.by = "robot";
  whole.whole = known;
  whole.value = 0.46;
  whole.settling = Settling::rising;
  REQUIRE(take(session, whole, midday));
  CHECK(session.turn == 2);
  known.point = {PinId(2), "B"};
  known.value = 0.46;
  known.settling = Settling::rising;
  CHECK(session.walk.readings.back() == known);
  whole.whole->point = {PinId(77), "D"};
  whole.label = "D";
  REQUIRE(take(session, whole, midday));
  CHECK(session.walk.points.back() == ProbePoint{PinId(77), "D"});
  whole.whole->point = {PinId(5), "A"}; // by its label, where the list has no pin
  whole.label = "A";
  session.turn = 2;
  REQUIRE(take(session, whole, midday));
  CHECK(session.walk.readings.back().point == ProbePoint{PinId{}, "A"});
  // At the very first point there is nothing before.
  session = started();
  CHECK_FALSE(take(session, StepBack{}, midday));
  CHECK_FALSE(take(session, UndoLast{}, midday));
  CHECK(session.steps.empty());
}

TEST_CASE("each line of a source is one event, with its label, mode and settling") {
  std::istringstream in(
      "\xEF\xBB\xBF 0.452\r\nJ4.1\tOL rising\n452 settled\nsettled 0.4\n 12 mV # note\nmode  ohms \n"
      "4k7\nTP 470\nrising\nskip\nback\nundo\nJ1.1 470 ohm settled\nJ1.1 4 5\n452 mV\nJ1.1 2 V\n"
      "mode\nmode warp\n+5 V\n0.4rising\nlast 5");
  const auto source = makeTextSource(in, "typed");
  struct Line {
    std::string kind, label;
    std::optional<double> value;
    std::optional<ReadingMode> mode;
    Settling settling;
  };
  std::vector<std::string> seen;
  while (auto event = source->next()) {
    if (!*event) {
      seen.push_back(event->error().text());
      continue;
    }
    if (const auto* value = std::get_if<ValueTaken>(&**event)) {
      CHECK(value->mode.has_value());
      CHECK_FALSE(value->whole);
      seen.push_back(fmt::format("{}={} {} {}", value->label,
                                 value->value ? fmt::format("{:g}", *value->value) : "OL",
                                 static_cast<int>(*value->mode), static_cast<int>(value->settling)));
    } else if (const auto* mode = std::get_if<ModeChanged>(&**event)) {
      seen.push_back("mode " + std::to_string(static_cast<int>(mode->mode)));
    } else {
      seen.push_back("event " + std::to_string((*event)->index()));
    }
  }
  CHECK(source->ended());
  REQUIRE(seen.size() == 21);
  const std::vector<std::string> begin{"=0.452 0 2", "J4.1=OL 0 1", "=0.452 0 0", "settled=0.4 0 2",
                                       "=0.012 0 2", "mode 2",      "=4700 2 2",  "TP=470 2 2"};
  for (std::size_t i = 0; i < begin.size(); ++i)
    CHECK(seen[i] == begin[i]);
  CHECK(seen[8].starts_with("typed: line 9: not a value"));
  CHECK(seen[9] == "event 1");
  CHECK(seen[10] == "event 2");
  CHECK(seen[11] == "event 3");
  CHECK(seen[12] == "J1.1=470 2 0");
  CHECK(seen[13].starts_with("typed: line 14: not a value"));
  CHECK(seen[14].starts_with("typed: line 15: a unit of another mode"));
  CHECK(seen[15].starts_with("typed: line 16: a unit of another mode"));
  CHECK(seen[16].starts_with("typed: line 17: not a value"));
  CHECK(seen[17].starts_with("typed: line 18: unknown mode"));
  CHECK(seen[17].find("\"warp\"") != std::string::npos);
  CHECK(seen[18].starts_with("typed: line 19: a unit of another mode"));
  CHECK(seen[19].starts_with("typed: line 20: not a value"));
  CHECK(seen[20] == "last=5 2 2");
  // A line's length is bounded; what is longer is refused, and the next line is read.
  std::istringstream endless("A" + std::string(4092, ' ') + "0.5\nA" + std::string(4093, ' ') + "0.5\n0.4\n");
  const auto bounded = makeTextSource(endless, "typed", ReadingMode::volts);
  CHECK(std::get<ValueTaken>(**bounded->next()).label == "A");
  const auto tooLong = bounded->next();
  REQUIRE(tooLong);
  CHECK(wordsOf(tooLong->error().message) == "line too long");
  CHECK_FALSE(bounded->ended());
  CHECK(std::get<ValueTaken>(**bounded->next()).value == 0.4);
  CHECK_FALSE(bounded->next());
  CHECK(bounded->ended());
}

TEST_CASE("pins stand in the order of the numbers in their names, letters by the alphabet") {
  Board board;
  Part part;
  part.id = board.newId<PartId>();
  part.reference = "U1";
  board.parts.put(part);
  for (const char* name :
       {"B1", "A10", "A2", "10", "2", "A", "A02b", "007", "A2a", "12", "9x", "A1B10", "A1B9", ""}) {
    Pin pin;
    pin.id = board.newId<PinId>();
    pin.part = part.id;
    pin.name = name;
    board.pins.put(pin);
  }
  const Lookup lookup(board);
  std::vector<std::string> names;
  for (const auto& point : pointsOf(lookup, part.id))
    names.push_back(board.pins.find(point.pin)->name);
  CHECK(names == std::vector<std::string>{"", "2", "007", "9x", "10", "12", "A", "A1B9", "A1B10", "A2", "A2a",
                                          "A02b", "A10", "B1"});
}

TEST_CASE("a walk matched to a board gets pins by labels, at every place that has a point") {
  Board board;
  board.info.uuid = "u";
  Part part;
  part.id = board.newId<PartId>();
  part.reference = "J1";
  board.parts.put(part);
  std::vector<PinId> pins;
  for (const char* name : {"1", "2", "3"}) {
    Pin pin;
    pin.id = board.newId<PinId>();
    pin.part = part.id;
    pin.name = name;
    board.pins.put(pin);
    pins.push_back(pin.id);
  }
  const Lookup lookup(board);
  const auto stranger = PinId(999);
  const auto walkWith = [&](PinId pin) {
    Walk walk;
    const ProbePoint one{pin, "J1.1"}, two{pin, "J1.2"};
    walk.other = one;
    walk.points = {one, {pin, "unknown"}, {pin, ""}};
    walk.skipped = {two};
    walk.readings.emplace_back();
    walk.readings[0].point = one;
    walk.readings[0].other = two;
    walk.entered.emplace_back();
    walk.entered[0].point = two;
    walk.entered[0].other = one;
    return walk;
  };
  for (const char* uuid : {"other", "u"}) {
    auto walk = walkWith(stranger); // of another board, or of a pin that is gone
    walk.boardUuid = uuid;
    matchToBoard(walk, lookup);
    CHECK(walk.boardUuid == "u");
    CHECK(walk.other.pin == pins[0]);
    CHECK(walk.points[0].pin == pins[0]);
    CHECK_FALSE(walk.points[1].pin);
    CHECK_FALSE(walk.points[2].pin);
    CHECK(walk.skipped[0].pin == pins[1]);
    CHECK(walk.readings[0].point.pin == pins[0]);
    CHECK(walk.readings[0].other.pin == pins[1]);
    CHECK(walk.entered[0].point.pin == pins[1]);
    CHECK(walk.entered[0].other.pin == pins[0]);
  }
  auto same = walkWith(pins[2]); // its own ids stay, whatever the labels say
  same.boardUuid = "u";
  matchToBoard(same, lookup);
  CHECK(same.readings[0].point.pin == pins[2]);
  for (const auto& [specimen, text] : std::vector<std::pair<Specimen, const char*>>{
           {Specimen::unknown, "unknown"}, {Specimen::good, "good"}, {Specimen::faulty, "faulty"}}) {
    CHECK(word(specimen) == text);
    CHECK(specimenFrom(text) == specimen);
  }
  CHECK_FALSE(specimenFrom("superb"));
}
