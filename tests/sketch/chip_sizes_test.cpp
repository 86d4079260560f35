#include "netmend/sketch/chip_sizes.h"

#include <catch2/catch.hpp>

#include "support/ranged_figures.h"

using namespace netmend;
using namespace netmend::test;

namespace {

const std::string name = "part_sizes.json";

ChipSizes ours() {
  auto loaded = loadChipSizes(NETMEND_SOURCE_DIR "/data/part_sizes.json");
  REQUIRE(loaded);
  return std::move(*loaded);
}

/// What is wrong with a spoilt file, without its name.
std::string refusal(const std::string& text) {
  const Written file("sizes.json", text);
  const auto loaded = loadChipSizes(file.path);
  if (loaded) return "read";
  CHECK(loaded.error().file == file.path.string());
  return wordsOf(loaded.error().place) + ": " + wordsOf(loaded.error().message);
}
std::string refusalOf(const std::string& pointer, const nlohmann::json& value) {
  return refusal(changed(name, pointer, value));
}

} // namespace

TEST_CASE("sizes of parts are read, by rising distance of the pads") {
  const ChipSizes sizes = ours();
  REQUIRE(sizes.sizes.size() == 10);
  for (std::size_t i = 1; i < sizes.sizes.size(); ++i)
    CHECK(sizes.sizes[i - 1].padsApart <= sizes.sizes[i].padsApart);
  const ChipSize& size = *sizes.find("0603");
  CHECK(size.metric == "1608");
  CHECK(size.body == Size{Length(1'600'000), Length(800'000)});
  CHECK(size.padsApart == Length(1'600'000));
  CHECK(size.pad == Size{Length(800'000), Length(950'000)});
  CHECK(size.source == "body: IEC 60115-8 RR1608; pads: IPC-7351B nominal, from memory");
}

TEST_CASE("a size code in inches and its metric one mean the same body") {
  // EIA size codes: hundredths of an inch, of 01005 four hundredths and two, length then width; the metric
  // code has tenths of a millimetre. Bodies are within a tenth of a millimetre of both; the codes round.
  for (const ChipSize& size : ours().sizes) {
    INFO(size.code);
    REQUIRE(size.metric.size() == 4);
    CHECK(size.body.width.mm() == Approx(std::stod(size.metric.substr(0, 2)) / 10.0).margin(0.01));
    CHECK(size.body.height.mm() == Approx(std::stod(size.metric.substr(2)) / 10.0).margin(0.06));
    if (size.code.size() != 4) continue;
    CHECK(size.body.width.mm() == Approx(0.254 * std::stod(size.code.substr(0, 2))).margin(0.16));
    CHECK(size.body.height.mm() == Approx(0.254 * std::stod(size.code.substr(2))).margin(0.16));
  }
}

TEST_CASE("pads of a size neither touch each other nor miss the body's ends") {
  for (const ChipSize& size : ours().sizes) {
    INFO(size.code);
    CHECK(size.padsApart > size.pad.width);
    CHECK(size.padsApart + size.pad.width > size.body.width);
    CHECK(size.padsApart < size.body.width + size.pad.width);
  }
}

TEST_CASE("a size is found by its code, a metric one with M behind it") {
  const ChipSizes sizes = ours();
  REQUIRE(sizes.find("0402"));
  CHECK(sizes.find("0402")->metric == "1005");
  CHECK(sizes.find("0402M")->code == "01005");
  CHECK(sizes.find("0402m")->code == "01005");
  CHECK(sizes.find("1005M")->code == "0402");
  CHECK_FALSE(sizes.find("1005"));
  CHECK_FALSE(sizes.find(""));
  CHECK_FALSE(sizes.find("M"));
  CHECK_FALSE(sizes.find("0403"));
  CHECK_FALSE(sizes.find("0402MM"));
}

TEST_CASE("the nearest size goes by ratio of the distances") {
  const ChipSizes sizes = ours();
  for (const ChipSize& size : sizes.sizes)
    CHECK(sizes.nearest(size.padsApart).padsApart == size.padsApart);
  // Between 1.0 (0402) and 1.6 mm (0603) the border is at √1.6 = 1.2649 mm.
  CHECK(sizes.nearest(Length(1'264'000)).code == "0402");
  CHECK(sizes.nearest(Length(1'266'000)).code == "0603");
  CHECK(sizes.nearest(Length()).code == "01005");
  CHECK(sizes.nearest(Length(-5'000'000)).code == "01005");
  CHECK(sizes.nearest(Length(100'000'000)).code == "2512");
}

TEST_CASE("a spoilt file of sizes is refused with its place") {
  CHECK(refusal("{") != "read");
  CHECK(refusal(changed(name, "/format", "netmend-zones")) != "read");
  CHECK(refusal(changed(name, "/version", 2)) != "read");
  CHECK_FALSE(loadChipSizes("/nonexistent/part_sizes.json"));
  CHECK(refusalOf("/more", 1).starts_with("/more: "));
  CHECK(refusalOf("/chips", 3).starts_with("/chips: "));
  CHECK(refusalOf("/chips", nlohmann::json::array()) == "/chips: no size at all");
  CHECK(refusalOf("/chips/2/colour", "red").starts_with("/chips/2/colour: "));
  CHECK(refusalOf("/chips/2/code", 402).starts_with("/chips/2/code: "));
  CHECK(refusalOf("/chips/2/code", "0201") == "/chips/2/code: a second size of the same name");
  CHECK(refusalOf("/chips/2/metric", nullptr).starts_with("/chips/2/metric: "));
  CHECK(refusalOf("/chips/2/source", "").starts_with("/chips/2/source"));
  CHECK(refusalOf("/chips/2/pad_mm", nlohmann::json::array({1.0})) == "/chips/2/pad_mm: is no pair");
  CHECK(refusalOf("/chips/2/pad_mm", nlohmann::json::array({1.0, 1.0, 1.0})) ==
        "/chips/2/pad_mm: is no pair");
  for (const std::string key :
       {"code", "metric", "length_mm", "width_mm", "pads_apart_mm", "pad_mm", "source"}) {
    auto json = nlohmann::json::parse(dataText(name));
    json["chips"][2].erase(key);
    INFO(key);
    CHECK(refusal(json.dump()).starts_with("/chips/2"));
  }
}

TEST_CASE("each length of a size has its range and its field") {
  const auto field = [](Length ChipSize::*member) {
    return [=](const ChipSizes& sizes) { return (sizes.find("1206")->*member).mm(); };
  };
  const auto side = [](Size ChipSize::*size, Length Size::*member) {
    return [=](const ChipSizes& sizes) { return (sizes.find("1206")->*size.*member).mm(); };
  };
  checkRanges<ChipSizes>(name,
                         {{"/chips/5/length_mm", 0.001, 100, side(&ChipSize::body, &Size::width)},
                          {"/chips/5/width_mm", 0.001, 100, side(&ChipSize::body, &Size::height)},
                          {"/chips/5/pads_apart_mm", 0.001, 100, field(&ChipSize::padsApart)},
                          {"/chips/5/pad_mm/0", 0.001, 100, side(&ChipSize::pad, &Size::width)},
                          {"/chips/5/pad_mm/1", 0.001, 100, side(&ChipSize::pad, &Size::height)}},
                         loadChipSizes);
}
