#pragma once

#include <optional>
#include <string>
#include <vector>

#include "fields.h"
#include "netmend/base/json_text.h"
#include "netmend/board/words.h"
#include "place.h"

/// A board's objects as JSON and back, driven by the lists in fields.h. A fact is its bare value when it
/// has its object's origin, else {"origin": …, "value": …}; no other value is ever an object, so that the
/// two cannot be confused. Both directions keep the first problem and go on without effect after it.
namespace netmend {

template <class T>
concept Word_ = requires {
  boardWords<T>.size();
};

/// Turns values into JSON.
class Encoder {
public:
  std::optional<Error> problem;

  nlohmann::json value(const std::string& text, const Place&) { return text; }
  nlohmann::json value(bool flag, const Place&) { return flag; }
  nlohmann::json value(Length length, const Place& place) {
    if (length > largestLength || length < -largestLength)
      refuse(pattern("core", "is longer than a board can be"), place,
             said(pattern("core", "{} nm"), length.nm));
    return length.nm;
  }
  nlohmann::json value(Point p, const Place& place) { return pair(p.x, p.y, place); }
  nlohmann::json value(Size s, const Place& place) { return pair(s.width, s.height, place); }
  template <class Tag> nlohmann::json value(Id<Tag> id, const Place&) { return id.value; }
  template <class Tag> nlohmann::json value(Quantity<Tag> q, const Place& place) {
    if (!std::isfinite(q.value)) refuse(pattern("core", "is not a number"), place, std::to_string(q.value));
    return q.value;
  }
  nlohmann::json value(const PhotoPoint& p, const Place& place) {
    return nlohmann::json::array({value(p.x, place), value(p.y, place)});
  }
  nlohmann::json value(const PhotoLie& lie, const Place& place);
  template <Word_ E> nlohmann::json value(E e, const Place&) { return wordFor(boardWords<E>, e); }
  nlohmann::json value(const Ring& ring, const Place& place);
  template <class T> nlohmann::json value(const std::vector<T>& list, const Place& place) {
    nlohmann::json out = nlohmann::json::array();
    for (std::size_t i = 0; i < list.size(); ++i)
      out.push_back(value(list[i], Place(place, i)));
    return out;
  }
  nlohmann::json value(const Polygon& polygon, const Place& place) {
    return plain(polygon, place, Origin::unknown);
  }
  nlohmann::json value(const Through& through, const Place& place) {
    return plain(through, place, Origin::unknown);
  }
  nlohmann::json value(const PhotoPair& pair, const Place& place) {
    return plain(pair, place, Origin::unknown);
  }

  /// A struct of fields.h without id and origin.
  template <class T> nlohmann::json plain(const T& object, const Place& place, Origin origin);
  /// An object with an id.
  template <class T> nlohmann::json object(const T& object, const Place& place) {
    nlohmann::json out = plain(object, place, object.origin);
    out["id"] = object.id.value;
    if (object.origin != Origin::unknown) out["origin"] = wordFor(boardWords<Origin>, object.origin);
    return out;
  }

  void refuse(const Said& message, const Place& place, Said found) {
    if (!problem) problem = Error{message, "", place.pointer(), std::move(found)};
  }

private:
  nlohmann::json pair(Length a, Length b, const Place& place) {
    return nlohmann::json::array({value(a, place), value(b, place)});
  }
};

/// Turns JSON into values.
class Decoder {
public:
  std::optional<Error> problem;

