#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "netmend/board/edit.h"
#include "netmend/board/lookup.h"

/// A board from a file, brought into a drawn one: matched by reference and pin name. What was measured at the
/// bench outranks the file.
namespace netmend {

/// One thing that the drawing and the file tell differently.
struct MergeDifference {
  enum class What {
    net,   ///< what a pin is joined to
    name,  ///< of a net that is the same otherwise
    value, ///< of a part
    fitted,
    missing ///< the drawing says that a part is not there, the file has it: as `fitted`
  };
  enum class Right { drawing, file, open };

  What what = What::net;
  std::string label; ///< `J4.9`, `R28`, or the net's name as it is drawn
  std::string drawn; ///< of nets a name, else some of its pins
  std::string file;
  Origin drawnOrigin = Origin::user;
  PinId pin{}; ///< of the drawing
  PartId part{};
  NetId net{};
  Right right = Right::open; ///< as proposed; open: it stays as it is drawn
  friend bool operator==(const MergeDifference&, const MergeDifference&) = default;
};

struct MergePlan {
  std::size_t agree = 0;      ///< pins that are told alike
  std::size_t learnt = 0;     ///< pins drawn without a net, to which the file gives one
  std::size_t onlyInFile = 0; ///< pins
  std::size_t onlyDrawn = 0;  ///< pins
  /// The file's places fit the drawing's: parts, pads and copper come in with theirs. Else parts come in as
  /// lists of pins, which can be placed by hand.
  bool placesFit = false;
  Length worstPlace; ///< of the matched pins, once both are laid on each other
  std::vector<MergeDifference> differences;
};

[[nodiscard]] MergePlan planMerge(const Lookup& drawn, const Lookup& file);

/// The whole merge as one edit. What is open, or right as it is drawn, stays.
[[nodiscard]] Edit mergeEdit(const Lookup& drawn, const Lookup& file, const MergePlan& plan);

} // namespace netmend
