#include "netmend/board/summary.h"

#include <catch2/catch.hpp>

#include "netmend/board/board_file.h"
#include "netmend/board/connector_board.h"
#include "netmend/board/edit.h"
#include "netmend/board/lookup.h"

using namespace netmend;

namespace {

Point mm(double x, double y) {
  return {Length::fromMm(x), Length::fromMm(y)};
}

} // namespace

TEST_CASE("a summary counts only nets with a pad, and measures the outline") {
  Board board;
  Net bare;
  bare.id = board.newId<NetId>();
  board.nets.put(bare);
  Net withPin = bare;
  withPin.id = board.newId<NetId>();
  board.nets.put(withPin);
  Net withPads = bare;
  withPads.id = board.newId<NetId>();
  board.nets.put(withPads);
  Pin pin;
  pin.id = board.newId<PinId>();
  pin.net = fromFile(withPin.id);
  board.pins.put(pin);
  pin.id = board.newId<PinId>();
  pin.net = fromFile(withPads.id);
  board.pins.put(pin);
  Pad pad;
  pad.pin = pin.id;
  pad.position = fromFile(mm(100, 100));
  for (int i = 0; i < 2; ++i) {
    pad.id = board.newId<PadId>();
    board.pads.put(pad);
  }
  CHECK(summarize(board) == BoardSummary{0, 2, 1, 0, 0, 0, Size{}});
  board.info.outline = fromFile(std::vector<Polygon>{{{mm(1, 1), mm(51, 1), mm(51, 31)}, {}}});
  CHECK(summarize(board).size == Size{Length::fromMm(50), Length::fromMm(30)});
}

TEST_CASE("without an outline everything with a place is measured, copper with its width") {
  Board board;
  CHECK(summarize(board).size == Size{});
  Track track;
  track.id = board.newId<TrackId>();
  track.start = mm(0, 0);
  track.end = mm(10, 0);
  track.width = fromFile(Length::fromMm(0.2));
  board.tracks.put(track);
  CHECK(summarize(board).size == Size{Length::fromMm(10.2), Length::fromMm(0.2)});
  Via via;
  via.id = board.newId<ViaId>();
  via.position = mm(5, 5);
  via.diameter = fromFile(Length::fromMm(0.6));
  board.vias.put(via);
  Pin pin;
  pin.id = board.newId<PinId>();
  board.pins.put(pin);
  Pad pad;
  pad.id = board.newId<PadId>();
  pad.pin = pin.id;
  pad.position = fromFile(mm(20, 0));
  pad.shape = fromFile(PadShape::rectangle);
  pad.size = fromFile(Size{Length::fromMm(4), Length::fromMm(2)});
  pad.rotation = Degrees(90);
  board.pads.put(pad);
  CHECK(summarize(board).size == Size{Length::fromMm(21.1), Length::fromMm(7.3)});
}

TEST_CASE("the least board is a connector and a pin count, nothing more") {
  const auto board = makeConnectorBoard("J4", 30);
  REQUIRE(board);
  CHECK(summarize(*board) == BoardSummary{1, 0, 0, 0, 0, 0, Size{}});
  const Lookup lookup(*board);
  CHECK(lookup.pinsOf(board->parts[0].id).size() == 30);
  CHECK(lookup.pinsLabelled("J4.1").size() == 1);
  CHECK(lookup.pinsLabelled("J4.30").size() == 1);
  CHECK_FALSE(board->pins[0].net.known());
  CHECK_FALSE(board->parts[0].position.known());
  CHECK(checkReferences(*board));
  CHECK(boardFromText(boardToText(*board).value()).value() == *board);
}

