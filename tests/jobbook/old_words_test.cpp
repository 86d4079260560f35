// How books up to version 4 wrote; the sentences are from such books (old/version-3.sql) and old_words.h.
#include "jobbook/old_words.h"

#include <catch2/catch.hpp>

using namespace netmend;
using oldbook::Check;
using oldbook::Ends;

namespace {

std::optional<Expected> expectedOf(const std::string& words) {
  return oldbook::judgedOf("low", words, ReadingMode::diode)->verdict.expected;
}

StepMeasure measureOf(const std::string& expected) {
  return oldbook::measureOf({"Touch it.", expected, "J4.9", std::nullopt});
}

void checkInterval(const std::string& expected, double lowest, double highest) {
  INFO(expected);
  const StepMeasure measure = measureOf(expected);
  REQUIRE(measure.interval);
  CHECK(measure.interval->lowest == Approx(lowest).margin(1e-12));
  CHECK(measure.interval->highest == Approx(highest).margin(1e-12));
  CHECK_FALSE(measure.overLimit);
}

} // namespace

TEST_CASE("verdicts of old books are known by their words") {
  using enum VerdictKind;
  const std::vector<std::pair<std::string, VerdictKind>> words{
      {"in range", inRange}, {"open", open}, {"short", shorted},
      {"low", low},          {"high", high}, {"reads where OL is expected", readsWhereOverLimitExpected}};
  for (const auto& [word, kind] : words) {
    INFO(word);
    const auto judged = oldbook::judgedOf(word, "", ReadingMode::diode);
    REQUIRE(judged);
    CHECK(judged->verdict.kind == kind);
    CHECK(judged->verdict.nothing == NothingBecause::judged);
    CHECK(judged->fromOldBook);
    CHECK_FALSE(judged->verdict.expected);
  }
  const auto nothing = oldbook::judgedOf("nothing to compare", "", ReadingMode::diode);
  REQUIRE(nothing);
  CHECK(nothing->verdict.kind == nothingToCompare);
  CHECK(nothing->verdict.nothing == NothingBecause::noExpectedValue);
  CHECK_FALSE(oldbook::judgedOf("", "", ReadingMode::diode));
  CHECK_FALSE(oldbook::judgedOf("odd", "0.4 V", ReadingMode::diode));
}

TEST_CASE("expected values of old books are read in their units, alternatives too") {
  const auto range = expectedOf("0.441 V to 0.465 V");
  REQUIRE(range);
  CHECK(range->mode == ReadingMode::diode);
  CHECK(range->shown == std::vector<ValueInterval>{{0.441, 0.465}});
  CHECK(range->overLimitShare == 0.0);
  REQUIRE(range->humps.size() == 1);
  CHECK(range->humps[0].weight == 1.0);
  CHECK(range->humps[0].centre == Approx(0.453));
  CHECK(range->humps[0].scale == Approx(0.012));
  CHECK(range->humps[0].dof == 0.0);
  CHECK(range->humps[0].boards == 0.0);
  const auto one = expectedOf("4.70 kΩ");
  REQUIRE(one);
  CHECK(one->shown == std::vector<ValueInterval>{{4700, 4700}});
  CHECK(one->humps[0].scale == 0.0);
  const auto over = expectedOf("OL");
  REQUIRE(over);
  CHECK(over->shown.empty());
  CHECK(over->overLimitShare == 1.0);
  const auto both = expectedOf("0.4 V to 0.5 V or OL or 0.7 V");
  REQUIRE(both);
  CHECK(both->shown == std::vector<ValueInterval>{{0.4, 0.5}, {0.7, 0.7}});
  CHECK(both->overLimitShare == 0.5);
  const std::vector<std::pair<std::string, double>> units{
      {"2 V", 2},    {"2 mV", 2e-3}, {"2 µV", 2e-6}, {"2 Ω", 2}, {"2 mΩ", 2e-3},  {"2 kΩ", 2e3},
      {"2 MΩ", 2e6}, {"2 °C", 2},    {"2 K", 2},     {"2", 2},   {"-3 mV", -3e-3}};
  for (const auto& [text, value] : units) {
    INFO(text);
    REQUIRE(expectedOf(text));
    CHECK(expectedOf(text)->shown.at(0).lowest == Approx(value).epsilon(1e-15));
  }
  for (const char* text :
       {"", "some", "V", "2 x", "2V", "0.4 V to some", "some to 0.4 V", "0.4 V or some", "2  V"}) {
    INFO(text);
    CHECK_FALSE(expectedOf(text));
  }
}

