#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "netmend/base/error.h"
#include "netmend/board/board.h"
#include "netmend/jumper/price.h"

namespace netmend {

enum class ZoneEffect {
  forbidden,  ///< no jumper may enter
  perLength,  ///< each millimetre inside costs `price` more
  perCrossing ///< each way through costs `price`
};

/// What one kind of zone means to a wire.
struct ZoneRule {
  ZoneKind kind = ZoneKind::connector;
  ZoneEffect effect = ZoneEffect::forbidden;
  Length margin; ///< used where the zone itself gives none
  Price price;   ///< perLength: for each mm; perCrossing: for each; otherwise without meaning
  std::string reason;
  std::string source;
};

/// Which parts make a zone of their own body, without anybody drawing it.
struct PartZoneRule {
  PartKind part = PartKind::other;
  ZoneKind zone = ZoneKind::tallPart;
  bool wallOnly = false; ///< only the edge of the body is in the way, as with a shield
  std::string source;
};

struct ZoneRules {
  std::vector<ZoneRule> zones; ///< one for each ZoneKind
  std::vector<PartZoneRule> parts;
  Length edgeMargin;        ///< between the wire's edge and the edge of the board
  Length tallFrom;          ///< a body of this height or more is a tall part
  Length lowUpTo;           ///< height unknown: a two-pin part no longer than this passes for low
  Length holeMargin;        ///< around a drilled hole
  Length jointMargin;       ///< around a through-hole joint of another net
  Length guessedBodyMargin; ///< added around the hull of the pads where the body is unknown

  [[nodiscard]] const ZoneRule& of(ZoneKind kind) const;
  [[nodiscard]] const PartZoneRule* of(PartKind kind) const;
};

/// Reads data/zones.json. Fails naming file and JSON pointer; a kind without a rule is an error.
[[nodiscard]] Result<ZoneRules> loadZoneRules(const std::filesystem::path& path);

} // namespace netmend
