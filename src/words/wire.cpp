#include <fmt/format.h>

#include "netmend/words/jumper.h"

namespace netmend {

namespace {

std::string amperes(Amperes current) {
  return fmt::format("{:.3g} A", current.value);
}

std::string millivolts(Volts volts) {
  return fmt::format("{:.3g} mV", 1e3 * volts.value);
}

std::string mm(Length length) {
  return fmt::format("{:.3g} mm", length.mm());
}

std::string kelvins(Kelvins rise) {
  return fmt::format("{:.0f} K", rise.value);
}

Said nameOf(const CopperLimit& limit) {
  switch (limit.piece) {
  case CopperLimit::Piece::track:
    return said(pattern("core", "{} track"), mm(limit.size));
  case CopperLimit::Piece::innerTrack:
    return said(pattern("core", "{} inner track"), mm(limit.size));
  case CopperLimit::Piece::via:
    return said(pattern("core", "via with a {} hole"), mm(limit.size));
  case CopperLimit::Piece::platedHole:
    return said(pattern("core", "plated hole of {} ({})"), limit.pin, mm(limit.size));
  case CopperLimit::Piece::pad:
    return said(pattern("core", "pad of {} ({} wide)"), limit.pin, mm(limit.size));
  case CopperLimit::Piece::together:
    break;
  }
  return pattern("core", "the broken copper together");
}

Said limitSaid(const WireLimit& limit, const WireChoice& wire) {
  const std::string current = amperes(wire.current.value);
  switch (limit.why) {
  case WireLimit::Why::fusing:
    return said(pattern("core", "{} is more than {} % of its fusing current of {}"), current,
                fmt::format("{:.0f}", 100.0 * wire.fusingShare), amperes(limit.most));
  case WireLimit::Why::heating:
    return said(pattern("core", "{} would warm it by more than {}, which {} does"), current,
                kelvins(wire.mostRise), amperes(limit.most));
  case WireLimit::Why::drop:
    break;
  }
  return said(pattern("core", "it would drop {}, more than the {} allowed"), millivolts(limit.drop),
              millivolts(wire.mostDrop));
}

} // namespace

Said currentSaid(const WireChoice& wire) {
  const std::string current = amperes(wire.current.value);
  switch (wire.basis.why) {
  case CurrentBasis::Why::asked:
    return said(pattern("core", "{} as asked for"), current);
  case CurrentBasis::Why::rated:
    return said(pattern("core", "{} as the net is rated"), current);
  case CurrentBasis::Why::roleDefault:
    return said(pattern("core", "{} taken for a net of this role"), current);
  case CurrentBasis::Why::copper:
  case CurrentBasis::Why::cappedByRole:
  case CurrentBasis::Why::cappedAsSignal:
    break;
  }
  const CopperLimit limit = wire.basis.limit.value_or(CopperLimit{});
  const Said carries = said(pattern("core", "{} carries {} (IPC-2221, {})"), nameOf(limit),
                            amperes(limit.current), kelvins(wire.basis.rise));
  if (wire.basis.why == CurrentBasis::Why::cappedByRole)
    return said(pattern("core", "{}; more than a net of this role is taken to carry: taken as {}"), carries,
                current);
  if (wire.basis.why == CurrentBasis::Why::cappedAsSignal)
    return said(pattern("core", "{}; its role is not known and its copper narrow, so that it counts as a "
                                "signal: taken as {}"),
                carries, current);
  return said(pattern("core", "{}: taken as {}"), carries, current);
}

std::vector<Said> wireReasons(const WireChoice& wire) {
  std::vector<Said> out{currentSaid(wire)};
  out.push_back(said(pattern("core", "{} ohm over {} mm drops {} of {} allowed"),
                     fmt::format("{:.3g}", wire.resistance.value), fmt::format("{:.1f}", wire.length.mm()),
                     millivolts(wire.drop), millivolts(wire.mostDrop)));
  out.push_back(said(pattern("core", "carries {} for a rise of {}; fuses at about {}"), amperes(wire.heating),
                     kelvins(wire.mostRise), amperes(wire.fusing)));
  if (wire.thinner)
    out.push_back(said(pattern("core", "no thinner one: {}: {}"), Said(dataPattern(wire.thinner->wire.name)),
                       limitSaid(wire.thinner->limit, wire)));
  if (wire.thinForLanding)
    out.push_back(said(pattern("core", "thinner than {} because a landing is only {} wide"),
                       mm(wire.thinnestByChoice), mm(wire.landingWidth.value)));
  return out;
}

std::vector<Said> wireWarnings(const WireChoice& wire) {
  std::vector<Said> out;
  if (wire.tooThin)
    out.push_back(
        said(pattern("core", "no wire of the table carries {} over {} mm; this one is too thin: {}"),
             amperes(wire.current.value), fmt::format("{:.1f}", wire.length.mm()),
             limitSaid(*wire.tooThin, wire)));
  if (wire.wideForLanding)
    out.push_back(
        said(pattern("core", "the wire is {} thick and the narrower landing {} wide: choose another "
                             "landing if you can"),
             mm(wire.wire.copper), mm(wire.landingWidth.value)));
  if (!wire.roleWarning.empty()) out.emplace_back(dataPattern(wire.roleWarning));
  return out;
}

} // namespace netmend
