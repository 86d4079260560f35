#include "netmend/probing/point_index.h"

namespace netmend {

namespace {

template <class T>
std::optional<std::size_t> indexIn(const std::vector<ReadingSetting>& settings, const T& wanted) {
  for (std::size_t i = 0; i < settings.size(); ++i)
    if (sameSetting(settings[i], wanted)) return i;
  return std::nullopt;
}

} // namespace

std::optional<std::size_t> PointIndex::find(const ProbePoint& point, std::size_t setting) const {
  const Names& names = names_[setting];
  if (point.pin) {
    const auto it = names.byPin.find(point.pin.value);
    if (it != names.byPin.end()) return it->second;
  }
  const auto it = names.byLabel.find(point.label);
  if (it == names.byLabel.end() || point.label.empty()) return std::nullopt;
  // Two pins of one label: the label does not tell which is meant.
  if (point.pin && entries_[it->second].point.pin) return std::nullopt;
  return it->second;
}

std::optional<std::size_t> PointIndex::find(const ProbePoint& point, const ReadingSetting& setting) const {
  const auto at = indexIn(settings_, setting);
  return at ? find(point, *at) : std::nullopt;
}

std::optional<std::size_t> PointIndex::find(const Reading& reading) const {
  const auto at = indexIn(settings_, reading);
  return at ? find(reading.point, *at) : std::nullopt;
}

std::size_t PointIndex::count(const ReadingSetting& setting) const {
  const auto at = indexIn(settings_, setting);
  return at ? names_[*at].entries : 0;
}

std::size_t PointIndex::settingIndexOf(const Reading& reading) {
  if (const auto at = indexIn(settings_, reading)) return *at;
  settings_.push_back(settingOf(reading));
  names_.emplace_back();
  return settings_.size() - 1;
}

std::size_t PointIndex::add(const ProbePoint& point, const ReadingSetting& setting) {
  auto at = indexIn(settings_, setting);
  if (!at) {
    settings_.push_back(setting);
    names_.emplace_back();
    at = settings_.size() - 1;
  }
  return add(point, *at);
}

std::size_t PointIndex::add(const ProbePoint& point, std::size_t setting) {
  Names& names = names_[setting];
  if (const auto known = find(point, setting)) {
    ProbePoint& kept = entries_[*known].point;
    if (point.pin && !kept.pin) {
      kept.pin = point.pin;
      names.byPin.emplace(point.pin.value, *known);
    }
    return *known;
  }
  const std::size_t index = entries_.size();
  entries_.push_back({point, setting});
  ++names.entries;
  if (point.pin) names.byPin.emplace(point.pin.value, index);
  if (!point.label.empty()) names.byLabel.emplace(point.label, index);
  return index;
}

} // namespace netmend
