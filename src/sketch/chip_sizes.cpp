#include "netmend/sketch/chip_sizes.h"

#include <algorithm>
#include <cmath>

#include "netmend/base/json_reader.h"

namespace netmend {

namespace {

constexpr double largestPart = 100.0;

Size sizeOf(const JsonReader::Node& node) {
  const auto both = node.items();
  if (both.size() != 2) {
    node.wrong(pattern("core", "is no pair"), {}, pattern("core", "two lengths"));
    return {};
  }
  return {both[0].mmAboveZero(largestPart), both[1].mmAboveZero(largestPart)};
}

} // namespace

const ChipSize* ChipSizes::find(std::string_view code) const {
  const bool metric = !code.empty() && (code.back() == 'M' || code.back() == 'm');
  if (metric) code.remove_suffix(1);
  const auto found = std::find_if(sizes.begin(), sizes.end(), [&](const ChipSize& size) {
    return (metric ? size.metric : size.code) == code;
  });
  return found != sizes.end() ? &*found : nullptr;
}

const ChipSize& ChipSizes::nearest(Length apart) const {
  // By ratio: half a millimetre is much for a small one and little for a large one.
  const auto odd = [&](const ChipSize& size) {
    return std::abs(std::log(std::max(1e-3, apart.mm()) / size.padsApart.mm()));
  };
  return *std::min_element(sizes.begin(), sizes.end(),
                           [&](const ChipSize& a, const ChipSize& b) { return odd(a) < odd(b); });
}

Result<ChipSizes> loadChipSizes(const std::filesystem::path& path) {
  auto reader = JsonReader::ofFile(path, "netmend-part-sizes");
  if (!reader) return failure(reader.error());
  const auto root = reader->root();
  root.onlyKeys({"format", "version", "chips"});
  ChipSizes out;
  for (const auto& node : root.at("chips").items()) {
    node.onlyKeys({"code", "metric", "length_mm", "width_mm", "pads_apart_mm", "pad_mm", "source"});
    ChipSize size;
    size.code = node.at("code").text();
    size.metric = node.at("metric").text();
    size.body = {node.at("length_mm").mmAboveZero(largestPart), node.at("width_mm").mmAboveZero(largestPart)};
    size.padsApart = node.at("pads_apart_mm").mmAboveZero(largestPart);
    size.pad = sizeOf(node.at("pad_mm"));
    size.source = node.source();
    if (out.find(size.code) != nullptr)
      node.at("code").wrong(pattern("core", "a second size of the same name"), size.code,
                            pattern("core", "one for each"));
    out.sizes.push_back(std::move(size));
  }
  if (out.sizes.empty())
    root.at("chips").wrong(pattern("core", "no size at all"), {}, pattern("core", "one for each"));
  std::stable_sort(out.sizes.begin(), out.sizes.end(),
                   [](const ChipSize& a, const ChipSize& b) { return a.padsApart < b.padsApart; });
  return reader->result(std::move(out));
}

} // namespace netmend
