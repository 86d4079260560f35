#include "netmend/words/sketch.h"

#include <fmt/format.h>

namespace netmend {

namespace {

std::string mmText(Length length) {
  return fmt::format("{:g}", length.mm());
}

Said orderSaid(PinOrder order) {
  switch (order) {
  case PinOrder::alternating:
    return pattern("core", "1 3 5 over 2 4 6");
  case PinOrder::along:
    return pattern("core", "one row after the other");
  case PinOrder::round:
    return pattern("core", "counted round the body");
  case PinOrder::lettered:
    return pattern("core", "A1 A2 over B1 B2");
  }
  return {};
}

Said kindSaid(PartKind kind) {
  switch (kind) {
  case PartKind::resistor:
    return pattern("core", "resistor");
  case PartKind::capacitor:
    return pattern("core", "capacitor");
  case PartKind::inductor:
    return pattern("core", "inductor");
  case PartKind::ferrite:
    return pattern("core", "ferrite");
  case PartKind::fuse:
    return pattern("core", "fuse");
  case PartKind::diode:
    return pattern("core", "diode");
  case PartKind::led:
    return pattern("core", "LED");
  case PartKind::chip:
    return pattern("core", "chip");
  case PartKind::connector:
    return pattern("core", "connector");
  case PartKind::crystal:
    return pattern("core", "crystal");
  case PartKind::transistor:
    return pattern("core", "transistor");
  case PartKind::switchOrKey:
    return pattern("core", "switch");
  case PartKind::battery:
    return pattern("core", "battery");
  case PartKind::antenna:
    return pattern("core", "antenna");
  case PartKind::shield:
    return pattern("core", "shield");
  default:
    return pattern("core", "part");
  }
}

Said partSaid(const Wanted& wanted) {
  if (const auto* array = std::get_if<ArrayWanted>(&wanted)) return kindSaid(array->label.kind);
  if (const auto* two = std::get_if<TwoTerminalsWanted>(&wanted))
    return said(pattern("core", "{}, counts up"), kindSaid(two->kind));
  if (const auto* body = std::get_if<BodyWanted>(&wanted)) return kindSaid(body->label.kind);
  if (std::holds_alternative<ShieldWanted>(wanted)) return pattern("core", "shield, its outline");
  if (std::holds_alternative<TestPadsWanted>(wanted)) return pattern("core", "test pad, counts up");
  if (std::holds_alternative<ZoneWanted>(wanted)) return pattern("core", "its name");
  return pattern("core", "part");
}

Said rowsSaid(const Wanted& wanted) {
  const auto* array = std::get_if<ArrayWanted>(&wanted);
  if (array == nullptr || array->array.rows == 0) return pattern("core", "rows");
  return said(pattern("core", "of {}"), array->array.pins / array->array.rows);
}

/// Of the net in hand: its name, else one of its pins.
std::string netText(const SketchDue& due) {
  return due.name.empty() ? due.pin : due.name;
}

WorthRow walkRow(const DrawingWorth& worth) {
  if (worth.connector.empty())
    return {WorthGrade::nothing, pattern("core", "no connector yet"),
            pattern("core", "type one: J4 40 2 rows")};
  if (worth.placedPins < worth.pins)
    return {WorthGrade::some, said(pattern("core", "{} as a list of {} pins"), worth.connector, worth.pins),
            pattern("core", "placed on the photo, each pin is shown")};
  WorthRow row{WorthGrade::enough,
               said(pattern("core", "{}: {} pins at their places, {} have a net"), worth.connector,
                    worth.pins, worth.pinsWithNet),
               {}};
  if (worth.pinsWithNet < worth.pins)
    row.more = pattern("core", "names: click a pin and type, or paste a list");
  return row;
}

WorthRow findRow(const DrawingWorth& worth) {
  if (!worth.net.empty()) {
    if (worth.netPins < 2)
      return {WorthGrade::nothing, said(pattern("core", "{} leads nowhere yet"), worth.net),
              pattern("core", "a click on its other end is enough")};
    if (worth.netTracks == 0)
      return {WorthGrade::some,
              said(pattern("core", "no copper known for {}: finding works between pins, not along the track"),
                   worth.net),
              pattern("core", "its track, click by click, tells which piece is open")};
    return {WorthGrade::enough,
            said(pattern("core", "{}: {} pieces of copper, {} of unknown way"), worth.net, worth.netTracks,
                 worth.netUnknownWays),
            {}};
  }
  if (worth.lines == 0)
    return {WorthGrade::nothing, pattern("core", "no line known yet"),
            pattern("core", "two pins joined are enough to begin")};
  return {worth.linesWithCopper == worth.lines ? WorthGrade::enough : WorthGrade::some,
          said(pattern("core", "{} lines, {} of them with copper"), worth.lines, worth.linesWithCopper),
          worth.linesWithCopper == worth.lines
              ? Said()
              : Said(pattern("core", "copper tells where on the line; without it, between which pins"))};
}

WorthRow bridgeRow(const DrawingWorth& worth) {
  if (worth.landings == 0)
    return {WorthGrade::nothing, pattern("core", "no landing known yet"),
            pattern("core", "each pad placed is a landing")};
  if (worth.zones == 0)
    return {
        WorthGrade::some,
        said(pattern("core", "{} landings, no zone: a wire may cross a plug or the battery"), worth.landings),
        pattern("core", "a part's zone: click it, then Z")};
  return {WorthGrade::enough,
          saidCount(counted("core", "{} landings, {n} zone", "{} landings, {n} zones"),
                    static_cast<std::int64_t>(worth.zones), worth.landings),
          {}};
}

} // namespace

Said dueSaid(const SketchDue& due) {
  using What = SketchDue::What;
  switch (due.what) {
  case What::type:
    return pattern("core", "Type what is drawn next, or click a pin");
  case What::firstPin:
  case What::oppositePin:
    return said(pattern("core", "Click pin {1} of {0}"), due.name, due.pin);
  case What::takeArray:
    return said(pattern("core", "Take {} as it lies"), due.name);
  case What::firstEnd:
    return said(pattern("core", "Click the first end of {}"), due.name);
  case What::secondEnd:
    return said(pattern("core", "Click the other end of {}"), due.name);
  case What::lastFirstEnd:
    return said(pattern("core", "Click the first end of the last of {}"), due.count);
  case What::testPad:
    return pattern("core", "Click the test pad");
  case What::corner:
    return pattern("core", "Click the next corner");
  case What::closeCorner:
    return pattern("core", "Click the next corner, or the first again");
  case What::copyPlace:
    return pattern("core", "Click where the copy's first pad goes");
  case What::zonePlace:
    return pattern("core", "Click the part, or the zone's first corner");
  case What::joinPin:
    return said(pattern("core", "Click what belongs to {}"), netText(due));
  case What::insideEnd:
    return said(pattern("core", "Click where {} comes out again"), netText(due));
  case What::takeSeries:
    return saidCount(counted("core", "Take {n} more net like these", "Take {n} more nets like these"),
                     static_cast<std::int64_t>(due.count));
  case What::part:
    return said(pattern("core", "{} is in hand"), due.name);
  }
  return {};
}

Said dueHelp(const SketchDue& due) {
  using What = SketchDue::What;
  switch (due.what) {
  case What::type:
    return pattern("core",
                   "Enter opens the line. J4 40 2 rows is a connector, R 100 0402 a resistor, U1 64 4 "
                   "sides a chip. A click on a pin takes its net in hand");
  case What::firstPin:
    return pattern("core", "Its pad's middle, as well as it is to be seen");
  case What::oppositePin:
    return pattern("core", "Diagonally opposite to the first one");
  case What::takeArray:
    return pattern("core", "Does every frame lie on its pad? A click on the first row's last pin turns it");
  case What::joinPin:
    return pattern(
        "core", "Pins join without copper. A click beside them draws a track to there, V puts a via, I goes "
                "inside. Space: the net is done");
  case What::part:
    return pattern(
        "core", "Drag it to move it. Z makes a zone of it, G says that it is missing, Delete takes it off");
  case What::takeSeries:
    return pattern("core", "From the last two nets: parts and pins count on as they did");
  default:
    return {};
  }
}

Said nameOf(SketchAct act) {
  switch (act) {
  case SketchAct::nothing:
    return {};
  case SketchAct::partPut:
    return pattern("core", "part drawn");
  case SketchAct::partsPut:
    return pattern("core", "row of parts drawn");
  case SketchAct::partsCopied:
    return pattern("core", "parts copied");
  case SketchAct::testPadPut:
    return pattern("core", "test pad drawn");
  case SketchAct::joined:
    return pattern("core", "pins joined");
  case SketchAct::named:
    return pattern("core", "net named");
  case SketchAct::roleSet:
    return pattern("core", "net's role");
  case SketchAct::trackDrawn:
    return pattern("core", "track drawn");
  case SketchAct::viaPut:
    return pattern("core", "via drawn");
  case SketchAct::insideRun:
    return pattern("core", "run inside the board");
  case SketchAct::areaDrawn:
    return pattern("core", "copper area drawn");
  case SketchAct::zonePut:
    return pattern("core", "zone drawn");
  case SketchAct::seriesJoined:
    return pattern("core", "series of nets");
  case SketchAct::goneSet:
    return pattern("core", "gone or there");
  case SketchAct::removed:
    return pattern("core", "taken off");
  case SketchAct::separated:
    return pattern("core", "pin taken out of its net");
  }
  return {};
}

Said conflictSaid(const SketchAnswer& answer, const std::string& net) {
  if (answer.groundToSupply) return pattern("core", "Ground and a supply are one net now. U takes it back");
  if (answer.swallowed.empty()) return {};
  return said(pattern("core", "{} is part of {} now. U takes it back"), answer.swallowed.front(), net);
}

Said meaningSaid(const LineWord& word, const Wanted& wanted, const ChipSizes& sizes) {
  switch (word.meaning) {
  case WordMeaning::notUnderstood:
    return pattern("core", "not understood");
  case WordMeaning::part:
    return partSaid(wanted);
  case WordMeaning::pins:
    return pattern("core", "pins");
  case WordMeaning::rows:
    return rowsSaid(wanted);
  case WordMeaning::fourSides:
    return pattern("core", "counter-clockwise");
  case WordMeaning::grid:
    return pattern("core", "balls, lettered by rows");
  case WordMeaning::pitch:
    return pattern("core", "mm from pin to pin");
  case WordMeaning::order: {
    const auto* array = std::get_if<ArrayWanted>(&wanted);
    return array != nullptr ? orderSaid(array->array.order) : Said(pattern("core", "pins"));
  }
  case WordMeaning::leftOut:
    return pattern("core", "no pin there");
  case WordMeaning::tabs:
    return pattern("core", "one at each end");
  case WordMeaning::padSize:
    return pattern("core", "mm along and across the row");
  case WordMeaning::holes:
    return pattern("core", "mm, through the board");
  case WordMeaning::value:
    return pattern("core", "value");
  case WordMeaning::size: {
    const ChipSize* size = sizes.find(word.text);
    return size != nullptr
               ? said(pattern("core", "{} × {} mm"), mmText(size->body.width), mmText(size->body.height))
               : Said(pattern("core", "value"));
  }
  case WordMeaning::count:
    return pattern("core", "first to last");
  case WordMeaning::lid:
    return pattern("core", "mm above the board");
  case WordMeaning::diameter:
  case WordMeaning::width:
    return pattern("core", "mm wide");
  case WordMeaning::zone:
    return pattern("core", "no wire, with its usual margin");
  case WordMeaning::area:
    return pattern("core", "copper, its outline");
  case WordMeaning::track:
    return pattern("core", "tracks from now on");
  case WordMeaning::copy:
    return pattern("core", "once more, elsewhere");
  case WordMeaning::copied:
    return pattern("core", "with new numbers");
  case WordMeaning::mirrored:
    return pattern("core", "left and right changed");
  case WordMeaning::net:
    return pattern("core", "name of the net");
  case WordMeaning::good:
    return pattern("core", "what a good board reads here");
  case WordMeaning::role:
    return pattern("core", "what the net is for");
  }
  return {};
}

std::array<WorthRow, 3> worthRows(const DrawingWorth& worth) {
  return {walkRow(worth), findRow(worth), bridgeRow(worth)};
}

Said differenceSaid(const MergeDifference& difference) {
  using What = MergeDifference::What;
  const Said nothing = pattern("core", "nothing");
  const auto orNothing = [&](const std::string& text) { return text.empty() ? nothing : Said(text); };
  switch (difference.what) {
  case What::net:
    return said(pattern("core", "{}: drawn with {}, in the file with {}"), difference.label,
                orNothing(difference.drawn), orNothing(difference.file));
  case What::name:
    return said(pattern("core", "net {}: called {} in the file"), difference.drawn, difference.file);
  case What::value:
    return said(pattern("core", "{}: drawn as {}, in the file {}"), difference.label, difference.drawn,
                difference.file);
  case What::fitted:
    return said(pattern("core", "{}: there in the drawing, left out in the file"), difference.label);
  case What::missing:
    return said(pattern("core", "{}: missing in the drawing, fitted in the file"), difference.label);
  }
  return {};
}

Said proposalSaid(const MergeDifference& difference) {
  // Why it was proposed stays true once somebody has decided otherwise.
  using What = MergeDifference::What;
  if (difference.drawnOrigin == Origin::guessed)
    return pattern("core", "Only guessed in the drawing, so the file is proposed");
  if (difference.drawnOrigin == Origin::measured)
    return pattern("core", "Measured, so the drawing is proposed");
  if (difference.what == What::fitted || difference.what == What::missing)
    return pattern("core", "Seen on the board, so the drawing is proposed");
  return {};
}

Said mergeSaid(const MergePlan& plan) {
  return said(pattern("core", "{} pins agree, {} learn their net, {} only in the file, {} only drawn"),
              plan.agree, plan.learnt, plan.onlyInFile, plan.onlyDrawn);
}

Said leadsToSaid(const Lookup& lookup, PinId id) {
  const Pin* pin = lookup.board().pins.find(id);
  if (pin == nullptr || !pin->net.known() || !pin->net.value) return {};
  constexpr std::size_t most = 6;
  SaidList list;
  list.last = SaidList::Last::none;
  std::size_t more = 0;
  for (const PinId other : lookup.pinsOf(pin->net.value)) {
    if (other == id) continue;
    if (list.parts.size() < most)
      list.parts.emplace_back(pinLabel(lookup.board(), other));
    else
      ++more;
  }
  if (list.parts.empty()) return {};
  return more == 0 ? said(pattern("core", "leads to {}"), list)
                   : said(pattern("core", "leads to {} and {} more"), list, more);
}

} // namespace netmend
