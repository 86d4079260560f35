#pragma once

#include <functional>
#include <map>
#include <set>

#include "draft.h"
#include "matched_boards.h"

namespace netmend {

struct CopperMerge {
  const Board& drawn;
  const Board& file;
  const std::optional<Laid>& laid; ///< none: the file's copper stays out
  const std::map<LayerId, LayerId>& layers;
  const std::map<NetId, NetId>& renamed;       ///< drawn ones whose pins are all of another one now
  const std::function<NetId(NetId)>& drawnNet; ///< of the file's
};

/// The file's copper, in place of what was drawn of the same nets. Says which nets the copper is of that
/// stays.
[[nodiscard]] std::set<NetId> mergeCopper(Draft& draft, const CopperMerge& merge);

} // namespace netmend