  void read(const nlohmann::json& in, std::string& out, const Place& place);
  void read(const nlohmann::json& in, bool& out, const Place& place);
  void read(const nlohmann::json& in, Length& out, const Place& place);
  void read(const nlohmann::json& in, Point& out, const Place& place) { pair(in, out.x, out.y, place); }
  void read(const nlohmann::json& in, Size& out, const Place& place) {
    pair(in, out.width, out.height, place);
  }
  void read(const nlohmann::json& in, Ring& out, const Place& place);
  /// Zero to `largestId`.
  void number(const nlohmann::json& in, std::uint64_t& out, const Place& place);
  template <class Tag> void read(const nlohmann::json& in, Id<Tag>& out, const Place& place) {
    number(in, out.value, place);
  }
  template <class Tag> void read(const nlohmann::json& in, Quantity<Tag>& out, const Place& place) {
    if (!in.is_number())
      return refuse(pattern("core", "is not a number"), place, in, pattern("core", "a number"));
    out.value = in.get<double>();
  }
  void read(const nlohmann::json& in, PhotoPoint& out, const Place& place);
  void read(const nlohmann::json& in, PhotoLie& out, const Place& place);
  template <Word_ E> void read(const nlohmann::json& in, E& out, const Place& place);
  template <class T> void read(const nlohmann::json& in, std::vector<T>& out, const Place& place) {
    if (!isList(in, place)) return;
    out.resize(in.size());
    for (std::size_t i = 0; i < in.size() && !problem; ++i)
      read(in[i], out[i], Place(place, i));
  }
  void read(const nlohmann::json& in, Polygon& out, const Place& place) {
    plain(in, out, place, Origin::unknown);
  }
  void read(const nlohmann::json& in, Through& out, const Place& place) {
    plain(in, out, place, Origin::unknown);
  }
  void read(const nlohmann::json& in, PhotoPair& out, const Place& place) {
    plain(in, out, place, Origin::unknown);
  }

  /// A struct of fields.h; `others` counts the names in the object that were read otherwise.
  template <class T>
  void plain(const nlohmann::json& in, T& out, const Place& place, Origin origin, std::size_t others = 0);
  /// An object with an id.
  template <class T> void object(const nlohmann::json& in, T& out, const Place& place);

  bool isObject(const nlohmann::json& in, const Place& place);
  bool isList(const nlohmann::json& in, const Place& place);
  void refuse(const Said& message, const Place& place, const nlohmann::json& found, Said expected) {
    refuseText(message, place, shortText(found), std::move(expected));
  }
  void refuseText(Said message, const Place& place, Said found, Said expected) {
    if (!problem)
      problem = Error{std::move(message), "", place.pointer(), std::move(found), std::move(expected)};
  }

private:
  void pair(const nlohmann::json& in, Length& a, Length& b, const Place& place);
};

/// Visitor that writes fields.
class FieldWriter {
public:
  FieldWriter(Encoder& encoder, nlohmann::json& out, const Place& place, Origin origin)
      : encoder_(encoder), out_(out), place_(place), origin_(origin) {}

  template <class T> void must(const char* name, const T& value) {
    out_[name] = encoder_.value(value, Place(place_, name));
  }
  template <class T> void may(const char* name, const T& value) {
    if (!(value == T{})) must(name, value);
  }
  template <class T> void fact(const char* name, const Fact<T>& fact) {
    if (!fact.known()) return;
    if (fact.origin == origin_) return must(name, fact.value);
    const Place here(place_, name);
    out_[name] = {{"origin", wordFor(boardWords<Origin>, fact.origin)},
                  {"value", encoder_.value(fact.value, Place(here, "value"))}};
  }

private:
  Encoder& encoder_;
  nlohmann::json& out_;
  const Place& place_;
  Origin origin_;
};

/// Visitor that reads fields and keeps count, so that a name which nobody asked for is noticed.
class FieldReader {
public:
  FieldReader(Decoder& decoder, const nlohmann::json& in, const Place& place, Origin origin)
      : decoder_(decoder), in_(in), place_(place), origin_(origin) {}

  template <class T> void must(const char* name, T& value) {
    const auto* field = find(name);
    if (!field) return decoder_.refuseText(pattern("core", "a field is missing"), place_, {}, asItIs(name));
    take(*field, value, Place(place_, name));
    if constexpr (AnyId<T>) {
      if (!value)
        decoder_.refuse(pattern("core", "names nothing"), Place(place_, name), *field,
                        pattern("core", "an id"));
    }
  }
  template <class T> void may(const char* name, T& value) {
    if (const auto* field = find(name)) take(*field, value, Place(place_, name));
  }
  template <class T> void fact(const char* name, Fact<T>& fact) {
    const auto* field = find(name);
    if (!field) return;
    const Place here(place_, name);
    if (field->is_object()) return withOrigin(*field, fact, here);
    fact.origin = origin_;
    if (!fact.known()) {
      return decoder_.refuse(pattern("core", "has no origin, and neither has its object"), here, *field,
                             asItIs(R"({"origin": ..., "value": ...})"));
    }
    take(*field, fact.value, here);
  }

