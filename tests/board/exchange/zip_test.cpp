#include <cstring>
#include <filesystem>
#include <utility>
#include <vector>

#include <catch2/catch.hpp>
#include <fmt/format.h>
#include <unistd.h>

#include "measure.h"
#include "netmend/base/file.h"
#include "netmend/board/exchange/import.h"
#include "netmend/board/exchange/zip.h"
#include "support/zipped.h"

using namespace netmend;
using netmend::test::zipped;

namespace {

const std::string table = "part,pin,net\nJ1,1,GND\nJ1,2,A\n";
const std::string testData =
    "P  UNITS CUST 0\n"
    "327GND              U1    -7          A01X+001000Y-002000X0300Y0500R090 S2\n999\n";

/// Says another size of what the first entry holds, in both of its headers.
std::string lying(std::string archive, std::uint32_t size) {
  const std::size_t central = archive.find("PK\x01\x02");
  for (const std::size_t at : {std::size_t{22}, central + 24})
    std::memcpy(archive.data() + at, &size, 4); // little-endian machines only
  return archive;
}

Result<Imported> read(const std::string& archive, const std::string& inside = {}) {
  ImportSource source{archive, "parcel.zip"};
  source.options.inArchive = inside;
  return importBoard(source);
}

std::string errorOf(const std::string& archive, const std::string& inside = {}) {
  const auto result = read(archive, inside);
  return result ? std::string("read") : result.error().text();
}

} // namespace

TEST_CASE("the one board of an archive is read, whatever else is in it") {
  const std::string archive = zipped({{"for you/README.txt", "Dear all, see below\n"},
                                      {"for you/gerber/top.gbr", "G04*\n"},
                                      {"for you/bom.csv", "Designator,Value\nR1,10k\n"},
                                      {"for you/main.d356", testData}});
  CHECK(looksLikeZip(archive));
  const auto i = read(archive);
  REQUIRE(i);
  CHECK(i->board.pads.size() == 1);
  CHECK(i->board.info.name == guessed(std::string("main")));
  CHECK(hasNotice(i->notices, "read from the archive: for you/main.d356"));
  CHECK(i->board == importBoard(ImportSource{testData, "main.d356"})->board);
}

TEST_CASE("of several boards one is asked for by name") {
  const std::string archive =
      zipped({{"a/main.d356", testData}, {"b/main.d356", testData}, {"pins.csv", table}});
  const auto listing = boardsInZip(archive, "parcel.zip");
  REQUIRE(listing);
  REQUIRE(listing->boards.size() == 3);
  CHECK(listing->boards[0].name == "a/main.d356");
  CHECK(listing->boards[0].format == "ipc-d-356a");
  CHECK(listing->boards[0].bytes == testData.size());
  CHECK(listing->boards[2].format == "csv");
  CHECK(errorOf(archive) ==
        "parcel.zip: there are several boards in this archive (expected one of a/main.d356, "
        "b/main.d356, pins.csv)");
  CHECK(read(archive, "b/main.d356"));
  CHECK(read(archive, "pins.csv")->board.pins.size() == 2);
  CHECK(errorOf(archive, "main.d356").starts_with("parcel.zip: there are several boards"));
  CHECK(errorOf(archive, "other.csv").starts_with("parcel.zip: no such board in this archive"));
  // A name without folders will do where it stands once.
  CHECK(read(zipped({{"a/main.d356", testData}, {"b/pins.csv", table}}), "pins.csv"));
}

TEST_CASE("names in an archive are labels, wherever they point") {
  const auto listing = boardsInZip(zipped({{"../../tmp/out\n.csv", table}}), "parcel.zip");
  REQUIRE(listing);
  CHECK(listing->boards[0].name == "../../tmp/out?.csv");
  CHECK(read(zipped({{"/etc/pins.csv", table}}))->board.pins.size() == 2);
}

TEST_CASE("an archive without a board that can be read is refused with the reason") {
  const std::string none = "parcel.zip: there is no board file in this archive";
  CHECK(errorOf(zipped({{"README.txt", "nothing, really\n"}})).starts_with(none));
  CHECK(errorOf(zipped({{"pins.csv", table, true}})).find("not read: encrypted: 1, first at pins.csv") !=
        std::string::npos);
  CHECK(errorOf(zipped({{"inner.zip", zipped({{"pins.csv", table}})}}))
            .find("archives inside the archive, not "
                  "opened: 1, first at inner.zip") != std::string::npos);
  CHECK(errorOf(zipped({{"inner.csv", zipped({{"pins.csv", table}})}})).find("archives inside the archive") !=
        std::string::npos);
  CHECK(errorOf("PK\x03\x04 and no more").starts_with("parcel.zip: is no archive that can be read"));
  // Beside a board that can be read it is a notice.
  const auto listing = boardsInZip(zipped({{"secret.csv", table, true}, {"pins.csv", table}}), "parcel.zip");
  REQUIRE(listing);
  CHECK(listing->boards.size() == 1);
  CHECK(hasNotice(listing->notices, "encrypted: 1, first at secret.csv"));
}

