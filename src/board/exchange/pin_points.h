#pragma once

#include <map>
#include <string>
#include <unordered_map>
#include <vector>

#include "folded_notices.h"
#include "netmend/board/exchange/import.h"

namespace netmend {

/// One line of a format that lists points rather than parts: a place of a pin and its net.
struct PinPoint {
  std::string part; ///< empty: a free point such as a test pad
  std::string pin;
  std::string net;           ///< empty: unknown
  bool notConnected = false; ///< known to be connected to nothing
  bool onItsOwn = false;     ///< a pin of its own, whatever else has its label
  Pad pad;                   ///< without id; with a pin, it is a further pad of that one
};

/// What a second point of a pin on another net means: a mistake, or labels that were cut too short.
enum class LabelConflict { refuse, separate };

/// Builds a board from such lines: points of one part and pin are pads of one pin, and what a part's
/// body covers is guessed from its pads.
class PinPoints {
public:
  explicit PinPoints(const ImportSource& source, LabelConflict conflict = LabelConflict::refuse)
      : source_(source), conflict_(conflict) {}

  [[nodiscard]] Board& board() { return imported_.board; }
  void notice(Said said) { imported_.notices.push_back(std::move(said)); }
  void fold(FoldedNotices notices) { notices.moveTo(imported_.notices); }
  [[nodiscard]] NetId net(const std::string& name);

  /// Adds a pad, and its pin and part where they are new. With `LabelConflict::refuse` it fails when the
  /// pin stands there already on another net, or a second time without a place of its own. Gives the pad.
  [[nodiscard]] Result<PadId> add(const PinPoint& point, const FilePlace& place);

  /// Completes the parts. Fails when the board is none that a board file can hold: what is read can be saved.
  [[nodiscard]] Result<Imported> finish();

private:
  struct PartData {
    PartId id;
    std::string reference;
    std::size_t pins = 0;
  };
  struct PinData {
    PinId id;
    FilePlace firstPlace;
    bool placed = false;
  };
  void guessBody(Part& part, const std::vector<std::size_t>& pads) const;
  [[nodiscard]] PartData& part(const std::string& reference);
  [[nodiscard]] Fact<NetId> netOf(const PinPoint& point);
  [[nodiscard]] PinId newPin(const PinPoint& point, Fact<NetId> net, PartData* owner);
  [[nodiscard]] Result<PinId> pinFor(const PinPoint& point, PartData* owner, const FilePlace& place);

  const ImportSource& source_;
  LabelConflict conflict_;
  Imported imported_;
  std::unordered_map<std::string, NetId> nets_;
  std::unordered_map<std::string, std::size_t> partIndex_;
  std::vector<PartData> parts_;
  std::map<std::pair<PartId, std::string>, PinData> pins_; ///< by part and name
  FoldedNotices cutLabels_;
};

} // namespace netmend
