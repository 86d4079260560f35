#pragma once

#include <array>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <vector>

#include "netmend/casework/board_under_work.h"
#include "simulation/bench_job.h"

namespace netmend::simulation {

/// How much of the copper the program is told of.
enum class Grade {
  copper,      ///< all of it
  outerCopper, ///< no tracks and areas on inner layers; of two layers: none on the bottom
  pins         ///< pads and nets only
};
inline constexpr std::array<Grade, 3> grades{Grade::copper, Grade::outerCopper, Grade::pins};
[[nodiscard]] std::string wordFor(Grade grade);
/// The board as that grade has it; ids stay.
[[nodiscard]] Board graded(const Board& board, Grade grade);

/// One board with what the program knows of it at each grade.
struct SimBoard {
  std::string name;
  std::array<BoardUnderWork, 3> known; ///< by grade; the first is also the truth
  [[nodiscard]] const Lookup& truth() const { return *known.front().lookup; }
};
[[nodiscard]] SimBoard simBoard(Board board, std::string name);

/// Numbers from here on: faults from outside, and each kind as often.
inline constexpr std::uint64_t outsideFrom = 1'000'000;
inline constexpr std::uint64_t evenlyFrom = 2'000'000;

/// Jobs by number: every other line has two chips or more. The line, what is behind it and the fault come
/// from seed and number alone.
class Worlds {
public:
  Worlds(std::vector<SimBoard> boards, FaultShares shares, MeterProfile meter, std::uint64_t seed);
  /// Nothing where no board has a line.
  struct World {
    std::size_t board = 0;
    BenchJob job;
  };
  [[nodiscard]] std::optional<World> at(std::uint64_t number) const;
  /// The same board, line and design on another meter.
  [[nodiscard]] std::optional<World> at(std::uint64_t number, const MeterProfile& meter) const;
  [[nodiscard]] const std::vector<SimBoard>& boards() const { return boards_; }
  [[nodiscard]] const FaultShares& shares() const { return shares_; }

private:
  [[nodiscard]] std::shared_ptr<const BoardLine> lineAt(std::size_t board, std::size_t net) const;

  std::vector<SimBoard> boards_;
  FaultShares shares_;
  MeterProfile meter_;
  std::uint64_t seed_;
  mutable std::mutex lock_;
  mutable std::map<std::pair<std::size_t, std::size_t>, std::shared_ptr<const BoardLine>>
      lines_; ///< null: none
};

} // namespace netmend::simulation
