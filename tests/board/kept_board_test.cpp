#include "netmend/board/kept_board.h"

#include <catch2/catch.hpp>

#include <chrono>
#include <csignal>
#include <cstdlib>
#include <fstream>
#include <random>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

#include "netmend/base/file.h"
#include "netmend/board/board_file.h"
#include "random_board.h"
#include "support/effort.h"
#include "support/seed.h"

namespace fs = std::filesystem;
using namespace netmend;

namespace {

struct KeptFolder {
  fs::path path = fs::temp_directory_path() / ("netmend-kept-" + std::to_string(::getpid()));
  KeptFolder() { fs::create_directories(path); }
  ~KeptFolder() { fs::remove_all(path); }
  [[nodiscard]] fs::path board() const { return path / "drawn.netmend-board.json"; }
};

/// The net that says how many edits there have been.
Edit count(std::uint64_t number) {
  Net net;
  net.id = NetId(1);
  net.name = std::to_string(number);
  net.origin = Origin::user;
  return Edit{}.put(net);
}

std::uint64_t counted(const Board& board) {
  return board.nets.empty() ? 0 : std::strtoull(board.nets[0].name.c_str(), nullptr, 10);
}

/// Draws and saves until it is killed, and says of each edit that it is kept.
[[noreturn]] void live(const fs::path& file, int tell) {
  auto kept = KeptBoard::open(file);
  if (!kept) ::_exit(1);
  for (std::uint64_t number = counted(*kept->board()) + 1;; ++number) {
    if (!kept->apply(count(number))) ::_exit(2);
    if (::write(tell, &number, sizeof number) != sizeof number) ::_exit(3);
    if (number % 5 == 0 && !kept->save()) ::_exit(4);
  }
}

} // namespace

TEST_CASE(
    "a board in its file keeps edits at once, gives back what undoes them, and leaves no journal behind") {
  const KeptFolder folder;
  const fs::path file = folder.board();
  {
    auto kept = KeptBoard::create(file, std::make_shared<const Board>());
    REQUIRE(kept);
    const std::string digest = kept->digest();
    CHECK_FALSE(kept->unsaved());
    const auto before = kept->board();
    const auto inverse = kept->apply(count(7));
    REQUIRE(inverse);
    CHECK(kept->unsaved());
    CHECK(counted(*before) == 0); // what was given out stays
    CHECK(counted(*kept->board()) == 7);
    CHECK(fs::exists(journalOf(file)));
    CHECK_FALSE(kept->apply(Edit{}.remove<Pad>(PadId(99))));
    CHECK(counted(*kept->board()) == 7);
    auto second = KeptBoard::open(file);
    REQUIRE_FALSE(second);
    CHECK(second.error().text().find("is open in another program") != std::string::npos);
    REQUIRE(kept->apply(*inverse));
    CHECK(*kept->board() == *before);
    REQUIRE(kept->apply(count(8)));
    REQUIRE(kept->save());
    CHECK(kept->digest() != digest);
  }
  CHECK_FALSE(fs::exists(journalOf(file)));
  const auto text = readFile(file);
  REQUIRE(text);
  CHECK(counted(*boardFromText(*text)) == 8);
}

TEST_CASE("what was not saved is there again, and a journal of another file is put aside") {
  const KeptFolder folder;
  const fs::path file = folder.board();
  {
    auto kept = KeptBoard::create(file, std::make_shared<const Board>());
    REQUIRE(kept->apply(count(3)));
  }
  REQUIRE(fs::exists(journalOf(file)));
  {
    auto again = KeptBoard::open(file);
    REQUIRE(again);
    CHECK(again->unsaved());
    CHECK(counted(*again->board()) == 3);
  }
  Board other;
  other.info.uuid = "another";
  REQUIRE(writeBoardFile(file, other));
  auto opened = KeptBoard::open(file);
  REQUIRE(opened);
  CHECK(opened->board()->info.uuid == "another");
  CHECK(opened->board()->nets.empty());
  CHECK(fs::exists(journalOf(file).string() + "-old"));
}

TEST_CASE("killed between the journal's new beginning and the file's, the board is the new one") {
  const KeptFolder folder;
  const fs::path file = folder.board();
  REQUIRE(writeBoardFile(file, Board()));
  Board after;
  REQUIRE(apply(after, count(5)));
  const fs::path next = file.string() + ".next";
  REQUIRE(writeBoardFile(next, after));
  SECTION("the journal was being begun") {
    std::ofstream(journalOf(file)) << R"({"board":)";
  }
  SECTION("it is empty") {
    std::ofstream out(journalOf(file));
  }
  SECTION("it begins from the next file") {
    const auto text = readFile(next);
    REQUIRE(openJournal(journalOf(file), [&] {
      auto kept =
          KeptBoard::create(folder.path / "x.netmend-board.json", std::make_shared<const Board>(after));
      return kept->digest();
    }()));
  }
  auto kept = KeptBoard::open(file);
  REQUIRE(kept);
  CHECK(counted(*kept->board()) == 5);
  CHECK_FALSE(fs::exists(next));
}

TEST_CASE("a next file that nobody had got to is left out") {
  const KeptFolder folder;
  const fs::path file = folder.board();
  {
    auto kept = KeptBoard::create(file, std::make_shared<const Board>());
    REQUIRE(kept->apply(count(2)));
  }
  Board after;
  REQUIRE(apply(after, count(9)));
  REQUIRE(writeBoardFile(file.string() + ".next", after));
  auto kept = KeptBoard::open(file);
  REQUIRE(kept);
  CHECK(counted(*kept->board()) == 2);
  CHECK_FALSE(fs::exists(file.string() + ".next"));
}

TEST_CASE("200 kills at random moments lose nothing that was said to be kept") {
  const unsigned seed = testSeed();
  CAPTURE(seed);
  std::mt19937 random(seed);
  const KeptFolder folder;
  const fs::path file = folder.board();
  REQUIRE(KeptBoard::create(file, std::make_shared<const Board>()));
  std::uint64_t kept = 0;
  const int kills = sanitized ? 20 : 200;
  for (int kill = 0; kill < kills; ++kill) {
    int pipe[2];
    REQUIRE(::pipe(pipe) == 0);
    const pid_t child = ::fork();
    REQUIRE(child >= 0);
    if (child == 0) live(file, pipe[1]);
    ::close(pipe[1]);
    std::uint64_t said = kept;
    // The first edit says that it lives; then some moment within the next ones.
    REQUIRE(::read(pipe[0], &said, sizeof said) == sizeof said);
    std::this_thread::sleep_for(std::chrono::microseconds(random() % 15'000));
    ::kill(child, SIGKILL);
    int status = 0;
    ::waitpid(child, &status, 0);
    std::uint64_t next = 0;
    while (::read(pipe[0], &next, sizeof next) == sizeof next)
      said = next;
    ::close(pipe[0]);
    const auto opened = KeptBoard::open(file);
    INFO("kill " << kill << (opened ? "" : ": " + opened.error().text()));
    REQUIRE(opened);
    kept = counted(*opened->board());
    // The last one may have been kept just before it could be said.
    REQUIRE(kept >= said);
    REQUIRE(kept <= said + 1);
  }
}
