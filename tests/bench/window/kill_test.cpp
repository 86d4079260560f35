#include <catch2/catch.hpp>

#include <QTemporaryDir>

#include <chrono>
#include <csignal>
#include <fcntl.h>
#include <optional>
#include <poll.h>
#include <random>
#include <spawn.h>
#include <sqlite3.h>
#include <sstream>
#include <sys/wait.h>
#include <unistd.h>
#include <utility>

#include "netmend/jobbook/job_book.h"
#include "netmend/probing/reading_entry.h"
#include "netmend/probing/walk_file.h"
#include "support/seed.h"
#include "walk_life.h"

using namespace netmend;
using namespace netmend::testing;
namespace fs = std::filesystem;
using Clock = std::chrono::steady_clock;

namespace {

/// When a life ends: so many readings after the window opened, or so long after it, or after its start.
struct Death {
  std::optional<std::size_t> readings;
  std::chrono::milliseconds after{};
  bool fromStart = false;
};

Death deathFrom(std::mt19937& random) {
  const auto dice = [&](int most) { return std::uniform_int_distribution<int>(1, most)(random); };
  const int kind = dice(8);
  if (kind <= 4) return {static_cast<std::size_t>(dice(20)), {}, false};
  return {std::nullopt, std::chrono::milliseconds(dice(600)), kind == 8};
}

/// A bench window in a process of its own, and all that it told.
class Life {
public:
  Life(const fs::path& store, unsigned seed) {
    int ends[2];
    REQUIRE(::pipe2(ends, O_CLOEXEC) == 0);
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_adddup2(&actions, ends[1], STDOUT_FILENO);
    std::vector<std::string> arguments{WALK_LIFE, store.string(), std::to_string(seed)};
    // The settings, and with them what the window remembers, are the store's own.
    std::vector<std::string> environment{"XDG_CONFIG_HOME=" + store.string(), "QT_QPA_PLATFORM=offscreen"};
    for (char** each = environ; *each != nullptr; ++each)
      if (!std::string_view(*each).starts_with("XDG_CONFIG_HOME=") &&
          !std::string_view(*each).starts_with("QT_QPA_PLATFORM="))
        environment.emplace_back(*each);
    const int failed = ::posix_spawn(&process_, WALK_LIFE, &actions, nullptr, pointers(arguments).data(),
                                     pointers(environment).data());
    posix_spawn_file_actions_destroy(&actions);
    ::close(ends[1]);
    from_ = ends[0];
    REQUIRE(failed == 0);
  }
  Life(const Life&) = delete;
  Life& operator=(const Life&) = delete;
  ~Life() {
    if (process_ > 0) kill();
    ::close(from_);
  }

  void endBy(const Death& death) {
    auto deadline = Clock::now() + (death.fromStart ? death.after : std::chrono::seconds(60));
    std::size_t readings = 0;
    while (Clock::now() < deadline) {
      if (!listen(deadline)) break;
      if (told.back().front() == life::opened && !death.fromStart && !death.readings)
        deadline = Clock::now() + death.after;
      if (told.back().front() == life::taken && ++readings == death.readings) break;
    }
    kill();
    while (listen(Clock::time_point::max())) {
    }
  }

  std::vector<std::vector<std::string>> told;
  bool killed = false; ///< else it had ended before

private:
  static std::vector<char*> pointers(std::vector<std::string>& texts) {
    std::vector<char*> out;
    for (std::string& text : texts)
      out.push_back(text.data());
    out.push_back(nullptr);
    return out;
  }
  void kill() {
    ::kill(process_, SIGKILL);
    int status = 0;
    ::waitpid(process_, &status, 0);
    killed = WIFSIGNALED(status);
    process_ = -1;
  }
  /// One more line; false when none came in time, or there are no more.
  bool listen(Clock::time_point until) {
    while (true) {
      if (const auto end = text_.find('\n'); end != std::string::npos) {
        std::istringstream line(text_.substr(0, end));
        text_.erase(0, end + 1);
        std::vector<std::string> words;
        for (std::string word; std::getline(line, word, '\t');)
          words.push_back(word);
        told.push_back(words);
        return true;
      }
      int milliseconds = -1;
      if (until != Clock::time_point::max())
        milliseconds = static_cast<int>(
            std::chrono::ceil<std::chrono::milliseconds>(std::max(Clock::duration{}, until - Clock::now()))
                .count());
      pollfd waiting{from_, POLLIN, 0};
      if (::poll(&waiting, 1, milliseconds) <= 0) return false;
      char part[4096];
      const ssize_t n = ::read(from_, part, sizeof part);
      if (n <= 0) return false;
      text_.append(part, static_cast<std::size_t>(n));
    }
  }

