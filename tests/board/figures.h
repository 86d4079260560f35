#pragma once

#include <cmath>
#include <cstdint>
#include <string>

#include <nlohmann/json.hpp>

#include "board/fields.h"
#include "netmend/board/words.h"

namespace netmend::test {

/// A board in figures: of each kind of object how many; of each of its fields where its facts are from, how
/// often each word stands, sums of lengths (nm), and `order`, which changes with every value and its place.
class Figures {
public:
  [[nodiscard]] static nlohmann::json of(const Board& board) {
    Figures figures;
    figures.kind_ = &figures.all_["info"];
    fields(figures, board.info);
    forEachKind([&](auto kind) {
      figures.kind_ = &figures.all_[std::string(kind.list)];
      for (const auto& object : board.*kind.table) {
        count((*figures.kind_)["count"]);
        figures.add((*figures.kind_)["id"], object.id);
        figures.add((*figures.kind_)["origin"], object.origin);
        fields(figures, object);
      }
    });
    return figures.all_;
  }

  template <class T> void must(const char* name, const T& value) { add((*kind_)[name], value); }
  template <class T> void may(const char* name, const T& value) {
    if (!(value == T{})) must(name, value);
  }
  template <class T> void fact(const char* name, const Fact<T>& fact) {
    if (!fact.known()) return;
    count((*kind_)[name][std::string(wordFor(boardWords<Origin>, fact.origin))]);
    must(name, fact.value);
  }

private:
  using Json = nlohmann::json;

  static void count(Json& at, std::int64_t by = 1) { at = (at.is_null() ? 0 : at.get<std::int64_t>()) + by; }
  /// Any change of a value, and of the order of two, gives another number.
  static void mix(Json& at, std::int64_t value) {
    constexpr std::int64_t prime = 1'000'000'007;
    const std::int64_t before = at.is_null() ? 0 : at.get<std::int64_t>();
    at = ((before * 31 + value % prime) % prime + prime) % prime;
  }

  void add(Json& at, const std::string& text) {
    count(at["letters"], static_cast<std::int64_t>(text.size()));
    for (const char c : text)
      mix(at["order"], static_cast<unsigned char>(c));
    mix(at["order"], 1000);
  }
  void add(Json& at, bool flag) {
    count(at[flag ? "true" : "false"]);
    mix(at["order"], flag ? 1 : 0);
  }
  void add(Json& at, Length length) {
    count(at["sum"], length.nm);
    mix(at["order"], length.nm);
  }
  void add(Json& at, Point p) {
    add(at["x"], p.x);
    add(at["y"], p.y);
  }
  void add(Json& at, Size size) {
    add(at["width"], size.width);
    add(at["height"], size.height);
  }
  template <class Tag> void add(Json& at, Id<Tag> id) {
    mix(at["order"], static_cast<std::int64_t>(id.value));
  }
  template <class Tag> void add(Json& at, Quantity<Tag> quantity) {
    add(at["millionths"], Length(std::llround(quantity.value * 1e6)));
  }
  template <class E>
  requires std::is_enum_v<E>
  void add(Json& at, E value) {
    count(at[std::string(wordFor(boardWords<E>, value))]);
    mix(at["order"], static_cast<std::int64_t>(value));
  }
  template <class T> void add(Json& at, const std::vector<T>& list) {
    count(at["items"], static_cast<std::int64_t>(list.size()));
    for (const T& value : list)
      add(at, value);
  }
  void add(Json& at, const Polygon& polygon) {
    add(at["outer"], polygon.outer);
    if (!polygon.holes.empty()) add(at["holes"], polygon.holes);
  }
  void add(Json& at, const Through& through) {
    add(at["from"], through.from);
    add(at["to"], through.to);
    if (through.resistance.known()) add(at["resistance"], through.resistance.value);
  }

  void add(Json& at, const PhotoPoint& p) {
    add(at["x"], p.x);
    add(at["y"], p.y);
  }
  void add(Json& at, const PhotoLie& lie) {
    for (const double figure : lie.plane)
      add(at["plane"], Share(figure));
    add(at["radial"], Share(lie.radial));
  }
  void add(Json& at, const PhotoPair& pair) {
    add(at["photo"], pair.photo);
    add(at["board"], pair.board);
  }

  Json all_;
  Json* kind_ = nullptr;
};

} // namespace netmend::test