TEST_CASE("an archive that lies about sizes, or whose content does not fit its check sum, is refused") {
  const std::string archive = zipped({{"pins.csv", table}});
  const auto size = static_cast<std::uint32_t>(table.size());
  CHECK(errorOf(lying(archive, size)) == "read");
  for (const std::uint32_t wrong : {size - 1, size + 1, 1u})
    CHECK(errorOf(lying(archive, wrong))
              .starts_with("parcel.zip: there is no board file in this archive (found "
                           "files in the archive that are not read: "));
  std::string damaged = archive;
  damaged[archive.find("PK\x01\x02") - 3] ^= 0x10;
  CHECK(errorOf(damaged) != "read");
}

TEST_CASE("limits hold while an archive is inflated") {
  std::string large = table;
  large.resize(100'000, '\n'); // deflates to a few hundred bytes
  const std::string archive = zipped({{"a.csv", large}, {"b.csv", large}, {"c.csv", large}});
  CHECK(archive.size() < 2000);
  const auto boards = [&](const ZipLimits& limits) {
    const auto listing = boardsInZip(archive, "parcel.zip", limits);
    return listing ? fmt::to_string(listing->boards.size()) : listing.error().text();
  };
  CHECK(boards({3, 100'000, 300'000}) == "3");
  CHECK(boards({2, 100'000, 300'000}) == "parcel.zip: the archive has too many entries (found 3; expected at "
                                         "most 2)");
  CHECK(boards({3, 99'999, 300'000}).find("not read: above") != std::string::npos);
  CHECK(boards({3, 100'000, 299'999}) == "2");
}

TEST_CASE("an archive on the disk is read like a board file, and errors name both") {
  const auto file = std::filesystem::temp_directory_path() / fmt::format("netmend-{}.zip", getpid());
  REQUIRE(writeFileAtomically(file, zipped({{"pins.csv", "part,pin\nJ1,1\nJ1\n"}})));
  const auto failed = importBoard(file);
  REQUIRE(writeFileAtomically(file, zipped({{"pins.csv", table}})));
  const auto good = importBoard(file);
  std::filesystem::remove(file);
  REQUIRE_FALSE(failed);
  CHECK(failed.error().file == file.string());
  CHECK(wordsOf(failed.error().place) == "pins.csv, line 3");
  REQUIRE(good);
  CHECK(good->board.pins.size() == 2);
}

TEST_CASE("an archive cut short or damaged anywhere is an error or a sound board") {
  const std::string archive = zipped({{"main.d356", testData}, {"pins.csv", table}});
  for (std::size_t length = 0; length < archive.size(); ++length) {
    const auto result = boardsInZip(archive.substr(0, length), "parcel.zip");
    if (result) FAIL_CHECK("read at length " << length);
    std::string damaged = archive;
    damaged[length] = static_cast<char>(damaged[length] ^ 0xFF);
    const auto other = read(damaged, "pins.csv");
    if (!other && other.error().file != "parcel.zip") FAIL_CHECK("error without file at " << length);
  }
}

TEST_CASE("an archive with nothing in it holds no board") {
  // APPNOTE.TXT 4.3.16: the end of the central directory alone.
  const std::string empty = "PK\x05\x06" + std::string(18, '\0');
  CHECK(looksLikeZip(empty));
  CHECK(errorOf(empty) ==
        "parcel.zip: there is no board file in this archive (expected a board in one of the "
        "formats that can be read)");
  for (const char* none : {"", "PK", "PK\x03", "PK\x01\x02", "pk\x03\x04"})
    CHECK_FALSE(looksLikeZip(none));
}

TEST_CASE("more boards than an error can name are counted") {
  std::vector<netmend::test::ZipEntry> entries;
  for (int i = 10; i < 30; ++i)
    entries.push_back({fmt::format("{}.csv", i), table});
  CHECK(errorOf(zipped(entries)).find("more") == std::string::npos);
  CHECK(errorOf(zipped(entries)).ends_with("28.csv, 29.csv)"));
  entries.push_back({"30.csv", table});
  CHECK(errorOf(zipped(entries)).ends_with("28.csv, 29.csv and 1 more)"));
  entries.push_back({"31.csv", table});
  CHECK(errorOf(zipped(entries), "x").ends_with("29.csv and 2 more)"));
}
