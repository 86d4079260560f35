#include "object_json.h"

namespace netmend {

using nlohmann::json;

json Encoder::value(const Ring& ring, const Place& place) {
  json out = json::array();
  for (std::size_t i = 0; i < ring.size(); ++i) {
    out.push_back(value(ring[i].x, Place(place, 2 * i)));
    out.push_back(value(ring[i].y, Place(place, 2 * i + 1)));
  }
  return out;
}

/// The nine figures of the plane, row by row, then the radial one.
json Encoder::value(const PhotoLie& lie, const Place& place) {
  json out = json::array();
  for (const double figure : lie.plane)
    out.push_back(value(Share(figure), place));
  out.push_back(value(Share(lie.radial), place));
  return out;
}

void Decoder::read(const json& in, PhotoPoint& out, const Place& place) {
  if (!isList(in, place)) return;
  if (in.size() != 2) return refuse(pattern("core", "is no pair"), place, in, pattern("core", "two numbers"));
  read(in[0], out.x, Place(place, std::size_t{0}));
  read(in[1], out.y, Place(place, std::size_t{1}));
}

void Decoder::read(const json& in, PhotoLie& out, const Place& place) {
  if (!isList(in, place)) return;
  if (in.size() != out.plane.size() + 1)
    return refuse(pattern("core", "is no place of a photo"), place, in, pattern("core", "ten numbers"));
  Share figure;
  for (std::size_t i = 0; i <= out.plane.size() && !problem; ++i) {
    read(in[i], figure, Place(place, i));
    (i < out.plane.size() ? out.plane[i] : out.radial) = figure.value;
  }
}

bool Decoder::isObject(const json& in, const Place& place) {
  if (!in.is_object()) refuse(pattern("core", "is not an object"), place, in, asItIs("{...}"));
  return in.is_object();
}

bool Decoder::isList(const json& in, const Place& place) {
  if (!in.is_array()) refuse(pattern("core", "is not a list"), place, in, asItIs("[...]"));
  return in.is_array();
}

void Decoder::read(const json& in, std::string& out, const Place& place) {
  if (!in.is_string()) return refuse(pattern("core", "is not a text"), place, in, pattern("core", "a text"));
  out = in.get<std::string>();
}

void Decoder::read(const json& in, bool& out, const Place& place) {
  if (!in.is_boolean())
    return refuse(pattern("core", "is neither true nor false"), place, in, pattern("core", "true or false"));
  out = in.get<bool>();
}

void Decoder::read(const json& in, Length& out, const Place& place) {
  constexpr auto most = largestLength.nm;
  const bool tooLarge = in.is_number_unsigned() && in.get<std::uint64_t>() > static_cast<std::uint64_t>(most);
  if (!in.is_number_integer() || tooLarge || in.get<std::int64_t>() < -most) {
    return refuse(pattern("core", "is no length"), place, in,
                  said(pattern("core", "whole nanometres from -{} to {}"), most, most));
  }
  out = Length(in.get<std::int64_t>());
}

void Decoder::pair(const json& in, Length& a, Length& b, const Place& place) {
  if (!isList(in, place)) return;
  if (in.size() != 2) return refuse(pattern("core", "is no pair"), place, in, pattern("core", "two lengths"));
  read(in[0], a, Place(place, std::size_t{0}));
  read(in[1], b, Place(place, std::size_t{1}));
}

void Decoder::read(const json& in, Ring& out, const Place& place) {
  if (!isList(in, place)) return;
  if (in.size() % 2 != 0)
    return refuse(pattern("core", "has an x without y"), place, in, asItIs("x, y, x, y, ..."));
  out.resize(in.size() / 2);
  for (std::size_t i = 0; i < out.size() && !problem; ++i) {
    read(in[2 * i], out[i].x, Place(place, 2 * i));
    read(in[2 * i + 1], out[i].y, Place(place, 2 * i + 1));
  }
}

void Decoder::number(const json& in, std::uint64_t& out, const Place& place) {
  if (!in.is_number_unsigned() || in.get<std::uint64_t>() > largestId)
    return refuse(pattern("core", "is no id"), place, in,
                  said(pattern("core", "a whole number from 0 to {}"), largestId));
  out = in.get<std::uint64_t>();
}

} // namespace netmend
