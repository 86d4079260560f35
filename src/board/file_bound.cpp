#include "file_bound.h"

#include <cmath>

#include "exchange/text.h"
#include "fields.h"
#include "netmend/board/words.h"

namespace netmend {

namespace {

constexpr std::size_t lengthBytes = 13; // "-10000000000,"
constexpr std::size_t numberBytes = 25; // any double or id, and a comma
constexpr std::size_t wordBytes = 40;   // above any of the words

/// Visitor that adds up what `FieldWriter` would write.
class BoundVisitor {
public:
  FileBound bound;
  bool sound = true;

  template <class T> void must(const char* name, const T& value) {
    bound.bytes += std::string_view(name).size() + 4; // "name":,
    ++bound.members;
    add(value);
  }
  template <class T> void may(const char* name, const T& value) {
    if (!(value == T{})) must(name, value);
  }
  template <class T> void fact(const char* name, const Fact<T>& fact) {
    if (!fact.known()) return;
    bound.bytes += 24 + wordBytes; // {"origin":…,"value":…}
    bound.members += 3;
    must(name, fact.value);
  }

  /// A struct of fields.h, or an object with its id and origin.
  template <class T> void object(const T& object) {
    bound.bytes += 30 + numberBytes + wordBytes; // {"id":…,"origin":…} and a line's end
    bound.members += 3;
    fields(*this, object);
  }

private:
  void add(const std::string& text) {
    bound.bytes += 6 * text.size() + 2; // each letter as \u0000
    sound = sound && !textFault(text, {});
  }
  void add(bool) { bound.bytes += 5; }
  void add(Length length) {
    bound.bytes += lengthBytes;
    sound = sound && length <= largestLength && length >= -largestLength;
  }
  void add(Point p) { addPair(p.x, p.y); }
  void add(Size size) { addPair(size.width, size.height); }
  template <class Tag> void add(Id<Tag>) { bound.bytes += numberBytes; }
  template <class Tag> void add(Quantity<Tag> quantity) {
    bound.bytes += numberBytes;
    sound = sound && std::isfinite(quantity.value);
  }
  template <class E>
  requires std::is_enum_v<E>
  void add(E) { bound.bytes += wordBytes; }
  template <class T> void add(const std::vector<T>& list) {
    openList();
    for (const T& value : list)
      add(value);
  }
  void add(const Ring& ring) {
    openList();
    for (const Point p : ring) {
      add(p.x);
      add(p.y);
    }
  }
  void add(const Polygon& polygon) { object(polygon); }
  void add(const Through& through) { object(through); }
  void add(const PhotoPair& pair) { object(pair); }
  void add(const PhotoPoint& p) {
    openList();
    add(p.x);
    add(p.y);
  }
  void add(const PhotoLie& lie) {
    openList();
    for (const double figure : lie.plane)
      add(Share(figure));
    add(Share(lie.radial));
  }

  void addPair(Length a, Length b) {
    openList();
    add(a);
    add(b);
  }
  void openList() {
    bound.bytes += 3; // [],
    ++bound.members;
  }
};

} // namespace

std::optional<FileBound> fileBound(const Board& board) {
  BoundVisitor visitor;
  visitor.bound = {1000, 100}; // what stands round the lists
  visitor.object(board.info);
  forEachKind([&](auto kind) {
    for (const auto& object : board.*kind.table)
      visitor.object(object);
  });
  if (!visitor.sound) return std::nullopt;
  return visitor.bound;
}

} // namespace netmend