TEST_CASE("rows of a connector have letters, and pins that do not fill them are refused") {
  const auto board = makeConnectorBoard("J1", 36, 18);
  REQUIRE(board);
  CHECK(board->pins[0].name == "A1");
  CHECK(board->pins[35].name == "V2"); // the 18th letter of A B C D E F G H J K L M N P R T U V
  CHECK_FALSE(makeConnectorBoard("J1", 0));
  CHECK_FALSE(makeConnectorBoard("J1", 10'001));
  CHECK_FALSE(makeConnectorBoard("J1", 10, 0));
  CHECK_FALSE(makeConnectorBoard("J1", 21, 21));
  CHECK(makeConnectorBoard("J1", 31, 2).error().text() ==
        "the pins do not fill the rows (found 31 pins in 2 rows)");
}

TEST_CASE("a connector is put on a board beside what is there, and only under a name that is free") {
  Board board = *makeConnectorBoard("J4", 30);
  REQUIRE(addConnector(board, "J7", 6, 2));
  CHECK(board.parts.size() == 2);
  CHECK(board.pins.size() == 36);
  CHECK(board.pins[35].name == "B3");
  CHECK(board.pins[35].part == board.parts[1].id);
  const Board before = board;
  CHECK(wordsOf(addConnector(board, "J4", 6).error().message) == "is on this board already");
  CHECK_FALSE(addConnector(board, "J8", 7, 2));
  CHECK(board == before);
}

TEST_CASE("each kind of object with a place widens the box by itself, on both sides") {
  const auto extent = [](auto fill) {
    Board board;
    fill(board);
    const Box box = extentOf(board);
    return std::pair(box.min, box.max);
  };
  const Ring ring{mm(-1, -2), mm(3, -2), mm(3, 4)};
  const auto whole = std::pair(mm(-1, -2), mm(3, 4));
  CHECK(extent([&](Board& b) {
          Part part;
          part.id = b.newId<PartId>();
          part.body = fromFile(ring);
          b.parts.put(part);
        }) == whole);
  CHECK(extent([&](Board& b) {
          Part part;
          part.id = b.newId<PartId>();
          part.position = fromFile(mm(5, 6));
          b.parts.put(part);
        }) == std::pair(mm(5, 6), mm(5, 6)));
  CHECK(extent([&](Board& b) {
          Area area;
          area.id = b.newId<AreaId>();
          area.polygon.outer = ring;
          b.areas.put(area);
        }) == whole);
  CHECK(extent([&](Board& b) {
          Zone zone;
          zone.id = b.newId<ZoneId>();
          zone.polygon.outer = ring;
          b.zones.put(zone);
        }) == whole);
  CHECK(extent([&](Board& b) {
          Via via;
          via.id = b.newId<ViaId>();
          via.position = mm(1, 2);
          b.vias.put(via);
        }) == std::pair(mm(1, 2), mm(1, 2)));
  CHECK(extent([&](Board& b) {
          Track track;
          track.id = b.newId<TrackId>();
          track.start = mm(1, 2);
          track.end = mm(4, 2);
          track.width = fromFile(Length::fromMm(2));
          b.tracks.put(track);
        }) == std::pair(mm(0, 1), mm(5, 3)));
  CHECK(extent([&](Board& b) {
          Pad pad;
          pad.id = b.newId<PadId>();
          pad.position = fromFile(mm(7, 8)); // and no shape
          b.pads.put(pad);
        }) == std::pair(mm(7, 8), mm(7, 8)));
  CHECK(extent([&](Board& b) {
          b.info.outline =
              fromFile(std::vector<Polygon>{{ring, {}}, {{mm(10, 10), mm(11, 10), mm(11, 11)}, {}}});
          Area area; // beside the outline it does not count
          area.id = b.newId<AreaId>();
          area.polygon.outer = {mm(100, 100), mm(101, 100), mm(101, 101)};
          b.areas.put(area);
        }) == std::pair(mm(-1, -2), mm(11, 11)));
}

TEST_CASE("how much copper is drawn is as the board says, else told by any copper beside pads") {
  Board board;
  CHECK(drawnCopper(board) == DrawnCopper::points);
  Board tracks = board, vias = board, areas = board;
  Track track;
  track.id = tracks.newId<TrackId>();
  tracks.tracks.put(track);
  CHECK(drawnCopper(tracks) == DrawnCopper::everything);
  Via via;
  via.id = vias.newId<ViaId>();
  vias.vias.put(via);
  CHECK(drawnCopper(vias) == DrawnCopper::everything);
  Area area;
  area.id = areas.newId<AreaId>();
  areas.areas.put(area);
  CHECK(drawnCopper(areas) == DrawnCopper::everything);
  areas.info.copper = fromFile(DrawnCopper::tracks);
  CHECK(drawnCopper(areas) == DrawnCopper::tracks);
  CHECK(summarize(tracks) == BoardSummary{0, 0, 0, 1, 0, 0, Size{}});
  CHECK(summarize(vias) == BoardSummary{0, 0, 0, 0, 1, 0, Size{}});
}

TEST_CASE("rows and pins of a connector are counted on both sides of their limits") {
  for (const std::size_t pins : {1U, 10'000U})
    CHECK(makeConnectorBoard("J1", pins));
  CHECK(makeConnectorBoard("J1", 20, 20)->pins[19].name == "Y1");
  CHECK(makeConnectorBoard("J1", 4, 2)->pins[1].name == "A2");
  CHECK(makeConnectorBoard("J1", 4, 2)->pins[2].name == "B1");
  const Board one = *makeConnectorBoard("J1", 2);
  CHECK(one.pins[1].name == "2");
  CHECK(one.parts[0].kind == fromUser(PartKind::connector));
  CHECK(one.parts[0].origin == Origin::user);
  CHECK(one.pins[0].origin == Origin::user);
  CHECK(makeConnectorBoard("J1", 10, 0).error().text() == "a connector has from 1 to 20 rows (found 0)");
  CHECK(makeConnectorBoard("J1", 0).error().text() == "a connector has from 1 to 10000 pins (found 0)");
}
