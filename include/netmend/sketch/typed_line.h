#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "netmend/sketch/put_parts.h"

/// The one line in which what is drawn next is typed: words, each with its meaning.
namespace netmend {

struct ArrayWanted {
  PartLabel label;
  PinArray array;
  friend bool operator==(const ArrayWanted&, const ArrayWanted&) = default;
};
/// Parts of two terminals, one or a row of them at even steps. They count up by themselves.
struct TwoTerminalsWanted {
  std::string letters;
  std::optional<unsigned long> from; ///< the first one's number; none: the next that is free
  PartKind kind = PartKind::resistor;
  std::string value;
  std::string size; ///< its code; empty: as far apart as the ends are clicked
  std::size_t count = 1;
  friend bool operator==(const TwoTerminalsWanted&, const TwoTerminalsWanted&) = default;
};
struct ShieldWanted {
  std::string reference;
  std::optional<Length> lid;
  friend bool operator==(const ShieldWanted&, const ShieldWanted&) = default;
};
/// Any other part, by its outline.
struct BodyWanted {
  PartLabel label;
  friend bool operator==(const BodyWanted&, const BodyWanted&) = default;
};
struct TestPadsWanted {
  std::string letters;
  std::optional<unsigned long> from;
  Length diameter{1'000'000};
  friend bool operator==(const TestPadsWanted&, const TestPadsWanted&) = default;
};
struct ZoneWanted {
  ZoneKind kind = ZoneKind::connector;
  std::string name;
  friend bool operator==(const ZoneWanted&, const ZoneWanted&) = default;
};
struct AreaWanted {
  friend bool operator==(const AreaWanted&, const AreaWanted&) = default;
};
struct TrackWanted {
  Length width;
  friend bool operator==(const TrackWanted&, const TrackWanted&) = default;
};
struct CopyWanted {
  std::vector<PartId> parts;
  bool mirrored = false;
  friend bool operator==(const CopyWanted&, const CopyWanted&) = default;
};
/// A name for the net in hand, or for that of the next pin.
struct NetWanted {
  std::string name;
  friend bool operator==(const NetWanted&, const NetWanted&) = default;
};
/// What a good board reads at the pin in hand, as it was typed.
struct GoodWanted {
  std::string value;
  friend bool operator==(const GoodWanted&, const GoodWanted&) = default;
};
struct RoleWanted {
  NetRole role = NetRole::signal;
  friend bool operator==(const RoleWanted&, const RoleWanted&) = default;
};

using Wanted =
    std::variant<std::monostate, ArrayWanted, TwoTerminalsWanted, ShieldWanted, BodyWanted, TestPadsWanted,
                 ZoneWanted, AreaWanted, TrackWanted, CopyWanted, NetWanted, RoleWanted, GoodWanted>;

enum class WordMeaning {
  notUnderstood,
  part, ///< a reference, or letters that count up
  pins, ///< how many
  rows, ///< with how many pins each
  fourSides,
  grid,
  pitch,
  order,
  leftOut, ///< a pin that is not there
  tabs,
  padSize,
  holes,
  value,
  size, ///< a code
  count,
  lid,
  diameter,
  zone,
  area,
  track,
  width,
  copy,
  copied, ///< which parts
  mirrored,
  net,  ///< its name
  good, ///< what a good board reads
  role
};

struct LineWord {
  std::string text;
  WordMeaning meaning = WordMeaning::notUnderstood;
  friend bool operator==(const LineWord&, const LineWord&) = default;
};

struct TypedLine {
  Wanted wanted; ///< nothing while the line is empty, or a word is not understood
  std::vector<LineWord> words;
  friend bool operator==(const TypedLine&, const TypedLine&) = default;
};

/// Reads a line. A single word is the name of the net, where one is in hand. Words of more than one piece
/// (`2 rows`, `pitch 0.5`) come as one. English and German words, in any case.
[[nodiscard]] TypedLine readLine(std::string_view text, const Board& board, const ChipSizes& sizes,
                                 bool netInHand = false);

} // namespace netmend
