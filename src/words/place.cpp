#include "netmend/words/place.h"

#include <algorithm>

#include <fmt/format.h>

#include "netmend/netgraph/handle.h"

namespace netmend {

namespace {

std::string tenths(int value) {
  return fmt::format("{}.{}", value / 10, value % 10);
}

Said nameOf(const Beside& beside) {
  if (beside.pin.empty())
    return said(pattern("core", "at ({}, {}) mm"), fmt::format("{:.2f}", beside.at.x.mm()),
                fmt::format("{:.2f}", beside.at.y.mm()));
  const std::string far = beside.exact ? tenths(beside.tenths) : std::to_string(beside.tenths / 10);
  switch (beside.direction) {
  case Beside::Direction::right:
    return said(pattern("core", "{} mm right of {}"), far, beside.pin);
  case Beside::Direction::left:
    return said(pattern("core", "{} mm left of {}"), far, beside.pin);
  case Beside::Direction::above:
    return said(pattern("core", "{} mm above {}"), far, beside.pin);
  case Beside::Direction::below:
    return said(pattern("core", "{} mm below {}"), far, beside.pin);
  case Beside::Direction::at:
    break;
  }
  return said(pattern("core", "at {}"), beside.pin);
}

Said nameOf(const TrackEnd& end) {
  switch (end.sort) {
  case TrackEnd::Sort::pin:
    return asItIs(end.pin);
  case TrackEnd::Sort::via:
    return said(pattern("core", "via {}"), nameOf(end.beside));
  case TrackEnd::Sort::area:
    return said(pattern("core", "copper area {}"), nameOf(end.beside));
  case TrackEnd::Sort::fork:
    return said(pattern("core", "fork {}"), nameOf(end.beside));
  case TrackEnd::Sort::end:
    return said(pattern("core", "its end {}"), nameOf(end.beside));
  case TrackEnd::Sort::unseen:
    break;
  }
  return pattern("core", "an end that nobody has seen");
}

/// Where a stretch leads needs no more than a pin to look at (see `PlaceName::asSaid`).
Said towards(const TrackEnd& end) {
  return end.beside.pin.empty() ? nameOf(end) : asItIs(end.beside.pin);
}

Said trackSaid(const PlaceName& name) {
  const Said from = nameOf(name.from),
             to = name.stretch == PlaceName::Stretch::whole ? nameOf(name.to) : towards(name.to);
  switch (name.stretch) {
  case PlaceName::Stretch::first:
    return said(pattern("core", "track from {} towards {}, first {} mm"), from, to, tenths(name.toTenths));
  case PlaceName::Stretch::last:
    return said(pattern("core", "track from {} towards {}, last {} mm"), from, to, tenths(name.toTenths));
  case PlaceName::Stretch::between:
    return said(pattern("core", "track from {} towards {}, {} to {} mm"), from, to, tenths(name.fromTenths),
                tenths(name.toTenths));
  case PlaceName::Stretch::whole:
    break;
  }
  if (name.from.sort == TrackEnd::Sort::via && name.to.sort == TrackEnd::Sort::via)
    return said(pattern("core", "track between the vias {} and {}"), nameOf(name.from.beside),
                nameOf(name.to.beside));
  return said(pattern("core", "track from {} to {}"), from, to);
}

/// "U3.12, J4.11, R7.1 and 3 more".
Said pinsSaid(const std::vector<std::string>& labels) {
  if (labels.empty()) return pattern("core", "no pin");
  constexpr std::size_t most = 3;
  SaidList names;
  for (std::size_t i = 0; i < std::min(labels.size(), most); ++i)
    names.parts.emplace_back(labels[i]);
  if (labels.size() <= most) return said(pattern("core", "{}"), std::move(names));
  names.last = SaidList::Last::none;
  return said(pattern("core", "{} and {} more"), std::move(names), labels.size() - most);
}

Said plainName(const PlaceName& name) {
  switch (name.sort) {
  case PlaceName::Sort::pin:
    return asItIs(name.label);
  case PlaceName::Sort::pad:
    return said(pattern("core", "pad of {}"), name.label);
  case PlaceName::Sort::via:
    return said(pattern("core", "via {}"), nameOf(name.beside));
  case PlaceName::Sort::spot:
    return said(pattern("core", "track {}"), nameOf(name.beside));
  case PlaceName::Sort::joint:
    return name.label.empty() ? Said(pattern("core", "joint of a pin"))
                              : said(pattern("core", "joint of {}"), name.label);
  case PlaceName::Sort::deadPin:
    return said(pattern("core", "dead pin {} (inside the part, copper sound)"), name.label);
  case PlaceName::Sort::track:
    return trackSaid(name);
  case PlaceName::Sort::part:
    return name.label.empty() ? Said(pattern("core", "a part in the line"))
                              : said(pattern("core", "{} itself"), name.label);
  case PlaceName::Sort::unknownWay:
    return name.before.empty()
               ? said(pattern("core", "unknown way to {}"), pinsSaid(name.beyond))
               : said(pattern("core", "unknown way between {} on one side and {} on the other"),
                      pinsSaid(name.beyond), pinsSaid(name.before));
  case PlaceName::Sort::somewhere:
    break;
  }
  return pattern("core", "a place that nobody has seen");
}

} // namespace

Said nameOf(const PlaceName& name) {
  Said out = plainName(name);
  if (name.layer == PlaceName::Layer::bottom) out = said(pattern("core", "{}, bottom"), std::move(out));
  if (name.layer == PlaceName::Layer::inner && name.sort == PlaceName::Sort::track)
    out = said(pattern("core", "{}, inner layer"), std::move(out));
  return name.handle.empty() ? out : said(pattern("core", "{} ({})"), std::move(out), name.handle);
}

Said nameOf(const ProbePoint& point, const PlaceNames* places) {
  if (point.pin || places == nullptr) return asItIs(point.label);
  const auto found = placeOfHandle(places->board(), point.label);
  if (!found) return asItIs(point.label);
  return nameOf(places->of(found->object, found->at, found->layer, PlaceNames::Distance::exact));
}

Said nameOf(const ProofPoint& point, const PlaceNames* places) {
  if (point.why != ProofWhy::endToEnd) return nameOf(point.point, places);
  return said(pattern("core", "{} to {}"), nameOf(point.point, places), nameOf(point.other, places));
}

} // namespace netmend
