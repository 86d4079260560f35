#include <catch2/catch.hpp>

#include <cstdio>

#include "play.h"
#include "support/seed.h"

using namespace netmend;
using namespace netmend::testing;
namespace fs = std::filesystem;

namespace {

const fs::path demo = fs::path(NETMEND_SOURCE_DIR) / "demo" / "device" / "tide-logger.netmend-board.json";
const fs::path real = "/usr/share/kicad/demos"; // of the package kicad-demos

Played play(int events, const std::vector<fs::path>& boards) {
  const unsigned seed = testSeed();
  std::printf("hand: seed %u\n", seed);
  std::fflush(stdout);
  for (const fs::path& board : boards)
    REQUIRE(fs::exists(board));
  const Played played = letPlay({.seed = seed, .events = events, .boards = boards});
  const Ledger::Come& come = played.come;
  std::printf("hand: %d events, %ld handlers, %d readings of walks taken, %d things taken back, %d checks of "
              "the book\n"
              "  %zu jobs with %zu readings, %zu repairs, %zu proofs, %zu photos, %zu charges; %zu over; %zu "
              "good walks\n"
              "  most work: %s\n  longest: %s\n",
              played.events, played.deliveries, played.taken, played.takenBack, played.checks, come.jobs,
              come.readings, come.repairs, come.proofs, come.photos, come.charges, come.handedOver,
              come.goodWalks, played.mostWork.text().c_str(), played.longest.text().c_str());
  CAPTURE(seed);
  INFO(played.lately);
  for (const Handler& slow : played.over) {
    INFO(slow.text());
    CHECK(false);
  }
  for (const Handler& waits : played.waiting) {
    INFO("waits in an event loop of its own: " << waits.text());
    CHECK(false);
  }
  for (const std::string& lost : played.lost) {
    INFO(lost);
    CHECK(false);
  }
  CHECK(played.events >= events);
  CHECK(played.checks >= events / 300);
  CHECK(played.taken > 0);
  return played;
}

} // namespace

TEST_CASE("a thousand random events at the window: no slow handler, nothing lost") {
  play(1000,
       {demo, real / "ecc83" / "ecc83-pp.kicad_pcb", real / "pic_programmer" / "pic_programmer.kicad_pcb"});
}

TEST_CASE("twenty thousand random events at the window: no slow handler, nothing lost", "[.full]") {
  std::vector<fs::path> boards{demo};
  for (const char* each :
       {"complex_hierarchy/complex_hierarchy", "custom_pads_test/custom_pads_test", "ecc83/ecc83-pp_v2",
        "flat_hierarchy/flat_hierarchy", "interf_u/interf_u",
        "kit-dev-coldfire-xilinx_5213/kit-dev-coldfire-xilinx_5213", "microwave/microwave",
        "pic_programmer/pic_programmer", "stickhub/StickHub", "test_pads_inside_pads/test_pads_inside_pads",
        "test_xil_95108/carte_test", "video/video"})
    boards.push_back(real / (std::string(each) + ".kicad_pcb"));
  play(20'000, boards);
}
