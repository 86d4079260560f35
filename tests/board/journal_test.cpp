#include "netmend/board/journal.h"

#include <catch2/catch.hpp>

#include <csignal>
#include <filesystem>
#include <fstream>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include "netmend/base/file.h"
#include "random_board.h"

#include "support/effort.h"
#include "support/seed.h"

namespace fs = std::filesystem;
using namespace netmend;
using netmend::test::RandomBoard;

namespace {

struct TemporaryFolder {
  fs::path path = fs::temp_directory_path() / ("netmend-journal-test-" + std::to_string(::getpid()));
  fs::path file = path / "j";
  TemporaryFolder() { fs::create_directories(path); }
  ~TemporaryFolder() { fs::remove_all(path); }
};

/// The edit that stands at this place of every test journal.
Edit numberedEdit(std::uint64_t i) {
  Net net;
  net.id = NetId(i + 1);
  net.name = std::string(i % 50 * 20, 'n') + std::to_string(i);
  return Edit{}.put(net);
}

std::string contentAfter(const fs::path& file, std::size_t edits) {
  fs::remove(file);
  auto opened = openJournal(file, "k");
  REQUIRE(opened);
  for (std::size_t i = 0; i < edits; ++i)
    REQUIRE(opened->journal.append(numberedEdit(i)));
  return readFile(file).value();
}

std::string errorOf(const fs::path& file, const std::string& content) {
  REQUIRE(writeFileAtomically(file, content));
  const auto opened = openJournal(file, "k");
  // Damage is for people to look at: the file stays as it is.
  CHECK((opened || readFile(file).value() == content));
  return opened ? "none" : opened.error().text().substr(file.string().size() + 2);
}

} // namespace

TEST_CASE("edits of every kind come back from a journal as they were, and lead to the same board") {
  const unsigned seed = netmend::testSeed();
  CAPTURE(seed);
  const TemporaryFolder folder;
  RandomBoard random(seed);
  const Board full = random.board(20);
  std::vector<Edit> edits(2);
  const auto put = [&](const auto& table) {
    for (const auto& object : table)
      edits[0].put(object);
  };
  put(full.layers), put(full.parts), put(full.nets), put(full.pins), put(full.pads);
  put(full.tracks), put(full.vias), put(full.areas), put(full.zones), put(full.underlays);
  edits[1].changes.emplace_back(InfoChange{full.info});
  edits.push_back(Edit{}.remove<Pad>(full.pads[0].id).remove<Track>(full.tracks[3].id));
  {
    auto opened = openJournal(folder.file, "k");
    REQUIRE(opened);
    CHECK(opened->edits.empty());
    for (const Edit& edit : edits)
      REQUIRE(opened->journal.append(edit));
  }
  auto again = openJournal(folder.file, "k");
  INFO((again ? "" : again.error().text()));
  REQUIRE(again);
  CHECK(again->edits == edits);
  CHECK_FALSE(again->droppedTorn);
  Board board;
  REQUIRE(replay(board, again->edits));
  Board expected = full;
  expected.pads.erase(full.pads[0].id);
  expected.tracks.erase(full.tracks[3].id);
  CHECK(board == expected);
}

TEST_CASE("a journal cut off anywhere in its last line loses that line only, and goes on from there") {
  const TemporaryFolder folder;
  const std::string three = contentAfter(folder.file, 3);
  const std::string two = contentAfter(folder.file, 2);
  REQUIRE(three.starts_with(two));
  for (std::size_t length = two.size(); length <= three.size(); ++length) {
    REQUIRE(writeFileAtomically(folder.file, three.substr(0, length)));
    auto opened = openJournal(folder.file, "k");
    REQUIRE(opened);
    const bool whole = length == three.size();
    REQUIRE(opened->edits.size() == (whole ? 3U : 2U));
    REQUIRE(opened->droppedTorn == (!whole && length != two.size()));
    REQUIRE(opened->journal.append(numberedEdit(7)));
    REQUIRE(readFile(folder.file).value().starts_with(whole ? three : two));
  }
  // Blocks that never reached the disk read as zeros, even where a later block with the line's end did.
  std::string holes = three;
  for (std::size_t i = two.size() + 2; i + 5 < holes.size(); ++i)
    holes[i] = '\0';
  REQUIRE(writeFileAtomically(folder.file, holes));
  CHECK(openJournal(folder.file, "k").value().edits.size() == 2);
}

