#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "netmend/jumper/zone_rules.h"
#include "netmend/sketch/put_copper.h"
#include "netmend/sketch/put_nets.h"
#include "netmend/sketch/typed_line.h"

namespace netmend {

/// A click, and what is drawn there: a pin goes before a part's body.
struct SketchClick {
  Point at;
  Side side = Side::top;
  PinId pin{};
  PartId part{};
  Length reach{100'000}; ///< that a click may slip
};

/// The click with what is drawn there: the nearest pad on that side within reach, else the part with the
/// smallest body there. O(pads).
[[nodiscard]] SketchClick sketchClickAt(const Lookup& lookup, Point at, Side side, Length reach);

enum class SketchKey {
  take,     ///< what is proposed
  refuse,   ///< that, or what has been clicked of it so far; else lets go of what is in hand
  next,     ///< the net is done
  skip,     ///< not this pin: the next one
  otherWay, ///< of what is proposed; of the copper that was drawn last between two pins
  copper,   ///< there is copper to be seen between the last two pins
  via,      ///< where the pointer is
  inside,   ///< from here it goes on inside the board
  zone,     ///< of the part in hand
  series,   ///< and so on, as the last two nets
  gone,     ///< the pin's pad, or the part in hand, is not there; once more: it is
  remove    ///< what is in hand
};

/// What an answer did, for the history.
enum class SketchAct {
  nothing,
  partPut,
  partsPut,
  partsCopied,
  testPadPut,
  joined,
  named,
  roleSet,
  trackDrawn,
  viaPut,
  insideRun,
  areaDrawn,
  zonePut,
  seriesJoined,
  goneSet,
  removed,
  separated
};

struct SketchAnswer {
  SketchAct act = SketchAct::nothing;
  Edit edit;                          ///< to be applied; empty where nothing changes
  std::vector<std::string> swallowed; ///< nets that are of another one now
  bool groundToSupply = false;

  /// Of an edit that changes nothing, nothing.
  [[nodiscard]] static SketchAnswer of(SketchAct act, Edit edit) {
    return {edit.changes.empty() ? SketchAct::nothing : act, std::move(edit), {}, false};
  }
};

/// What a person is to do next.
struct SketchDue {
  enum class What {
    type,     ///< nothing in hand
    firstPin, ///< of an array: click it
    oppositePin,
    takeArray,
    firstEnd, ///< of a part of two terminals
    secondEnd,
    lastFirstEnd, ///< of a row: its last part's first end
    testPad,
    corner,      ///< of an outline
    closeCorner, ///< one more, or the first again
    copyPlace,
    zonePlace, ///< a part, or a first corner
    joinPin,   ///< click what belongs to this net
    insideEnd,
    takeSeries,
    part ///< one is in hand
  };
  What what = What::type;
  std::string name;      ///< of the part or pin
  std::string pin;       ///< whose place is wanted
  std::size_t count = 0; ///< of pins, corners or nets
  friend bool operator==(const SketchDue&, const SketchDue&) = default;
};

/// Drawing by clicks and few keys: what a click means is decided by what lies beneath it and by what is in
/// hand, not by a mode. It keeps what is in hand and changes no board: its answers are edits, each of which
/// stands for one thing that a person did. What it remembers of a board may be gone by the next question
/// (undo): then it lets go of it.
class Sketch {
public:
  /// Both must outlive it.
  Sketch(const ChipSizes& sizes, const ZoneRules& zones) : sizes_(&sizes), zones_(&zones) {}

  /// A line was typed to its end. A name or role changes the net in hand at once, and the net is done.
  [[nodiscard]] Result<SketchAnswer> type(const Lookup& lookup, std::string_view text);
  [[nodiscard]] Result<SketchAnswer> click(const Lookup& lookup, const SketchClick& click);
  /// Pressed on a pin, drawn along its copper, let go: a track, to a pin or other copper where it ends on
  /// one.
  [[nodiscard]] Result<SketchAnswer> stroke(const Lookup& lookup, const SketchClick& from, const Ring& way,
                                            const SketchClick& to);
  /// `pointer`: where it is.
  [[nodiscard]] Result<SketchAnswer> key(const Lookup& lookup, SketchKey key, const SketchClick& pointer);
  /// The meter beeps: the ringed pin is of the net in hand, as measured.
  [[nodiscard]] Result<SketchAnswer> beep(const Lookup& lookup);