TEST_CASE("checks of old steps say what they want measured: OL, a value give or take, or as it is written") {
  const StepMeasure over = measureOf("OL in diode mode: go on. OL where a value is expected: stop.");
  CHECK(over.mode == ReadingMode::diode);
  CHECK(over.overLimit);
  CHECK_FALSE(over.interval);
  CHECK(over.point.label == "J4.9");
  CHECK(over.other.label == "GND");
  CHECK(over.comparable());

  checkInterval("0.649 V ± 12 mV in diode mode: go on.", 0.637, 0.661);
  checkInterval("0.649 V ± 0.012 V in diode mode; otherwise stop.", 0.637, 0.661);
  checkInterval("0.649 V in diode mode: go on.", 0.6485, 0.6495); // all that is written so
  checkInterval("0.649 V ± some in diode mode: go on.", 0.6485, 0.6495);
  checkInterval("1 V in diode mode: go on.", 0.5, 1.5);
  checkInterval("650 mV in diode mode: go on.", 0.15, 1.15);
  const StepMeasure unread = measureOf("some in diode mode: go on.");
  CHECK_FALSE(unread.comparable());
  CHECK(unread.mode == ReadingMode::diode);
}

TEST_CASE(
    "checks of a wire may read up to twice its resistance, and a board without power what is written so") {
  checkInterval("About 0.285 ohm; more than twice that: a joint is bad.", 0.0, 0.57);
  CHECK(measureOf("About 0.285 ohm or little more").mode == ReadingMode::ohms);
  CHECK_FALSE(measureOf("Some ohm").interval);
  CHECK(measureOf("Some ohm").mode == ReadingMode::ohms);
  CHECK_FALSE(measureOf("About some ohm").interval);
  checkInterval("0 V across the battery contacts; otherwise discharge them.", -0.5, 0.5);
  checkInterval("0.0 V across it", -0.05, 0.05);
  checkInterval("1.25 V across it", 1.245, 1.255);
  CHECK(measureOf("0 V across it").mode == ReadingMode::volts);
  CHECK_FALSE(measureOf("No V across it").interval);
  const StepMeasure shorted = measureOf("No short; otherwise take the mask off.");
  CHECK(shorted.mode == ReadingMode::ohms);
  CHECK_FALSE(shorted.comparable());
  CHECK(measureOf("Every lid closes").mode == ReadingMode::diode);
  // What is to be done otherwise does not say what is measured.
  CHECK(measureOf("Bright solder: 0.3 V in diode mode").mode == ReadingMode::diode);
  CHECK_FALSE(measureOf("Bright solder: 0.3 V in diode mode").interval);
}

TEST_CASE("an old check is measured at the end of the jumper that it names") {
  const Ends ends{"via at (19.50, 9.00) mm", "C28.1 (part terminal)"};
  const auto at = [&](const std::string& text, const std::string& expected) {
    return oldbook::measureOf({text, expected, "KEY_COL3", ends});
  };
  CHECK(at("Touch via at (19.50, 9.00) mm.", "OL in diode mode").point.label == "via at (19.50, 9.00) mm");
  CHECK(at("Touch C28.1 (part terminal).", "OL in diode mode").point.label == "C28.1");
  CHECK(at("Touch it.", "OL in diode mode").point.label == "via at (19.50, 9.00) mm");
  const std::string both = "Measure from via at (19.50, 9.00) mm to C28.1 (part terminal).";
  const StepMeasure wire = at(both, "About 0.285 ohm");
  CHECK(wire.point.label == "via at (19.50, 9.00) mm");
  CHECK(wire.other.label == "C28.1");
  CHECK(at(both, "OL in diode mode").other.label == "GND");
  CHECK(at("Touch C28.1 (part terminal).", "About 0.285 ohm").other.label == "GND");
  CHECK(at("Touch via at (19.50, 9.00) mm.", "About 0.285 ohm").other.label == "GND");
  const Ends pads{"J1.2 (connector pin)", "track at (1.00, 2.00) mm (bottom)"};
  CHECK(oldbook::measureOf({"Touch track at (1.00, 2.00) mm (bottom).", "OL in diode mode", "K", pads})
            .point.label == "track at (1.00, 2.00) mm (bottom)");
  CHECK(oldbook::measureOf({"Touch it.", "OL in diode mode", "K", pads}).point.label == "J1.2");
}

TEST_CASE("an old jumper's ends get the point that they are read at") {
  const std::string old = R"j({"from":{"at":[1,2],"label":"via at (0.00, 0.00) mm","side":"top"},)j"
                          R"j("net":"K","to":{"at":[3,4],"label":"C28.1 (part terminal)","side":"top"}})j";
  const auto ends = oldbook::endsOf(old);
  REQUIRE(ends);
  CHECK(ends->from == "via at (0.00, 0.00) mm");
  CHECK(ends->to == "C28.1 (part terminal)");
  CHECK(
      oldbook::jumperWithPoints(old) ==
      R"j({"from":{"at":[1,2],"label":"via at (0.00, 0.00) mm","pin":0,"point":"via at (0.00, 0.00) mm",)j"
      R"j("side":"top"},"net":"K","to":{"at":[3,4],"label":"C28.1 (part terminal)","pin":0,"point":"C28.1",)j"
      R"j("side":"top"}})j");
}