TEST_CASE("a journal whose very first line is cut off begins anew") {
  const TemporaryFolder folder;
  const std::string header = contentAfter(folder.file, 0);
  for (std::size_t length = 0; length <= header.size(); ++length) {
    REQUIRE(writeFileAtomically(folder.file, header.substr(0, length)));
    REQUIRE(openJournal(folder.file, "k"));
    REQUIRE(readFile(folder.file).value() == header);
  }
}

TEST_CASE("any other damage of a journal is an error with its line, and the file is left as it is") {
  const TemporaryFolder folder;
  const std::string good = contentAfter(folder.file, 3);
  const std::string header = good.substr(0, good.find('\n') + 1);
  std::string middle = good;
  middle[good.find("put")] = 'x';
  CHECK(errorOf(folder.file, middle).starts_with("line 2 /changes/0: is no change"));
  CHECK(errorOf(folder.file, header + "{\"changes\": [}\n").starts_with("line 2: is not valid JSON"));
  CHECK(errorOf(folder.file, header + "\n").starts_with("line 2: is empty"));
  CHECK(errorOf(folder.file, header + "{}\n").starts_with("line 2: is no edit"));
  CHECK(errorOf(folder.file, header + R"({"changes": [{"put": "screw", "object": {}}]})" + "\n")
            .starts_with("line 2 /changes/0/put: is no kind of object"));
  CHECK(errorOf(folder.file,
                header + R"({"changes": [{"put": "net", "object": {"id": 1, "nane": "x"}}]})" + "\n")
            .starts_with("line 2 /changes/0/object/nane: is no field of this"));
  CHECK(errorOf(folder.file, "part,pin\nJ1,1\n").starts_with("line 1: is no journal"));
  CHECK(errorOf(folder.file, "a letter").starts_with("line 1: is no journal"));
  CHECK(errorOf(folder.file,
                R"({"format": "netmend-journal", "version": 2})"
                "\n") == "line 1: written by a newer Netmend: journal format 2, this one reads up to 1");
  CHECK(wordsOf(openJournal(folder.path, "k").error().message) == "is not a regular file");
  CHECK_FALSE(openJournal(folder.path / "none" / "j", "k"));
  REQUIRE(writeFileAtomically(folder.file, good));
  CHECK(wordsOf(openJournal(folder.file, "other").error().message) ==
        "belongs to another board or another state of it");
}

TEST_CASE("a journal is open in one program only, and refuses what JSON cannot hold") {
  const TemporaryFolder folder;
  auto opened = openJournal(folder.file, "k");
  REQUIRE(opened);
  CHECK(wordsOf(openJournal(folder.file, "k").error().message) == "is open in another program");
  Net net;
  net.id = NetId(1);
  net.name = "\xff";
  CHECK_FALSE(opened->journal.append(Edit{}.put(net)));
  REQUIRE(opened->journal.append(numberedEdit(0)));
  REQUIRE(opened->journal.restart("next"));
  REQUIRE(opened->journal.append(numberedEdit(5)));
  opened = OpenedJournal{Journal(std::move(opened->journal)), {}, false};
  REQUIRE(opened->journal.append(numberedEdit(6)));
  { const Journal closed(std::move(opened->journal)); }
  const auto again = openJournal(folder.file, "next");
  REQUIRE(again);
  CHECK(again->edits == std::vector{numberedEdit(5), numberedEdit(6)});
}

TEST_CASE("replay stops at the edit that does not fit and names its line") {
  Board board;
  const auto result = replay(board, {numberedEdit(0), Edit{}.remove<Net>(NetId(9))});
  REQUIRE_FALSE(result);
  CHECK(wordsOf(result.error().place) == "line 3 /changes/0");
}

