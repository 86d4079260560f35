#include "board_upgrade.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <string_view>

#include "netmend/base/json_text.h"
#include "netmend/board/board_file.h"
#include "place.h"

namespace netmend {

using nlohmann::json;

namespace {

/// The lists of objects and the names of lengths as version 1 had them; they never change again.
constexpr std::array listsOf1 = {"areas", "layers", "nets", "pads", "parts",
                                 "pins",  "tracks", "vias", "zones"};
constexpr std::array<std::string_view, 16> lengthsOf1 = {
    "body",  "copper_thickness", "corner_radius", "diameter", "dielectric_below",
    "drill", "drill_offset",     "end",           "height",   "margin",
    "mid",   "polygon",          "position",      "size",     "start",
    "width"};

Result<void> toNanometres(json& value, const Place& place) {
  if (value.is_number()) {
    const double nm = value.get<double>() * 1000.0;
    if (!(std::abs(nm) <= static_cast<double>(largestLength.nm)))
      return failure(
          {pattern("core", "is longer than a board can be"), "", place.pointer(), shortText(value)});
    value = std::llround(nm);
  } else if (value.is_array()) {
    for (std::size_t i = 0; i < value.size(); ++i)
      if (auto done = toNanometres(value[i], Place(place, i)); !done) return done;
  } else if (value.is_object()) {
    for (auto it = value.begin(); it != value.end(); ++it)
      if (auto done = toNanometres(it.value(), Place(place, it.key())); !done) return done;
  }
  return {};
}

Result<void> upgradeObjectOf1(json& object, const Place& place) {
  if (object.contains("origin"))
    return failure({pattern("core", "is no field of format 1"), "", Place(place, "origin").pointer()});
  for (auto it = object.begin(); it != object.end(); ++it) {
    if (std::find(lengthsOf1.begin(), lengthsOf1.end(), it.key()) == lengthsOf1.end()) continue;
    if (auto done = toNanometres(it.value(), Place(place, it.key())); !done) return done;
  }
  if (const auto source = object.find("source"); source != object.end()) {
    json origin = std::move(*source);
    object.erase(source);
    object["origin"] = std::move(origin);
  }
  return {};
}

/// Format 1 had lengths in micrometres, the origin of an object under the name `source`, and no `last_id`:
/// the highest id in use counted as such.
Result<void> upgradeFrom1(json& document) {
  const Place root;
  if (document.contains("last_id"))
    return failure({pattern("core", "is no field of format 1"), "", "/last_id"});
  std::uint64_t last = 0;
  for (const char* name : listsOf1) {
    const auto list = document.find(name);
    if (list == document.end() || !list->is_array()) continue;
    const Place listPlace(root, name);
    for (std::size_t i = 0; i < list->size(); ++i) {
      json& object = (*list)[i];
      if (!object.is_object()) continue;
      if (auto done = upgradeObjectOf1(object, Place(listPlace, i)); !done) return done;
      const auto id = object.find("id");
      if (id != object.end() && id->is_number_unsigned()) last = std::max(last, id->get<std::uint64_t>());
    }
  }
  if (const auto info = document.find("info"); info != document.end() && info->is_object()) {
    const Place infoPlace(root, "info");
    if (const auto outline = info->find("outline"); outline != info->end())
      if (auto done = toNanometres(*outline, Place(infoPlace, "outline")); !done) return done;
  }
  document["last_id"] = last;
  return {};
}

/// Format 2 knew no photos and no pads that are gone.
Result<void> upgradeFrom2(json& document) {
  if (document.contains("underlays"))
    return failure({pattern("core", "is no field of format 2"), "", "/underlays"});
  return {};
}

/// The step from version i + 1 to the next.
constexpr std::array<Result<void> (*)(json&), boardFileVersion - 1> upgradeSteps = {upgradeFrom1,
                                                                                    upgradeFrom2};

} // namespace

Result<void> upgradeBoardDocument(json& document, int from) {
  for (int version = from; version < boardFileVersion; ++version) {
    if (auto done = upgradeSteps.at(static_cast<std::size_t>(version - 1))(document); !done) return done;
    document["version"] = version + 1;
  }
  return {};
}

} // namespace netmend
