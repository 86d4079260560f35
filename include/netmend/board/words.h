#pragma once

#include "netmend/base/words.h"
#include "netmend/board/board.h"

/// The words for a board's enumerations in files and on the command line. They are part of the file
/// format: a word is never changed, only added.
namespace netmend {

/// `boardWords<Side>`: a word for each value.
template <class E> inline constexpr auto boardWords = nullptr;

template <>
inline constexpr auto boardWords<Origin> = std::to_array<Word<Origin>>({{Origin::unknown, "unknown"},
                                                                        {Origin::guessed, "guessed"},
                                                                        {Origin::user, "user"},
                                                                        {Origin::file, "file"},
                                                                        {Origin::measured, "measured"}});
template <>
inline constexpr auto boardWords<Side> = std::to_array<Word<Side>>({{Side::top, "top"},
                                                                    {Side::bottom, "bottom"}});
template <>
inline constexpr auto
    boardWords<PartKind> = std::to_array<Word<PartKind>>({{PartKind::resistor, "resistor"},
                                                          {PartKind::zeroOhmLink, "zero_ohm_link"},
                                                          {PartKind::resistorArray, "resistor_array"},
                                                          {PartKind::capacitor, "capacitor"},
                                                          {PartKind::inductor, "inductor"},
                                                          {PartKind::ferrite, "ferrite"},
                                                          {PartKind::choke, "choke"},
                                                          {PartKind::filter, "filter"},
                                                          {PartKind::fuse, "fuse"},
                                                          {PartKind::diode, "diode"},
                                                          {PartKind::led, "led"},
                                                          {PartKind::transistor, "transistor"},
                                                          {PartKind::chip, "chip"},
                                                          {PartKind::crystal, "crystal"},
                                                          {PartKind::connector, "connector"},
                                                          {PartKind::switchOrKey, "switch_or_key"},
                                                          {PartKind::battery, "battery"},
                                                          {PartKind::antenna, "antenna"},
                                                          {PartKind::shield, "shield"},
                                                          {PartKind::testPoint, "test_point"},
                                                          {PartKind::mechanical, "mechanical"},
                                                          {PartKind::other, "other"}});
template <>
inline constexpr auto
    boardWords<Termination> = std::to_array<Word<Termination>>({{Termination::none, "none"},
                                                                {Termination::junction, "junction"},
                                                                {Termination::resistive, "resistive"}});
template <>
inline constexpr auto
    boardWords<PadShape> = std::to_array<Word<PadShape>>({{PadShape::circle, "circle"},
                                                          {PadShape::oval, "oval"},
                                                          {PadShape::rectangle, "rectangle"},
                                                          {PadShape::roundedRectangle, "rounded_rectangle"},
                                                          {PadShape::polygon, "polygon"}});
template <>
inline constexpr auto
    boardWords<PadReach> = std::to_array<Word<PadReach>>({{PadReach::top, "top"},
                                                          {PadReach::bottom, "bottom"},
                                                          {PadReach::topAndBottom, "top_and_bottom"},
                                                          {PadReach::allLayers, "all_layers"}});
template <>
inline constexpr auto
    boardWords<MaskOpening> = std::to_array<Word<MaskOpening>>({{MaskOpening::none, "none"},
                                                                {MaskOpening::top, "top"},
                                                                {MaskOpening::bottom, "bottom"},
                                                                {MaskOpening::both, "both"}});
template <>
inline constexpr auto boardWords<Access> = std::to_array<Word<Access>>({{Access::open, "open"},
                                                                        {Access::underMask, "under_mask"},
                                                                        {Access::underLid, "under_lid"},
                                                                        {Access::underPart, "under_part"}});
template <>
inline constexpr auto boardWords<NetRole> = std::to_array<Word<NetRole>>({{NetRole::signal, "signal"},
                                                                          {NetRole::ground, "ground"},
                                                                          {NetRole::supply, "supply"},
                                                                          {NetRole::fastPair, "fast_pair"},
                                                                          {NetRole::radio, "radio"}});
template <>
inline constexpr auto boardWords<TrackWay> = std::to_array<Word<TrackWay>>(
    {{TrackWay::straight, "straight"}, {TrackWay::arc, "arc"}, {TrackWay::unknownWay, "unknown_way"}});
template <>
inline constexpr auto
    boardWords<DrawnCopper> = std::to_array<Word<DrawnCopper>>({{DrawnCopper::points, "points"},
                                                                {DrawnCopper::tracks, "tracks"},
                                                                {DrawnCopper::everything, "everything"}});
template <>
inline constexpr auto
    boardWords<ZoneKind> = std::to_array<Word<ZoneKind>>({{ZoneKind::connector, "connector"},
                                                          {ZoneKind::shieldWall, "shield_wall"},
                                                          {ZoneKind::battery, "battery"},
                                                          {ZoneKind::fastener, "fastener"},
                                                          {ZoneKind::antenna, "antenna"},
                                                          {ZoneKind::flex, "flex"},
                                                          {ZoneKind::heatSensitive, "heat_sensitive"},
                                                          {ZoneKind::tallPart, "tall_part"}});

} // namespace netmend