TEST_CASE("a full disk costs an error, and what was there before stays readable") {
  // Every write to this device fails as on a full disk; as a journal it is refused before that.
  CHECK_FALSE(openJournal("/dev/full", "k"));
  const TemporaryFolder folder;
  auto opened = openJournal(folder.file, "k");
  REQUIRE(opened);
  REQUIRE(opened->journal.append(numberedEdit(0)));
  const auto before = readFile(folder.file).value();
  // A limit on the file's size stands in for the disk; the signal that comes with it is not wanted.
  const pid_t child = ::fork();
  REQUIRE(child >= 0);
  if (child == 0) {
    std::signal(SIGXFSZ, SIG_IGN);
    const rlimit most{before.size() + 10, before.size() + 10};
    ::setrlimit(RLIMIT_FSIZE, &most);
    const bool refused = !opened->journal.append(numberedEdit(1));
    ::_exit(refused ? 0 : 1);
  }
  int status = 0;
  REQUIRE(::waitpid(child, &status, 0) == child);
  CHECK(status == 0);
  CHECK(readFile(folder.file).value() == before);
}

namespace {

/// Appends edits without end and says after each that it is done.
[[noreturn]] void appendForEver(const fs::path& file, int acknowledge) {
  auto opened = openJournal(file, "k");
  if (!opened) ::_exit(2);
  for (std::uint64_t i = opened->edits.size();; ++i) {
    if (!opened->journal.append(numberedEdit(i))) ::_exit(3);
    if (::write(acknowledge, "x", 1) != 1) ::_exit(4);
  }
}

/// Kills a child while it appends; how many edits it had acknowledged.
std::size_t killWhileAppending(const fs::path& file, unsigned microseconds) {
  int ends[2];
  REQUIRE(::pipe(ends) == 0);
  const pid_t child = ::fork();
  REQUIRE(child >= 0);
  if (child == 0) {
    ::close(ends[0]);
    appendForEver(file, ends[1]);
  }
  ::close(ends[1]);
  std::size_t acknowledged = 0;
  char buffer[4096];
  // The clock starts at the first edit: a child that is killed before it wrote anything shows nothing.
  ssize_t n = ::read(ends[0], buffer, 1);
  acknowledged += static_cast<std::size_t>(std::max<ssize_t>(n, 0));
  ::usleep(microseconds);
  ::kill(child, SIGKILL);
  int status = 0;
  REQUIRE(::waitpid(child, &status, 0) == child);
  REQUIRE(WIFSIGNALED(status));
  while ((n = ::read(ends[0], buffer, sizeof buffer)) > 0)
    acknowledged += static_cast<std::size_t>(n);
  ::close(ends[0]);
  return acknowledged;
}

void killOften(int times) {
  const unsigned seed = netmend::testSeed();
  CAPTURE(seed);
  std::mt19937 random(seed);
  const TemporaryFolder folder;
  std::size_t acknowledged = 0;
  for (int i = 0; i < times; ++i) {
    acknowledged +=
        killWhileAppending(folder.file, std::uniform_int_distribution<unsigned>(0, 20'000)(random));
    const auto opened = openJournal(folder.file, "k");
    INFO((opened ? "" : opened.error().text()));
    REQUIRE(opened);
    // The one that was being written may be there although nobody heard of it.
    REQUIRE(opened->edits.size() >= acknowledged);
    REQUIRE(opened->edits.size() <= acknowledged + 1);
    for (std::size_t k = 0; k < opened->edits.size(); ++k)
      REQUIRE(opened->edits[k] == numberedEdit(k));
    acknowledged = opened->edits.size();
  }
  CHECK(acknowledged >= static_cast<std::size_t>(times));
}

} // namespace

TEST_CASE("after a kill at any moment every acknowledged edit is in the journal") {
  killOften(netmend::rounds(25, 5));
}

TEST_CASE("after 200 kills every acknowledged edit is in the journal", "[.full]") {
  killOften(200);
}