  [[nodiscard]] const TypedLine& line() const { return line_; }
  [[nodiscard]] SketchDue due(const Lookup& lookup) const;
  /// Whether there is something for `take`.
  [[nodiscard]] bool proposes() const { return proposal_.has_value() || !series_.empty(); }
  [[nodiscard]] const std::optional<PlacedArray>& proposal() const { return proposal_; }
  [[nodiscard]] const std::vector<std::vector<PinId>>& series() const { return series_; }
  /// Whether two nets have been clicked that a series could go on from.
  [[nodiscard]] bool seriesPossible() const { return before_.size() > 1 && last_.size() > 1; }
  [[nodiscard]] const std::vector<Point>& clicks() const { return clicks_; }
  /// The pins that have been clicked of the net in hand, in order.
  [[nodiscard]] const std::vector<PinId>& group() const { return group_; }
  [[nodiscard]] bool netInHand() const { return !group_.empty() || net_; }
  /// Of what is in hand; none: it has no net yet.
  [[nodiscard]] NetId net(const Board& board) const;
  /// From where the next piece of copper starts; nothing where no net is in hand.
  [[nodiscard]] const std::optional<Point>& from() const { return from_; }
  [[nodiscard]] bool goesInside() const { return inside_; }
  [[nodiscard]] PartId part() const { return part_; }
  /// The pin to be touched next while one lead is held at the net: the nearest to it without a net, of those
  /// that were not skipped. None: there is none.
  [[nodiscard]] PinId ringed(const Lookup& lookup) const;
  [[nodiscard]] Length trackWidth() const { return width_; }
  void setTrackWidth(Length width);

  /// Lets go of everything; what was typed stays.
  void letGo();

private:
  void settle(const Lookup& lookup);
  void dropClicks();
  void netDone();
  void takePin(const Lookup& lookup, PinId pin);
  [[nodiscard]] Result<SketchAnswer> clickPart(const Lookup& lookup, const SketchClick& click);
  [[nodiscard]] Result<SketchAnswer> clickArray(const SketchClick& click);
  [[nodiscard]] Result<SketchAnswer> clickTwoTerminals(const Lookup& lookup, const SketchClick& click);
  [[nodiscard]] Result<SketchAnswer> clickOutline(const Lookup& lookup, const SketchClick& click);
  [[nodiscard]] Result<SketchAnswer> clickNet(const Lookup& lookup, const SketchClick& click);
  [[nodiscard]] SketchAnswer drawTo(const Lookup& lookup, const SketchClick& click, Ring way);
  [[nodiscard]] Result<SketchAnswer> takeProposal(const Lookup& lookup);
  [[nodiscard]] SketchAnswer takeSeries(const Lookup& lookup);
  [[nodiscard]] SketchAnswer copperBetween(const Lookup& lookup, bool another);
  [[nodiscard]] Result<SketchAnswer> removeInHand(const Lookup& lookup, const SketchClick& pointer);
  [[nodiscard]] SketchAnswer viaAt(const Lookup& lookup, const SketchClick& pointer);
  [[nodiscard]] SketchAnswer setGoneInHand(const Lookup& lookup);
  [[nodiscard]] Result<void> propose();

  const ChipSizes* sizes_;
  const ZoneRules* zones_;
  TypedLine line_;
  std::vector<Point> clicks_; ///< of what is wanted
  Side clickSide_ = Side::top;
  bool otherWay_ = false;
  std::optional<PlacedArray> proposal_;
  PartId part_;
  std::vector<PinId> group_;
  NetId net_; ///< of copper that was clicked, where no pin was
  std::optional<Point> from_;
  bool cornered_ = false; ///< the last place is no pin: copper leads on from it
  bool inside_ = false;
  std::vector<PinId> skipped_;
  std::vector<PinId> before_; ///< the group before this one
  std::vector<PinId> last_;
  std::vector<std::vector<PinId>> series_;
  Length width_{200'000};
  std::vector<TrackId> between_; ///< drawn last between two pins
  Bend bend_ = Bend::straight;
};

} // namespace netmend
