#include "pictures.h"

#include "gui.h"
#include "netmend/drawing/board_scene.h"
#include "netmend/drawing/fault_overlay.h"
#include "netmend/drawing/short_overlay.h"

namespace netmend {

Result<void> drawSuspects(const std::string& file, const Board& board, const FaultCase& fault) {
  const QtApplication application;
  return renderPng(file, board, suspectsOverlay(fault));
}

Result<void> drawDrop(const std::string& file, const PlaceNames& places, const ShortCase& found,
                      const DropPattern& pattern) {
  const QtApplication application;
  return renderPng(file, places.board(), shortOverlay(found, pattern, places));
}

Result<void> drawJumper(const std::string& file, const PlaceNames& places, const FaultCase& fault,
                        const JumperProposal& proposal) {
  const QtApplication application;
  PngOptions options;
  options.side = proposal.side;
  return renderPng(file, places.board(), jumperOverlay(fault, proposal, places), options);
}

} // namespace netmend
