#include "netmend/probing/meter.h"

#include <cmath>

#include "netmend/probing/words.h"
#include "support.h"

using namespace netmend;
using test::TemporaryFile;

namespace {

/// A meter with one volts mode of one range.
MeterProfile oneRange(const MeterRange& range) {
  MeterMode mode;
  mode.mode = ReadingMode::volts;
  mode.ranges = {range};
  MeterProfile meter;
  meter.modes = {mode};
  return meter;
}

Error errorOf(std::string_view content) {
  const TemporaryFile file("meters.json", content);
  const auto meters = loadMeters(file.path());
  REQUIRE_FALSE(meters);
  CHECK(meters.error().file == file.path().string());
  return meters.error();
}

std::string oneMeter(const std::string& ranges, const std::string& extra = "") {
  return R"({"format":"netmend-meters","version":1,"meters":[{"id":"a","name":"A","source":"test",
    "lead_resistance_ohm":0.1,"input_resistance_ohm":1e7,)" +
         extra + R"("modes":[{"mode":"diode","ranges":)" + ranges + "}]}]}";
}

} // namespace

TEST_CASE("rectangular limits of a voltmeter as in the worked example of the GUM") {
  // JCGM 100:2008, 4.3.7 example 2 and 5.1.5 (figures from memory, the arithmetic checked by hand): 14e-6 of
  // the reading plus 2e-6 of the 1 V range at 0.928571 V give ±15 µV, u = 8.7 µV; with a repeatability of 12
  // µV together 15 µV. Two counts of 1 µV stand for 2e-6 of the range.
  const auto meter = oneRange({1.0, 1e-6, 14e-4, 2.0});
  const auto u = uncertaintyOf(meter, ReadingMode::volts, 0.928571);
  REQUIRE(u);
  CHECK(u->calibration == Approx(8.7e-6).margin(0.05e-6));
  CHECK(std::hypot(u->calibration, 12e-6) == Approx(15e-6).margin(0.5e-6));
}

TEST_CASE("the resolution of a display gives 0.29 of a count") {
  // JCGM 100:2008, F.2.2.1: u = 0.29 δx.
  const auto u = uncertaintyOf(oneRange({1.0, 0.001, 0.0, 0.0}), ReadingMode::volts, 0.5);
  REQUIRE(u);
  CHECK(u->resolution == Approx(0.00029).margin(0.000005));
  CHECK(u->combined() == Approx(u->resolution));
}

TEST_CASE("parts of an uncertainty add up by their squares") {
  const ReadingUncertainty u{3.0, 4.0, 12.0};
  CHECK(u.combined() == Approx(13.0));
}

TEST_CASE("a meter has no uncertainty for what it does not show") {
  const auto meter = oneRange({1.0, 0.001, 0.0, 0.0});
  CHECK_FALSE(uncertaintyOf(meter, ReadingMode::volts, 1.5));
  CHECK_FALSE(uncertaintyOf(meter, ReadingMode::ohms, 0.5));
}

TEST_CASE("the finer range counts where a reading fits into two") {
  MeterMode mode;
  mode.mode = ReadingMode::ohms;
  mode.ranges = {{400.0, 0.1, 0.0, 5.0}, {4000.0, 1.0, 0.0, 5.0}};
  MeterProfile meter;
  meter.modes = {mode};
  CHECK(uncertaintyOf(meter, ReadingMode::ohms, 399.0)->calibration == Approx(0.5 / std::sqrt(3.0)));
  CHECK(uncertaintyOf(meter, ReadingMode::ohms, 401.0)->calibration == Approx(5.0 / std::sqrt(3.0)));
}

TEST_CASE("the meters that come with the program load, each with a source and sensible modes") {
  const auto& meters = test::data().meters;
  REQUIRE(meters.size() >= 3);
  for (const auto& meter : meters) {
    INFO(meter.id);
    CHECK_FALSE(meter.source.empty());
    REQUIRE(meter.mode(ReadingMode::diode) != nullptr);
    const auto& diode = *meter.mode(ReadingMode::diode);
    CHECK(diode.displayLimit() >= 1.5);
    REQUIRE(diode.compliance);
    CHECK(diode.compliance->value > diode.displayLimit());
    CHECK(findMeter(meters, meter.id) == &meter);
  }
  CHECK(findMeter(meters, "none of these") == nullptr);
}

TEST_CASE("a bad meter file is refused with the place of the fault") {
  CHECK(wordsOf(errorOf(oneMeter("[]")).place) == "/meters/0/modes/0/ranges");
  CHECK(
      wordsOf(errorOf(oneMeter(R"([{"full_scale":2,"resolution":0.001,"percent":-1,"digits":1}])")).place) ==
      "/meters/0/modes/0/ranges/0/percent");
  CHECK(
      wordsOf(errorOf(oneMeter(R"([{"full_scale":2,"resolution":0.001,"percent":"1","digits":1}])")).found) ==
      "\"1\"");
  CHECK(wordsOf(errorOf(oneMeter(R"([{"full_scale":2,"resolution":0.001,"percent":1,"digits":1},
                             {"full_scale":2,"resolution":0.001,"percent":1,"digits":1}])"))
                    .place) == "/meters/0/modes/0/ranges/1/full_scale");
  const auto unknown = errorOf(oneMeter("[]", R"("colour":"red",)"));
  CHECK(wordsOf(unknown.place) == "/meters/0/colour");
  CHECK(wordsOf(unknown.message) == "unknown key");
  CHECK(wordsOf(errorOf(R"({"format":"netmend-meters","version":7,"meters":[]})").message) ==
        "written by a newer Netmend");
  CHECK(wordsOf(errorOf(R"({"format":"netmend-walk","version":1,"meters":[]})").place) == "/format");
  CHECK(wordsOf(errorOf("{\"format\":\n \"netmend-meters\",,}").place) == "line 2, column 19");
  CHECK(wordsOf(errorOf("[1, 2]").place) == "/");
  CHECK(wordsOf(errorOf("").message).find("empty") != std::string::npos);
}

TEST_CASE("deep nesting, huge numbers, wrong encoding and a folder for a file are errors") {
  CHECK(wordsOf(errorOf(std::string(200000, '[')).message).find("nested") != std::string::npos);
  errorOf(oneMeter(R"([{"full_scale":1e999,"resolution":0.001,"percent":1,"digits":1}])"));
  errorOf(std::string("\x80\x81\xff", 3));
  const auto folder = loadMeters(std::filesystem::temp_directory_path());
  CHECK_FALSE(folder);
  CHECK_FALSE(loadMeters("/no/such/file"));
}
