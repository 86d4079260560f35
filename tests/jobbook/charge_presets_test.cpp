#include "netmend/jobbook/charge_presets.h"

#include <catch2/catch.hpp>

#include <fstream>
#include <unistd.h>

#include "netmend/jobbook/job_book.h"

using namespace netmend;

namespace {

struct TemporaryFolder {
  std::filesystem::path path =
      std::filesystem::temp_directory_path() / ("netmend-charges-test-" + std::to_string(::getpid()));
  TemporaryFolder() { std::filesystem::create_directories(path); }
  ~TemporaryFolder() { std::filesystem::remove_all(path); }
};

ChargePreset preset(const std::string& what, std::int64_t price, std::int64_t quantity = 10000) {
  return {what, Decimal{quantity}, Decimal{price}};
}

} // namespace

TEST_CASE("the defaults are four charges, each with an exact price", "[jobbook]") {
  const auto presets = loadChargePresets(std::filesystem::path(NETMEND_SOURCE_DIR) / "data" / "charges.json");
  REQUIRE(presets);
  REQUIRE(presets->size() == 4);
  CHECK(presets->front() == preset("Track repair", 480000));
  CHECK(presets->back() == preset("Return post", 69000));
}

TEST_CASE("a file of charges that is wrong is told with its place", "[jobbook]") {
  const TemporaryFolder folder;
  const auto file = folder.path / "charges.json";
  const auto load = [&](const std::string& charges) {
    std::ofstream(file) << R"({"format":"netmend-charges","version":1,"charges":)" << charges << "}";
    return loadChargePresets(file);
  };
  CHECK(load("[]")->empty());
  CHECK(load(R"([{"what":"Post","price":"6,90","quantity":"0.5"}])")->front() == preset("Post", 69000, 5000));
  const auto dear = load(R"([{"what":"Post","price":"cheap"}])");
  REQUIRE_FALSE(dear);
  CHECK(wordsOf(dear.error().place) == "/charges/0/price");
  CHECK_FALSE(load(R"([{"what":"Post"}])"));
  CHECK_FALSE(load(R"([{"price":"1"}])"));
  CHECK_FALSE(load(R"([{"what":"Post","price":"1","unit":"h"}])"));
  CHECK_FALSE(loadChargePresets(folder.path / "none.json"));
}

TEST_CASE("what the shop charges most comes first, each with its last price", "[jobbook]") {
  const TemporaryFolder folder;
  const auto file = folder.path / "jobs.netmend-book";
  CHECK(usualCharges(file, 4).empty());
  auto book = JobBook::open(file, BookUse::make);
  REQUIRE(book);
  Job job;
  job.charges = {{ChargeId{}, "Post", Decimal{10000}, Decimal{50000}},
                 {ChargeId{}, "Track", Decimal{10000}, Decimal{480000}},
                 {ChargeId{}, "Wire", Decimal{10000}, Decimal{35000}},
                 {ChargeId{}, "Post", Decimal{20000}, Decimal{69000}}};
  REQUIRE(book->addJob(job));
  CHECK(usualCharges(file, 4) ==
        std::vector{preset("Post", 69000, 20000), preset("Wire", 35000), preset("Track", 480000)});
  CHECK(usualCharges(file, 1) == std::vector{preset("Post", 69000, 20000)});
  Job many;
  for (int i = 0; i < 200; ++i)
    many.charges.push_back({ChargeId{}, "New", Decimal{10000}, Decimal{10000}});
  REQUIRE(book->addJob(many));
  CHECK(usualCharges(file, 4) == std::vector{preset("New", 10000)}); // the others are too long ago
}

TEST_CASE("defaults fill what is left, none twice", "[jobbook]") {
  const std::vector defaults{preset("A", 1), preset("B", 2), preset("C", 3)};
  CHECK(presetsFrom({}, defaults, 2) == std::vector{preset("A", 1), preset("B", 2)});
  CHECK(presetsFrom({preset("B", 9)}, defaults, 4) ==
        std::vector{preset("B", 9), preset("A", 1), preset("C", 3)});
}
