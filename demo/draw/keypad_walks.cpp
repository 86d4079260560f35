#include "keypad_walks.h"

#include <cmath>
#include <optional>
#include <random>
#include <string>

#include "netmend/board/lookup.h"

namespace netmend::demo {

namespace {

/// In diode mode with the red lead on ground; nothing is OL.
std::optional<double> typicalDrop(const std::string& net) {
  if (net == "GND") return 0.0006;
  if (net.starts_with("KEY_LED")) return 0.431; // 47 Ω to the 3.3 V rail
  if (net.starts_with("KEY_")) return 0.652;    // controller's clamp behind 100 Ω
  if (net == "LED_RTN") return 0.0011;          // 0 Ω link to ground
  if (net == "PWR_KEY") return 0.561;
  return std::nullopt; // the beeper's line ends at a gate
}

double toMillivolts(double volts) {
  return std::round(std::max(0.0, volts) * 1000.0) / 1000.0;
}

} // namespace

std::vector<Walk> keypadWalks(const Board& board, int goodBoards) {
  const Lookup lookup(board);
  PartId connector;
  for (const Part& part : board.parts)
    if (part.reference == "J4") connector = part.id;
  std::mt19937 random(20260411);
  std::normal_distribution<double> boardToBoard(0.0, 0.004);
  std::normal_distribution<double> pinToPin(0.0, 0.0025);
  const auto start = std::chrono::sys_days(std::chrono::year(2026) / 4 / 11) + std::chrono::hours(9);

  std::vector<Walk> out;
  for (int i = 0; i <= goodBoards; ++i) {
    const bool faulty = i == goodBoards;
    Walk walk;
    walk.title = "J4, keypad";
    walk.boardUuid = board.info.uuid;
    walk.boardName = board.info.name.value;
    walk.boardRevision = board.info.revision.value;
    walk.serial = faulty ? "TL-0417" : "TL-0" + std::to_string(211 + 7 * i);
    walk.specimen = faulty ? Specimen::faulty : Specimen::good;
    walk.meter = "handheld-4000";
    walk.by = "bench 1";
    walk.condition.temperature = Celsius(faulty ? 22.0 : 21.0 + 0.5 * (i % 4));
    walk.points = pointsOf(lookup, connector);
    const double offset = boardToBoard(random);
    std::chrono::sys_seconds time = start + std::chrono::minutes(20 * i);
    for (const ProbePoint& point : walk.points) {
      const std::string& net = board.nets.find(board.pins.find(point.pin)->net.value)->name;
      Reading reading;
      reading.point = point;
      reading.other = walk.other;
      reading.settling = Settling::settled;
      reading.time = std::chrono::time_point_cast<std::chrono::milliseconds>(time += std::chrono::seconds(3));
      reading.meter = walk.meter;
      reading.by = walk.by;
      reading.condition = walk.condition;
      if (const auto drop = typicalDrop(net)) {
        const double spread = *drop > 0.1 ? offset + pinToPin(random) : 0.1 * pinToPin(random);
        reading.value = toMillivolts(*drop + spread);
      }
      if (faulty && net == "KEY_COL3") reading.value.reset();
      walk.readings.push_back(std::move(reading));
    }
    out.push_back(std::move(walk));
  }
  return out;
}

} // namespace netmend::demo