  [[nodiscard]] std::size_t taken() const { return names_.size() - missing_; }
  [[nodiscard]] const std::vector<std::string_view>& names() const { return names_; }

private:
  const nlohmann::json* find(const char* name) {
    const auto it = in_.find(name);
    names_.emplace_back(name);
    if (it == in_.end()) ++missing_;
    return it == in_.end() ? nullptr : &*it;
  }
  template <class T> void take(const nlohmann::json& field, T& value, const Place& place) {
    if (!decoder_.problem) decoder_.read(field, value, place);
  }
  template <class T> void withOrigin(const nlohmann::json& field, Fact<T>& fact, const Place& here) {
    const auto origin = field.find("origin");
    const auto value = field.find("value");
    if (origin == field.end() || value == field.end() || field.size() != 2) {
      return decoder_.refuse(pattern("core", "is no fact with an origin of its own"), here, field,
                             asItIs(R"({"origin": ..., "value": ...} and nothing else)"));
    }
    take(*origin, fact.origin, Place(here, "origin"));
    if (!decoder_.problem && !fact.known())
      decoder_.refuseText(pattern("core", "an unknown fact is left out"), Place(here, "origin"), {}, {});
    take(*value, fact.value, Place(here, "value"));
  }

  Decoder& decoder_;
  const nlohmann::json& in_;
  const Place& place_;
  Origin origin_;
  std::vector<std::string_view> names_;
  std::size_t missing_ = 0;
};

template <class T> nlohmann::json Encoder::plain(const T& object, const Place& place, Origin origin) {
  nlohmann::json out = nlohmann::json::object();
  FieldWriter writer(*this, out, place, origin);
  fields(writer, object);
  return out;
}

template <Word_ E> void Decoder::read(const nlohmann::json& in, E& out, const Place& place) {
  const auto* text = in.get_ptr<const std::string*>();
  const auto found = text ? fromWord(boardWords<E>, *text) : std::nullopt;
  if (found) {
    out = *found;
    return;
  }
  std::string expected;
  for (const auto& word : boardWords<E>)
    expected += (expected.empty() ? "" : ", ") + std::string(word.text);
  refuse(pattern("core", "is none of the words for it"), place, in, expected);
}

template <class T>
void Decoder::plain(const nlohmann::json& in, T& out, const Place& place, Origin origin, std::size_t others) {
  if (!isObject(in, place)) return;
  FieldReader reader(*this, in, place, origin);
  fields(reader, out);
  if (problem || reader.taken() + others == in.size()) return;
  for (const auto& [name, value] : in.items()) {
    const auto& known = reader.names();
    if (std::find(known.begin(), known.end(), name) != known.end()) continue;
    if (others > 0 && (name == "id" || name == "origin")) continue;
    return refuse(pattern("core", "is no field of this"), Place(place, name), value, {});
  }
}

template <class T> void Decoder::object(const nlohmann::json& in, T& out, const Place& place) {
  if (!isObject(in, place)) return;
  const auto id = in.find("id");
  if (id == in.end()) return refuseText(pattern("core", "a field is missing"), place, {}, asItIs("id"));
  read(*id, out.id, Place(place, "id"));
  if (!problem && !out.id)
    return refuse(pattern("core", "is no id"), Place(place, "id"), *id,
                  pattern("core", "a whole number from 1 on"));
  const auto origin = in.find("origin");
  if (origin != in.end()) read(*origin, out.origin, Place(place, "origin"));
  if (!problem) plain(in, out, place, out.origin, origin != in.end() ? 2 : 1);
}

} // namespace netmend
