#include "netmend/sketch/typed_line.h"

#include <algorithm>
#include <array>
#include <cctype>

#include "line_words.h"
#include "netmend/board/value.h"

namespace netmend {

namespace {

bool oneOf(const std::string& word, std::initializer_list<std::string_view> words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

template <class E, std::size_t N>
std::optional<E> among(const std::array<std::pair<std::string_view, E>, N>& words, const std::string& word) {
  const auto found = std::find_if(words.begin(), words.end(), [&](const auto& w) { return w.first == word; });
  return found != words.end() ? std::optional(found->second) : std::nullopt;
}

constexpr auto orders =
    std::to_array<std::pair<std::string_view, PinOrder>>({{"alternating", PinOrder::alternating},
                                                          {"abwechselnd", PinOrder::alternating},
                                                          {"along", PinOrder::along},
                                                          {"reihenweise", PinOrder::along},
                                                          {"round", PinOrder::round},
                                                          {"rundum", PinOrder::round},
                                                          {"lettered", PinOrder::lettered},
                                                          {"buchstaben", PinOrder::lettered}});
constexpr auto zoneKinds =
    std::to_array<std::pair<std::string_view, ZoneKind>>({{"connector", ZoneKind::connector},
                                                          {"plug", ZoneKind::connector},
                                                          {"stecker", ZoneKind::connector},
                                                          {"shield", ZoneKind::shieldWall},
                                                          {"schirm", ZoneKind::shieldWall},
                                                          {"battery", ZoneKind::battery},
                                                          {"batterie", ZoneKind::battery},
                                                          {"akku", ZoneKind::battery},
                                                          {"fastener", ZoneKind::fastener},
                                                          {"screw", ZoneKind::fastener},
                                                          {"schraube", ZoneKind::fastener},
                                                          {"antenna", ZoneKind::antenna},
                                                          {"antenne", ZoneKind::antenna},
                                                          {"flex", ZoneKind::flex},
                                                          {"heat", ZoneKind::heatSensitive},
                                                          {"hitze", ZoneKind::heatSensitive},
                                                          {"tall", ZoneKind::tallPart},
                                                          {"hoch", ZoneKind::tallPart}});
constexpr auto roleNames =
    std::to_array<std::pair<std::string_view, NetRole>>({{"signal", NetRole::signal},
                                                         {"ground", NetRole::ground},
                                                         {"masse", NetRole::ground},
                                                         {"supply", NetRole::supply},
                                                         {"versorgung", NetRole::supply},
                                                         {"pair", NetRole::fastPair},
                                                         {"paar", NetRole::fastPair},
                                                         {"radio", NetRole::radio},
                                                         {"funk", NetRole::radio}});

bool isTwoTerminal(PartKind kind) {
  switch (kind) {
  case PartKind::resistor:
  case PartKind::zeroOhmLink:
  case PartKind::capacitor:
  case PartKind::inductor:
  case PartKind::ferrite:
  case PartKind::fuse:
  case PartKind::diode:
  case PartKind::led:
    return true;
  default:
    return false;
  }
}

/// Reads the words one after the other.
class LineReader {
public:
  LineReader(std::string_view text, const Board& board, const ChipSizes& sizes)
      : board_(board), sizes_(sizes), pieces_(piecesOf(text)) {}

  TypedLine read(bool netInHand) {
    if (pieces_.empty()) return {};
    const std::string first = lowerCase(pieces_.front());
    if (const auto role = among(roleNames, first); role && netInHand && pieces_.size() == 1) {
      take(1, WordMeaning::role);
      return done(RoleWanted{*role});
    }
    if (netInHand && pieces_.size() == 1) {
      take(1, WordMeaning::net);
      return done(NetWanted{pieces_.front()});
    }
    if (oneOf(first, {"net", "netz"})) return readNet();
    if (oneOf(first, {"zone"})) return readZone();
    if (oneOf(first, {"area", "fläche"})) {
      take(1, WordMeaning::area);
      return rest(AreaWanted{});
    }
    if (oneOf(first, {"track", "leiterbahn"})) return readTrack();
    if (oneOf(first, {"copy", "kopie"})) return readCopy();
    return readPart();
  }

private:
  [[nodiscard]] bool more() const { return at_ < pieces_.size(); }
  [[nodiscard]] std::string lower(std::size_t ahead = 0) const {
    return at_ + ahead < pieces_.size() ? lowerCase(pieces_[at_ + ahead]) : std::string();
  }

  void take(std::size_t pieces, WordMeaning meaning) {
    LineWord word{pieces_[at_], meaning};
    for (std::size_t i = 1; i < pieces; ++i)
      word.text += " " + pieces_[at_ + i];
    at_ += pieces;
    words_.push_back(std::move(word));
  }

  TypedLine done(Wanted wanted) {
    const bool understood = std::none_of(words_.begin(), words_.end(), [](const LineWord& word) {
      return word.meaning == WordMeaning::notUnderstood;
    });
    if (!understood) wanted = std::monostate{};
    return {std::move(wanted), std::move(words_)};
  }
  /// What is left is not understood.
  TypedLine rest(Wanted wanted) {
    while (more())
      take(1, WordMeaning::notUnderstood);
    return done(std::move(wanted));
  }
  TypedLine incomplete() {
    while (more())
      take(1, WordMeaning::notUnderstood);
    return {{}, std::move(words_)};
  }

  TypedLine readNet() {
    if (pieces_.size() < 2) {
      take(1, WordMeaning::net);
      return {{}, std::move(words_)};
    }
    NetWanted net{pieces_[1]};
    take(2, WordMeaning::net);
    return rest(net);
  }

  TypedLine readZone() {
    const auto kind = among(zoneKinds, lower(1));
    if (!kind) return incomplete();
    ZoneWanted zone{*kind, {}};
    take(2, WordMeaning::zone);
    if (more()) {
      take(pieces_.size() - at_, WordMeaning::part);
      zone.name = words_.back().text;
    }
    return done(zone);
  }

  TypedLine readTrack() {
    take(1, WordMeaning::track);
    const auto width = more() ? lengthIn(lower()) : std::nullopt;
    if (!width) return incomplete();
    take(1, WordMeaning::width);
    return rest(TrackWanted{*width});
  }

  TypedLine readCopy() {
    take(1, WordMeaning::copy);
    CopyWanted copy;
    while (more()) {
      if (oneOf(lower(), {"mirrored", "gespiegelt"})) {
        copy.mirrored = true;
        take(1, WordMeaning::mirrored);
        continue;
      }
      const auto parts = partsIn(pieces_[at_]);
      for (const PartId part : parts)
        if (std::find(copy.parts.begin(), copy.parts.end(), part) == copy.parts.end())
          copy.parts.push_back(part);
      take(1, parts.empty() ? WordMeaning::notUnderstood : WordMeaning::copied);
    }
    return copy.parts.empty() ? incomplete() : done(copy);
  }

  /// `R21`, or all from `R21-R28` (or `R21-28`) that are there.
  [[nodiscard]] std::vector<PartId> partsIn(const std::string& text) const {
    const auto dash = text.find('-');
    const auto from = partsOfReference(text.substr(0, dash));
    auto to = dash == std::string::npos ? from : partsOfReference(text.substr(dash + 1));
    if (to.letters.empty()) to.letters = from.letters;
    std::vector<PartId> out;
    if (!from.number || !to.number || from.letters != to.letters) return out;
    for (unsigned long n = *from.number; n <= *to.number && n - *from.number < mostOfARow; ++n)
      for (const Part& part : board_.parts)
        if (part.reference == from.letters + std::to_string(n)) out.push_back(part.id);
    return out;
  }

  TypedLine readPart() {
    const std::string written = capitals(pieces_.front());
    const auto reference = partsOfReference(written);
    const auto kind = kindOfPrefix(reference.letters);
    if (!kind) return incomplete();
    take(1, WordMeaning::part);
    if (isTwoTerminal(*kind)) return readTwoTerminals(reference, *kind);
    const std::string name = reference.number ? written : nextReference(board_, reference.letters);
    switch (*kind) {
    case PartKind::testPoint:
      return readTestPads(reference);
    case PartKind::shield:
      return readShield(name);
    case PartKind::battery:
    case PartKind::antenna:
    case PartKind::mechanical:
      return readBody({name, *kind, {}});
    default:
      return readArray({name, *kind, {}});
    }
  }

  TypedLine readTwoTerminals(const ReferenceParts& reference, PartKind kind) {
    TwoTerminalsWanted out;
    out.letters = reference.letters;
    out.from = reference.number;
    out.kind = kind;
    while (more()) {
      const std::string word = lower();
      if (out.size.empty() && sizes_.find(pieces_[at_]) != nullptr) {
        out.size = sizes_.find(pieces_[at_])->code;
        take(1, WordMeaning::size);
      } else if (const auto count = countIn(word);
                 count && (word.starts_with('x') || !out.value.empty() || !out.size.empty()) &&
                 out.count == 1) {
        out.count = *count;
        take(1, WordMeaning::count);
      } else if (!isTimes(word) && out.value.empty() &&
                 (parsePartValue(pieces_[at_]) || !std::isdigit(static_cast<unsigned char>(word[0])))) {
        out.value = pieces_[at_];
        take(1, WordMeaning::value);
      } else {
        take(1, WordMeaning::notUnderstood);
      }
    }
    return done(out);
  }

  TypedLine readTestPads(const ReferenceParts& reference) {
    TestPadsWanted out;
    out.letters = reference.letters;
    out.from = reference.number;
    if (const auto diameter = more() ? lengthIn(lower()) : std::nullopt) {
      out.diameter = *diameter;
      take(1, WordMeaning::diameter);
    }
    return rest(out);
  }

  TypedLine readShield(const std::string& name) {
    ShieldWanted out{name, {}};
    if (oneOf(lower(), {"lid", "deckel"})) {
      out.lid = lengthIn(lower(1));
      if (!out.lid) return incomplete();
      take(2, WordMeaning::lid);
    }
    return rest(out);
  }

  TypedLine readBody(PartLabel label) {
    if (more()) {
      label.value = pieces_[at_];
      take(1, WordMeaning::value);
    }
    return rest(BodyWanted{label});
  }

  TypedLine readArray(PartLabel label) {
    const bool connector = label.kind == PartKind::connector;
    array_ = PinArray{};
    array_.order = connector ? PinOrder::alternating : PinOrder::round;
    bool form = false;
    while (more())
      if (!takeOfArray(form)) {
        if (label.value.empty() && array_.pins > 0) {
          label.value = pieces_[at_];
          take(1, WordMeaning::value);
        } else {
          take(1, WordMeaning::notUnderstood);
        }
      }
    if (!connector && !form) array_.rows = array_.pins % 2 == 0 ? 2 : 1;
    if (array_.pins == 0 || !check(array_)) return {{}, std::move(words_)};
    return done(ArrayWanted{label, array_});
  }

  bool takeOfArray(bool& form) {
    const std::string word = lower();
    const std::string next = lower(1);
    const auto number = wholeNumber(word);
    if (number && oneOf(next, {"rows", "row", "reihen", "reihe"})) {
      array_.rows = *number;
      form = true;
      take(2, WordMeaning::rows);
    } else if (number && oneOf(next, {"sides", "seiten"})) {
      if (*number != 4) return false;
      array_.form = PinForm::fourSides;
      form = true;
      take(2, WordMeaning::fourSides);
    } else if (number && *number > 0 && array_.pins == 0) {
      array_.pins = *number;
      take(oneOf(next, {"pins", "pin", "polig", "stifte", "kontakte"}) ? 2 : 1, WordMeaning::pins);
    } else if (const auto grid = gridIn(word); grid && array_.pins == 0) {
      array_.form = PinForm::grid;
      array_.rows = grid->first;
      array_.pins = grid->first * grid->second;
      form = true;
      take(1, WordMeaning::grid);
    } else if (const auto order = among(orders, word)) {
      array_.order = *order;
      take(1, WordMeaning::order);
    } else if (oneOf(word, {"tabs", "laschen"})) {
      array_.tabs = true;
      take(1, WordMeaning::tabs);
    } else if (oneOf(word, {"key", "ohne"}) && !next.empty()) {
      array_.left.push_back(pieces_[at_ + 1]);
      take(2, WordMeaning::leftOut);
    } else {
      return takeLengths(word, next);
    }
    return true;
  }

  bool takeLengths(const std::string& word, const std::string& next) {
    if (const auto pitch = lengthIn(next); pitch && oneOf(word, {"pitch", "raster"})) {
      array_.pitch = pitch;
      take(2, WordMeaning::pitch);
    } else if (const auto pad = sizeIn(next); pad && oneOf(word, {"pads", "pad"})) {
      array_.pad = pad;
      take(2, WordMeaning::padSize);
    } else if (const auto hole = lengthIn(next); hole && oneOf(word, {"holes", "hole", "loch", "löcher"})) {
      array_.drill = Size{*hole, *hole};
      take(2, WordMeaning::holes);
    } else {
      return false;
    }
    return true;
  }

  const Board& board_;
  const ChipSizes& sizes_;
  std::vector<std::string> pieces_;
  std::size_t at_ = 0;
  std::vector<LineWord> words_;
  PinArray array_;
};

} // namespace

TypedLine readLine(std::string_view text, const Board& board, const ChipSizes& sizes, bool netInHand) {
  return LineReader(text, board, sizes).read(netInHand);
}

} // namespace netmend
