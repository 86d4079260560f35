#pragma once

#include <optional>
#include <string>

#include "fields.h"
#include "netmend/base/said.h"

/// Which objects an object names, taken from its list of fields.
namespace netmend {

/// Where in an object a reference stands; `list` and `index` when it is inside a list.
struct ReferencePlace {
  std::string_view list;
  std::size_t index = 0;
  std::string_view field;

  /// As the rest of a JSON pointer: `/net`, `/through/2/from`, `/layer_order/0`.
  [[nodiscard]] std::string pointer() const {
    std::string out;
    if (!list.empty()) out += "/" + std::string(list) + "/" + std::to_string(index);
    if (!field.empty()) out += "/" + std::string(field);
    return out;
  }
};

/// A visitor of fields that calls `use(place, id, required)` for every id that it meets.
template <class Use> class ReferenceVisitor {
public:
  explicit ReferenceVisitor(Use& use) : use_(use) {}

  template <class T> void must(std::string_view field, const T& value) { take(field, value, true); }
  template <class T> void may(std::string_view field, const T& value) { take(field, value, false); }
  template <class T> void fact(std::string_view field, const Fact<T>& fact) {
    if (fact.known()) take(field, fact.value, false);
  }

private:
  template <class T> void take(std::string_view field, const T& value, bool required) {
    if constexpr (AnyId<T>) {
      place_.field = field;
      use_(place_, value, required);
    } else if constexpr (std::same_as<T, std::vector<LayerId>> || std::same_as<T, std::vector<Through>>) {
      for (std::size_t i = 0; i < value.size(); ++i) {
        place_ = {field, i, {}};
        if constexpr (std::same_as<T, std::vector<LayerId>>)
          use_(place_, value[i], true);
        else
          fields(*this, value[i]);
      }
      place_ = {};
    }
  }

  Use& use_;
  ReferencePlace place_;
};

/// Calls `use(place, id, required)` for every reference in the object (or in the board's info).
template <class T, class Use> void forEachReference(const T& object, Use&& use) {
  ReferenceVisitor<std::remove_reference_t<Use>> visitor(use);
  fields(visitor, object);
}

/// A reference that leads nowhere.
struct Dangling {
  ReferencePlace place;
  std::string_view kind; ///< of the object named
  std::uint64_t id = 0;  ///< zero: none where there has to be one

  [[nodiscard]] Said said() const {
    if (id == 0) return netmend::said(pattern("core", "names no {}"), kind);
    return netmend::said(pattern("core", "names {} {}, which does not exist"), kind, id);
  }
};

/// The object's first reference for which `bad(id, required)` holds.
template <class T, class Bad> std::optional<Dangling> firstReference(const T& object, Bad&& bad) {
  std::optional<Dangling> found;
  forEachReference(object, [&](const ReferencePlace& place, auto id, bool required) {
    if (!found && bad(id, required)) found = Dangling{place, KindOfId<decltype(id)>::name, id.value};
  });
  return found;
}

/// The object's first reference that `exists(id)` denies, or that is none where it must not.
template <class T, class Exists> std::optional<Dangling> danglingIn(const T& object, Exists&& exists) {
  return firstReference(object, [&](auto id, bool required) { return id ? !exists(id) : required; });
}

/// A dangling reference of a whole board: in which list at which position (`info`: in the board's info).
struct DanglingAt {
  Dangling what;
  std::string_view list;
  std::size_t index = 0;
  std::string object; ///< "pin 12", "the board's info"
};
[[nodiscard]] std::optional<DanglingAt> firstDangling(const Board& board);

} // namespace netmend
