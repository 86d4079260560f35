#include "json_reader.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace netmend::probing {

using nlohmann::json;

namespace {

/// A short picture of a value for a message.
std::string shown(const json& value) {
  if (value.is_object()) return "an object";
  if (value.is_array()) return "an array";
  std::string text = value.dump(-1, ' ', false, json::error_handler_t::replace);
  return text.size() > 60 ? text.substr(0, 57) + "…" : text;
}

std::string escaped(const std::string& key) {
  std::string out;
  for (const char c : key) {
    if (c == '~')
      out += "~0";
    else if (c == '/')
      out += "~1";
    else
      out += c;
  }
  return out;
}

} // namespace

Result<json> parseJson(std::string_view text, const std::string& file) {
  try {
    // An own depth limit: what comes out is walked and freed by recursion here and there.
    const json::parser_callback_t shallow = [](int depth, json::parse_event_t, json&) {
      if (depth > 64) throw std::length_error("nested too deeply");
      return true;
    };
    return json::parse(text.begin(), text.end(), shallow);
  } catch (const json::parse_error& e) {
    const std::size_t at = std::min<std::size_t>(e.byte == 0 ? 0 : e.byte - 1, text.size());
    const auto before = text.substr(0, at);
    const auto line = std::count(before.begin(), before.end(), '\n') + 1;
    const auto start = before.rfind('\n');
    const auto column = start == std::string_view::npos ? at + 1 : at - start;
    return failure({"not valid JSON", file, fmt::format("line {}, column {}", line, column)});
  } catch (const std::exception& e) {
    return failure({std::string("not readable as JSON: ") + e.what(), file});
  }
}

JsonReader::JsonReader(const json& root, std::string file) : root_(&root), file_(std::move(file)) {}

void JsonReader::Node::wrong(std::string message, std::string found, std::string expected) const {
  if (reader_->failed_) return;
  reader_->failed_ = true;
  reader_->error_ = {std::move(message), reader_->file_, pointer_.empty() ? "/" : pointer_, std::move(found),
                     std::move(expected)};
}

void JsonReader::Node::onlyKeys(std::initializer_list<std::string_view> keys) const {
  if (!value_->is_object()) {
    wrong("wrong kind of value", shown(*value_), "an object");
    return;
  }
  for (const auto& [key, value] : value_->items()) {
    if (std::find(keys.begin(), keys.end(), key) != keys.end()) continue;
    std::string expected;
    for (const auto& k : keys)
      expected += (expected.empty() ? "" : ", ") + std::string(k);
    Node(*reader_, value, pointer_ + "/" + escaped(key)).wrong("unknown key", "\"" + key + "\"", expected);
    return;
  }
}

bool JsonReader::Node::has(const std::string& key) const {
  return value_->is_object() && value_->contains(key);
}

JsonReader::Node JsonReader::Node::at(const std::string& key) const {
  static const json null;
  const std::string pointer = pointer_ + "/" + escaped(key);
  if (has(key)) return {*reader_, (*value_)[key], pointer};
  Node missing(*reader_, null, pointer);
  missing.wrong("missing", "", "");
  return missing;
}

std::vector<JsonReader::Node> JsonReader::Node::items() const {
  std::vector<Node> nodes;
  if (!value_->is_array()) {
    wrong("wrong kind of value", shown(*value_), "an array");
    return nodes;
  }
  nodes.reserve(value_->size());
  for (std::size_t i = 0; i < value_->size(); ++i)
    nodes.emplace_back(*reader_, (*value_)[i], pointer_ + "/" + std::to_string(i));
  return nodes;
}

std::string JsonReader::Node::text() const {
  if (value_->is_string()) return value_->get<std::string>();
  wrong("wrong kind of value", shown(*value_), "a text");
  return {};
}

bool JsonReader::Node::boolean() const {
  if (value_->is_boolean()) return value_->get<bool>();
  wrong("wrong kind of value", shown(*value_), "true or false");
  return false;
}

double JsonReader::Node::number(double lowest, double highest) const {
  if (!value_->is_number()) {
    wrong("wrong kind of value", shown(*value_), "a number");
    return lowest;
  }
  const auto n = value_->get<double>();
  if (std::isfinite(n) && n >= lowest && n <= highest) return n;
  wrong("number out of range", shown(*value_), fmt::format("{} to {}", lowest, highest));
  return lowest;
}

std::uint64_t JsonReader::Node::whole() const {
  if (value_->is_number_unsigned()) return value_->get<std::uint64_t>();
  wrong("wrong kind of value", shown(*value_), "a whole number from 0 on");
  return 0;
}

void checkFormat(const JsonReader::Node& root, std::string_view format, int newest) {
  const std::string found = root.at("format").text();
  if (found != format) {
    root.at("format").wrong("another kind of file", "\"" + found + "\"", "\"" + std::string(format) + "\"");
    return;
  }
  const auto version = root.at("version").whole();
  if (version < 1 || version > static_cast<std::uint64_t>(newest)) {
    root.at("version").wrong(version > 0 ? "written by a newer Netmend" : "unknown version",
                             fmt::format("version {}", version), fmt::format("version 1 to {}", newest));
  }
}

} // namespace netmend::probing
