#include "netmend/words/place.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "netmend/netgraph/handle.h"

namespace netmend {

namespace {

std::string millimetres(int tenths) {
  return tenths % 10 == 0 ? std::to_string(tenths / 10) : fmt::format("{}.{}", tenths / 10, tenths % 10);
}

Said nameOf(const Beside& beside, bool fromBelow) {
  if (beside.pin.empty())
    return said(pattern("core", "at ({}, {}) mm"), fmt::format("{:.2f}", beside.at.x.mm()),
                fmt::format("{:.2f}", beside.at.y.mm()));
  const std::string far = millimetres(beside.tenths);
  if (!beside.heading) return said(pattern("core", "at {}"), beside.pin);
  constexpr std::array patterns{pattern("core", "{} mm right of {}"), pattern("core", "{} mm above {}"),
                                pattern("core", "{} mm left of {}"), pattern("core", "{} mm below {}")};
  return saidTowards({*beside.heading, fromBelow, patterns}, far, beside.pin);
}

Said nameOf(const TrackEnd& end, bool fromBelow) {
  switch (end.sort) {
  case TrackEnd::Sort::pin:
    return asItIs(end.pin);
  case TrackEnd::Sort::via:
    return said(pattern("core", "via {}"), nameOf(end.beside, fromBelow));
  case TrackEnd::Sort::area:
    return said(pattern("core", "copper area {}"), nameOf(end.beside, fromBelow));
  case TrackEnd::Sort::fork:
    return said(pattern("core", "fork {}"), nameOf(end.beside, fromBelow));
  case TrackEnd::Sort::end:
    return said(pattern("core", "its end {}"), nameOf(end.beside, fromBelow));
  case TrackEnd::Sort::unseen:
    break;
  }
  return pattern("core", "an end that nobody has seen");
}

/// Where a stretch leads needs no more than a pin to look at (see `PlaceName::asSaid`).
Said towards(const TrackEnd& end, bool fromBelow) {
  return end.beside.pin.empty() ? nameOf(end, fromBelow) : asItIs(end.beside.pin);
}

/// See `PlaceNames::sideOf`.
bool isFromBelow(const PlaceName& name) {
  return name.layer == PlaceName::Layer::bottom;
}

Said trackSaid(const PlaceName& name) {
  const bool below = isFromBelow(name);
  const Said from = nameOf(name.from, below), to = name.stretch == PlaceName::Stretch::whole
                                                       ? nameOf(name.to, below)
                                                       : towards(name.to, below);
  switch (name.stretch) {
  case PlaceName::Stretch::first:
    return said(pattern("core", "track from {} towards {}, first {} mm"), from, to,
                millimetres(name.toTenths));
  case PlaceName::Stretch::last:
    return said(pattern("core", "track from {} towards {}, last {} mm"), from, to,
                millimetres(name.toTenths));
  case PlaceName::Stretch::between:
    return said(pattern("core", "track from {} towards {}, {} to {} mm"), from, to,
                millimetres(name.fromTenths), millimetres(name.toTenths));
  case PlaceName::Stretch::whole:
    break;
  }
  if (name.from.sort == TrackEnd::Sort::via && name.to.sort == TrackEnd::Sort::via)
    return said(pattern("core", "track between the vias {} and {}"), nameOf(name.from.beside, below),
                nameOf(name.to.beside, below));
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
    return said(pattern("core", "via {}"), nameOf(name.beside, isFromBelow(name)));
  case PlaceName::Sort::spot:
    return said(pattern("core", "track {}"), nameOf(name.beside, isFromBelow(name)));
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

Said rightAndLeftSaid() {
  return pattern("core", "Right and left: as that side of the board is seen from above.");
}

Said nameOf(const ProbePoint& point, const PlaceNames* places) {
  if (point.pin || places == nullptr) return asItIs(point.label);
  const auto found = placeOfHandle(places->board(), point.label);
  if (!found) return asItIs(point.label);
  return nameOf(places->of(found->object, found->at, found->layer));
}

Said nameOf(const ProofPoint& point, const PlaceNames* places) {
  if (point.why != ProofWhy::endToEnd) return nameOf(point.point, places);
  return said(pattern("core", "{} to {}"), nameOf(point.point, places), nameOf(point.other, places));
}

} // namespace netmend