  pid_t process_ = -1;
  int from_ = -1;
  std::string text_;
};

using Shown = std::vector<std::string>; ///< point and value of each reading, in the order taken

std::string textOf(const Reading& reading) {
  return reading.point.label + " " + readingText(reading.value, reading.mode);
}

/// What the screens of all lives so far have shown, and what was being done at the last moment.
struct Account {
  Shown bad;
  Shown good;
  std::vector<Shown> keptHere; ///< good walks that undo would take out of the book again, the last first
  std::size_t keptWalks = 0;
  std::size_t shownInAll = 0;
  std::string job = "-";
  std::string doing; ///< `undoing` or `keeping`

  Shown& at(const std::string& which) { return which == "G" ? good : bad; }

  void hear(const std::vector<std::string>& words) {
    const std::string& what = words.front();
    INFO(what << (words.size() > 1 ? " " + words[1] : ""));
    doing.clear();
    if (what == life::opened) {
      if (job != "-") CHECK(words.at(1) == job);
      CHECK(words.at(2) == std::to_string(bad.size()));
      CHECK(words.at(3) == std::to_string(good.size()));
      keptHere.clear();
    } else if (what == life::taken) {
      at(words.at(1)).push_back(words.at(2) + " " + words.at(3));
      ++shownInAll;
    } else if (what == life::undone) {
      REQUIRE_FALSE(at(words.at(1)).empty());
      at(words.at(1)).pop_back();
    } else if (what == life::undoing || what == life::keeping) {
      doing = what;
    } else if (what == life::kept) {
      ++keptWalks;
      keptHere.push_back(std::exchange(good, {}));
    } else if (what == life::unkept) {
      REQUIRE_FALSE(keptHere.empty());
      --keptWalks;
      good = std::move(keptHere.back());
      keptHere.pop_back();
    } else {
      REQUIRE(what == life::asBefore);
    }
  }
};

/// What is there holds all that was shown; the one that was being taken or taken back may be there or not.
void checkReadings(const Shown& there, const Shown& shown, bool undoing) {
  const std::size_t most = undoing ? shown.size() : shown.size() + 1;
  const std::size_t least = undoing ? shown.size() - std::min<std::size_t>(1, shown.size()) : shown.size();
  INFO("there " << there.size() << ", shown " << shown.size() << (undoing ? ", one being undone" : ""));
  REQUIRE(there.size() >= least);
  REQUIRE(there.size() <= most);
  for (std::size_t i = 0; i < std::min(there.size(), shown.size()); ++i)
    REQUIRE(there[i] == shown[i]);
}

std::string integrityOf(const fs::path& book) {
  sqlite3* db = nullptr;
  REQUIRE(sqlite3_open(book.c_str(), &db) == SQLITE_OK);
  std::string out;
  const auto take = [](void* to, int, char** values, char**) {
    *static_cast<std::string*>(to) += values[0] == nullptr ? "null" : values[0];
    return 0;
  };
  CHECK(sqlite3_exec(db, "pragma integrity_check", take, &out, nullptr) == SQLITE_OK);
  sqlite3_close(db);
  return out;
}

Shown shownOf(const std::vector<Reading>& readings) {
  Shown out;
  for (const Reading& reading : readings)
    out.push_back(textOf(reading));
  return out;
}

/// The files of good walks under way; only whole ones count.
std::vector<fs::path> goodFilesIn(const fs::path& store) {
  std::vector<fs::path> out;
  for (const auto& entry : fs::directory_iterator(store))
    if (entry.path().string().ends_with(".netmend-walk.json")) out.push_back(entry.path());
  return out;
}

/// Holds what the account says against book and files as the kill has left them; from there it goes on.
void settle(Account& account, const fs::path& store) {
  const fs::path path = store / "jobs.netmend-book";
  if (!fs::exists(path)) {
    REQUIRE(account.shownInAll == 0);
    return;
  }
  const auto book = JobBook::open(path, BookUse::read);
  INFO((book ? "" : book.error().text()));
  REQUIRE(book);
  REQUIRE(integrityOf(path) == "ok");

  const auto jobs = book->jobs();
  REQUIRE(jobs);
  REQUIRE(jobs->size() <= 1);
  const bool undoing = account.doing == life::undoing;
  Shown bad;
  std::size_t kept = 0;
  if (!jobs->empty()) {
    const auto job = book->job(jobs->front().id);
    REQUIRE(job);
    for (const JobReading& reading : job->readings)
      bad.push_back(textOf(reading.reading));
    const auto walks = book->knownGoodWalks(job->boardUuid);
    REQUIRE(walks);
    kept = walks->size();
    if (account.doing == life::keeping && kept == account.keptWalks + 1) {
      CHECK(shownOf(walks->back().readings) == account.good);
      account.good.clear();
      account.keptWalks = kept;
      account.doing = "kept";
    }
    if (undoing && account.good.empty() && !account.keptHere.empty()) {
      // Out of the book again, or not yet; its file is there first.
      if (kept + 1 == account.keptWalks) {
        account.good = account.keptHere.back();
        account.keptWalks = kept;
        account.doing = "unkept";
      } else if (!goodFilesIn(store).empty()) {
        account.doing = "kept";
      }
    }
    if (!job->boardFile.empty()) account.job = job->number;
  }
  CHECK(kept == account.keptWalks);
  checkReadings(bad, account.bad, undoing);
  account.bad = bad;

  // Between the book and the file's end, a walk that was just kept is in both, and counts as kept.
  if (account.doing == "kept") return;
  Shown good;
  const auto files = goodFilesIn(store);
  REQUIRE(files.size() <= 1);
  if (!files.empty()) {
    const auto walk = readWalkFile(files.front());
    INFO((walk ? "" : walk.error().text()));
    REQUIRE(walk);
    good = shownOf(walk->readings);
  }
  checkReadings(good, account.good, undoing);
  account.good = good;
}

void killOften(int times) {
  const unsigned seed = testSeed();
  std::printf("seed %u\n", seed);
  CAPTURE(seed);
  std::mt19937 random(seed);
  constexpr int livesOfOneStore = 20;
  std::size_t shown = 0;
  for (int i = 0; i < times;) {
    const QTemporaryDir folder;
    const fs::path store = folder.path().toStdString();
    Account account;
    // The last life only shows that the window opens once more on all that there is.
    for (int k = 0; k <= livesOfOneStore && i <= times; ++k) {
      const bool last = k == livesOfOneStore || i == times;
      CAPTURE(i);
      Life lived(store, static_cast<unsigned>(random()));
      lived.endBy(last ? Death{std::nullopt, std::chrono::milliseconds(1), false} : deathFrom(random));
      for (const auto& words : lived.told) {
        INFO((words.size() > 1 ? words[1] : ""));
        REQUIRE(words.front() != life::failed);
        account.hear(words);
      }
      REQUIRE(lived.killed);
      if (last) REQUIRE_FALSE(lived.told.empty());
      settle(account, store);
      if (last) break;
      ++i;
    }
    shown += account.shownInAll;
  }
  std::printf("%d kills, %zu readings shown as taken, none lost\n", times, shown);
  CHECK(shown >= static_cast<std::size_t>(times));
}

} // namespace

TEST_CASE("no reading that was shown as taken is lost by a kill") {
  killOften(10);
}

TEST_CASE("no reading that was shown as taken is lost by 300 kills", "[.full]") {
  killOften(300);
}
