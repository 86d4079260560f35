#include "netmend/words/customer.h"

#include <algorithm>

#include <fmt/format.h>

#include "netmend/jobbook/record.h"
#include "netmend/words/fault.h"

namespace netmend {

namespace {

/// A pin to look at: the end itself, or what is nearest to it.
std::string pinAt(const TrackEnd& end) {
  return !end.pin.empty() ? end.pin : end.beside.pin;
}

/// Where a wire ends, in as few words as a customer needs; empty: at no pin that anybody could look for.
std::string pinAt(const LandingPlace& place) {
  return !place.name.label.empty() ? place.name.label : place.name.beside.pin;
}

/// What was open, to stand after "most likely".
Said sortOfPlace(const PlaceName& place) {
  switch (place.sort) {
  case PlaceName::Sort::track:
    return place.layer == PlaceName::Layer::inner ? pattern("core", "in a track inside the board")
                                                  : pattern("core", "in a track on the board");
  case PlaceName::Sort::via:
    return pattern("core", "in a plated hole between the layers");
  case PlaceName::Sort::joint:
  case PlaceName::Sort::pad:
    return place.label.empty() ? Said(pattern("core", "in a solder joint"))
                               : said(pattern("core", "in the solder joint of {}"), place.label);
  case PlaceName::Sort::part:
    if (!place.label.empty()) return said(pattern("core", "in the part {}"), place.label);
    break;
  case PlaceName::Sort::somewhere:
  case PlaceName::Sort::pin:
  case PlaceName::Sort::spot:
  case PlaceName::Sort::deadPin:
  case PlaceName::Sort::unknownWay:
    break;
  }
  return {};
}

Said openTrack(const PlaceName& place) {
  const std::string from = pinAt(place.from), to = pinAt(place.to);
  const bool inner = place.layer == PlaceName::Layer::inner;
  if (from.empty() || to.empty() || from == to) {
    const std::string near = from.empty() ? to : from;
    if (near.empty())
      return inner ? pattern("core", "A track inside the board was open.")
                   : pattern("core", "A track on the board was open.");
    return inner ? said(pattern("core", "A track inside the board was open near {}."), near)
                 : said(pattern("core", "A track on the board was open near {}."), near);
  }
  return inner ? said(pattern("core", "A track inside the board was open between {} and {}."), from, to)
               : said(pattern("core", "A track on the board was open between {} and {}."), from, to);
}

Said openPlace(const PlaceName& place) {
  switch (place.sort) {
  case PlaceName::Sort::track:
    return openTrack(place);
  case PlaceName::Sort::via:
    return place.beside.pin.empty()
               ? Said(pattern("core", "A plated hole between the layers was open."))
               : said(pattern("core", "A plated hole between the layers was open near {}."),
                      place.beside.pin);
  case PlaceName::Sort::joint:
  case PlaceName::Sort::pad:
    return place.label.empty() ? Said(pattern("core", "A solder joint was open."))
                               : said(pattern("core", "The solder joint of {} was open."), place.label);
  case PlaceName::Sort::part:
    if (!place.label.empty()) return said(pattern("core", "The part {} was open."), place.label);
    break;
  case PlaceName::Sort::unknownWay:
    if (place.beyond.size() == 1 && place.before.size() == 1)
      return said(pattern("core", "The connection between {} and {} was open."), place.before.front(),
                  place.beyond.front());
    break;
  case PlaceName::Sort::somewhere:
  case PlaceName::Sort::pin:
  case PlaceName::Sort::spot:
  case PlaceName::Sort::deadPin:
    break;
  }
  return pattern("core", "A connection on the board was open.");
}

/// Where several places read the same, what is certain is that the wire bridges all of them.
Said openLine(const JumperRecord& jumper, const FoundFault& fault) {
  const std::string from = pinAt(jumper.from), to = pinAt(jumper.to);
  if (from.empty() || to.empty() || from == to || jumper.net.empty()) return openPlace(fault.place);
  Said where = sortOfPlace(fault.place);
  if (where.empty())
    return said(pattern("core", "The line {} was open between {} and {}."), jumper.net, from, to);
  return said(pattern("core", "The line {} was open between {} and {}, most likely {}."), jumper.net, from,
              to, std::move(where));
}

std::size_t oddBefore(const Job& job) {
  const auto counting = inForce(job.readings);
  return static_cast<std::size_t>(std::count_if(
      counting.begin(), counting.end(), [](const JobReading* r) { return isEvidence(*r) && r->odd(); }));
}

/// Each sentence once.
void add(std::vector<Said>& sentences, Said sentence) {
  if (sentence.empty()) return;
  if (std::find(sentences.begin(), sentences.end(), sentence) == sentences.end())
    sentences.push_back(std::move(sentence));
}

std::string wayOf(const JumperRecord& jumper) {
  Length length;
  for (std::size_t i = 1; i < jumper.way.size(); ++i)
    length += distance(jumper.way[i - 1], jumper.way[i]);
  return fmt::format("{:.0f}", length.mm());
}

} // namespace

bool isRepaired(const Job& job) {
  if (job.state == JobState::returnedUnrepaired) return false;
  if (std::all_of(job.actions.begin(), job.actions.end(),
                  [](const RepairAction& a) { return a.kind == RepairKind::notEconomic; }))
    return false;
  const auto counting = inForce(job.readings);
  return std::none_of(counting.begin(), counting.end(),
                      [](const JobReading* r) { return r->purpose == ReadingPurpose::proof && r->odd(); });
}

Said foundSaid(const FoundFault& fault) {
  switch (fault.kind) {
  case FaultKind::open:
    return openPlace(fault.place);
  case FaultKind::deadPin:
    return said(pattern("core", "Pin {} was dead inside its part."), fault.place.label);
  case FaultKind::shortToGround:
    return pattern("core", "A line on the board was shorted to ground.");
  case FaultKind::sound:
  case FaultKind::noneOfThese:
    break;
  }
  return {};
}

Said foundSaid(const RepairAction& action) {
  if (action.because) {
    const bool one = action.because->places <= 1;
    if (action.jumper && action.because->kind == FaultKind::open && !one)
      return openLine(*action.jumper, *action.because);
    return foundSaid(*action.because);
  }
  if (action.jumper) {
    const std::string from = pinAt(action.jumper->from), to = pinAt(action.jumper->to);
    if (!from.empty() && !to.empty() && from != to)
      return said(pattern("core", "The connection between {} and {} was open."), from, to);
  }
  if (!action.reason.empty() || action.places.size() != 2) return asItIs(action.reason);
  const std::string& from = action.places[0].label;
  const std::string& to = action.places[1].label;
  if (action.kind == RepairKind::wire)
    return said(pattern("core", "The connection between {} and {} was open."), from, to);
  if (action.kind == RepairKind::removeBridge)
    return said(pattern("core", "Solder joined {} and {}."), from, to);
  return {};
}

std::vector<Said> whatWeFound(const Job& job) {
  std::vector<Said> out;
  for (const RepairAction& action : job.actions)
    add(out, foundSaid(action));
  if (!out.empty()) return out;
  if (job.actions.empty() && !job.suspects.empty()) {
    const JobSuspect& first = job.suspects.front();
    add(out, first.what.empty() ? foundSaid(first.fault) : asItIs(first.what));
  }
  const std::size_t odd = oddBefore(job);
  if (out.empty() && odd > 0)
    add(out, saidCount(counted("core", "{n} point measures other than on good boards.",
                               "{n} points measure other than on good boards."),
                       static_cast<std::int64_t>(odd)));
  return out;
}

Said doneSaid(const RepairAction& action) {
  if (action.jumper) {
    const std::string from = pinAt(action.jumper->from), to = pinAt(action.jumper->to);
    if (from.empty() || to.empty())
      return said(pattern("core", "Bridged it with {} mm of wire."), wayOf(*action.jumper));
    return said(pattern("core", "Bridged {} and {} with {} mm of wire."), from, to, wayOf(*action.jumper));
  }
  const std::string& target = action.target;
  switch (action.kind) {
  case RepairKind::jumper:
    return target.empty() ? Said(pattern("core", "Bridged it with a wire."))
                          : said(pattern("core", "Bridged {} with a wire."), target);
  case RepairKind::wire:
    return action.places.size() == 2 ? said(pattern("core", "Bridged {} and {} with a wire."),
                                            action.places[0].label, action.places[1].label)
                                     : Said(pattern("core", "Bridged it with a wire."));
  case RepairKind::removeBridge:
    return action.places.size() == 2 ? said(pattern("core", "Removed solder between {} and {}."),
                                            action.places[0].label, action.places[1].label)
           : target.empty()          ? Said(pattern("core", "Removed a solder bridge."))
                                     : said(pattern("core", "Removed a solder bridge at {}."), target);
  case RepairKind::resolder:
    return target.empty() ? Said(pattern("core", "Resoldered the joint."))
                          : said(pattern("core", "Resoldered {}."), target);
  case RepairKind::removePart:
    return target.empty() ? Said(pattern("core", "Removed a part."))
                          : said(pattern("core", "Removed {}."), target);
  case RepairKind::replacePart:
    return target.empty() ? Said(pattern("core", "Replaced a part."))
                          : said(pattern("core", "Replaced {}."), target);
  case RepairKind::clean:
    return target.empty() ? Said(pattern("core", "Cleaned the board."))
                          : said(pattern("core", "Cleaned {}."), target);
  case RepairKind::cutTrack:
    return target.empty() ? Said(pattern("core", "Cut a track."))
                          : said(pattern("core", "Cut the track {}."), target);
  case RepairKind::other:
    return asItIs(target);
  case RepairKind::notEconomic:
    break;
  }
  return pattern("core", "Not repaired: it would cost more than it is worth.");
}

std::vector<Said> whatWeDid(const Job& job) {
  std::vector<Said> out;
  for (const RepairAction& action : job.actions)
    add(out, doneSaid(action));
  if (out.empty()) out.emplace_back(pattern("core", "Nothing was repaired."));
  return out;
}

std::vector<JobSuspect> suspectsOfRepair(const Job& job) {
  bool known = false;
  for (const RepairAction& action : job.actions) {
    if (!action.because) continue;
    known = true;
    for (const JobSuspect& suspect : job.suspects)
      if (suspect.fault.kind == action.because->kind && suspect.fault.place == action.because->place)
        return job.suspects;
  }
  return known ? std::vector<JobSuspect>{} : job.suspects;
}

} // namespace netmend
