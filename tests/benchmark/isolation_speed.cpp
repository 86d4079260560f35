#include <chrono>

#include <fmt/format.h>

#include "isolation_trials.h"
#include "report.h"

namespace netmend::benchmarks {

namespace {

Point at(int pad) {
  return {Length::fromMm(2.0 * pad), Length()};
}

/// A chain of 100 chips with five pads each, and a track from pad to pad.
Board chain(NetId& net) {
  Board board;
  Layer layer;
  layer.id = board.newId<LayerId>();
  layer.name = "top";
  board.layers.put(layer);
  board.info.layerOrder = {layer.id};
  Net line;
  line.id = net = board.newId<NetId>();
  line.name = "LONG";
  board.nets.put(line);
  const auto track = [&](Point from, Point to) {
    Track added;
    added.id = board.newId<TrackId>();
    added.start = from;
    added.end = to;
    added.layer = fromFile(layer.id);
    added.width = fromFile(Length::fromMm(0.2));
    added.net = fromFile(net);
    board.tracks.put(added);
  };
  PartId chip;
  for (int i = 0; i < 500; ++i) {
    if (i % 5 == 0) {
      Part part;
      part.id = chip = board.newId<PartId>();
      part.reference = fmt::format("U{}", 1 + i / 5);
      part.kind = fromFile(PartKind::chip);
      board.parts.put(part);
    }
    Pin pin;
    pin.id = board.newId<PinId>();
    pin.part = chip;
    pin.name = fmt::format("{}", 1 + i % 5);
    pin.net = fromFile(net);
    board.pins.put(pin);
    Pad pad;
    pad.id = board.newId<PadId>();
    pad.pin = pin.id;
    pad.position = fromFile(at(i));
    pad.shape = fromFile(PadShape::circle);
    pad.size = fromFile(Size{Length::fromMm(0.5), Length::fromMm(0.5)});
    pad.reach = fromFile(PadReach::top);
    pad.access = fromFile(Access::open);
    board.pads.put(pad);
    if (i > 0) track(at(i - 1), at(i));
  }
  return board;
}

} // namespace

LargeLine largeLine(const RepairData& data, const MeterProfile& meter) {
  NetId net;
  const BoardUnderWork board = underWork(chain(net));
  FaultQuestion question;
  question.net = net;
  question.meter = meter.id;
  // A break behind the 397th pad: a hundred chips before it, twenty behind.
  for (int i = 0; i < 100; ++i) {
    Reading reading;
    reading.point.pin = board.board->pins[static_cast<std::size_t>(i * 5)].id;
    reading.point.label = pinLabel(*board.board, reading.point.pin);
    reading.meter = meter.id;
    reading.value = i * 5 < 397 ? 0.401 + 0.001 * (i % 3) : 0.452 + 0.001 * (i % 2);
    question.readings.push_back(reading);
  }
  LargeLine out;
  std::optional<FaultCase> whole;
  out.allMs = millisecondsOf([&] {
    if (auto solved = solveFault(board, question, data)) whole = std::move(*solved);
  });
  if (!whole) return out;
  out.edges = num_edges(whole->line.graph);
  question.readings.push_back(question.readings.front());
  question.readings.back().point.pin = board.board->pins[398].id;
  question.readings.back().point.label = pinLabel(*board.board, board.board->pins[398].id);
  question.readings.back().value = 0.452;
  out.oneMoreMs = millisecondsOf([&] { keep(solveFault(board, question, data, &*whole)); });
  return out;
}

} // namespace netmend::benchmarks
