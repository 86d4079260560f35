#include "simulation/worlds.h"

#include <algorithm>
#include <set>

#include "netmend/netgraph/line.h"

namespace netmend::simulation {

std::string wordFor(Grade grade) {
  return grade == Grade::copper ? "copper" : grade == Grade::outerCopper ? "outer" : "pins";
}

Board graded(const Board& board, Grade grade) {
  Board out = board;
  if (grade == Grade::copper) return out;
  const auto& order = board.info.layerOrder;
  const auto seen = [&](const Fact<LayerId>& layer) {
    if (grade == Grade::pins || !layer.known()) return false;
    return layer.value == order.front() || (order.size() > 2 && layer.value == order.back());
  };
  for (const Track& track : board.tracks)
    if (!seen(track.layer)) out.tracks.erase(track.id);
  for (const Area& area : board.areas)
    if (!seen(area.layer)) out.areas.erase(area.id);
  for (const Via& via : board.vias)
    if (grade == Grade::pins) out.vias.erase(via.id);
  out.info.copper = fromFile(grade == Grade::pins ? DrawnCopper::points : DrawnCopper::tracks);
  return out;
}

SimBoard simBoard(Board board, std::string name) {
  SimBoard out;
  out.name = std::move(name);
  for (std::size_t i = 0; i < grades.size(); ++i)
    out.known[i] = underWork(graded(board, grades[i]));
  return out;
}

Worlds::Worlds(std::vector<SimBoard> boards, FaultShares shares, MeterProfile meter, std::uint64_t seed)
    : boards_(std::move(boards)), shares_(std::move(shares)), meter_(std::move(meter)), seed_(seed) {}

std::shared_ptr<const BoardLine> Worlds::lineAt(std::size_t board, std::size_t net) const {
  {
    const std::scoped_lock hold(lock_);
    if (const auto found = lines_.find({board, net}); found != lines_.end()) return found->second;
  }
  const BoardUnderWork& truth = boards_[board].known.front();
  const NetId id = truth.board->nets[net].id;
  std::shared_ptr<const BoardLine> line;
  if (auto found = boardLine(*truth.lookup, id)) {
    // Where the program sees another line the question would be another one.
    auto theirs = lineOf(*truth.lookup, *truth.graph, id).nets;
    auto ours = found->nets;
    std::sort(theirs.begin(), theirs.end());
    std::sort(ours.begin(), ours.end());
    if (ours == theirs) line = std::make_shared<const BoardLine>(std::move(*found));
  }
  const std::scoped_lock hold(lock_);
  return lines_[{board, net}] = line;
}

namespace {

std::size_t chipsOn(const BoardLine& line) {
  std::set<PartId> chips;
  for (const LinePin& pin : line.pins)
    if (pin.kind == PartKind::chip) chips.insert(pin.part);
  return chips.size();
}

} // namespace

std::optional<Worlds::World> Worlds::at(std::uint64_t number) const {
  return at(number, meter_);
}

std::optional<Worlds::World> Worlds::at(std::uint64_t number, const MeterProfile& meter) const {
  const Seeding seeding = number >= evenlyFrom    ? Seeding::evenly
                          : number >= outsideFrom ? Seeding::outside
                                                  : Seeding::byShares;
  std::seed_seq mixed{static_cast<std::uint32_t>(seed_), static_cast<std::uint32_t>(number), 0x90b5U};
  Random random(mixed);
  const bool severalChips = chance(random, 0.5);
  for (int attempt = 0; attempt < 2000; ++attempt) {
    const std::size_t board = random() % boards_.size();
    const auto& nets = boards_[board].known.front().board->nets;
    const std::uint64_t jobSeed = random();
    if (nets.empty()) continue;
    const auto line = lineAt(board, random() % nets.size());
    if (!line || line->parting.empty() || (severalChips && chipsOn(*line) < 2)) continue;
    if (auto job = drawJob(boards_[board].truth(), line, shares_, meter, jobSeed, seeding))
      return World{board, std::move(*job)};
  }
  return std::nullopt;
}

} // namespace netmend::simulation
