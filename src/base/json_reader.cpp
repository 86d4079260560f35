#include "netmend/base/json_reader.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "netmend/base/file.h"
#include "netmend/base/json_text.h"

namespace netmend {

using nlohmann::json;

Result<JsonReader> JsonReader::ofText(std::string_view text, std::string file) {
  auto document = parseJson(text);
  if (!document) {
    document.error().file = std::move(file);
    return failure(std::move(document.error()));
  }
  return JsonReader(std::move(*document), std::move(file));
}

Result<JsonReader> JsonReader::ofFile(const std::filesystem::path& path, std::string_view format,
                                      std::uint64_t newest) {
  const auto text = readFile(path, 16u << 20);
  if (!text) return failure(text.error());
  auto reader = ofText(*text, path.string());
  if (reader) reader->expectFormat(format, newest);
  return reader;
}

void JsonReader::expectFormat(std::string_view format, std::uint64_t newest) {
  if (!document_.is_object())
    return root().wrong(pattern("core", "wrong kind of value"), shortText(document_),
                        pattern("core", "an object"));
  const Node name = root().at("format");
  const std::string found = name.text();
  if (found != format)
    return name.wrong(pattern("core", "another kind of file"), "\"" + found + "\"",
                      "\"" + std::string(format) + "\"");
  const Node number = root().at("version");
  const auto version = number.whole();
  if (version < 1 || version > newest)
    number.wrong(
        version > 0 ? pattern("core", "written by a newer Netmend") : pattern("core", "unknown version"),
        said(pattern("core", "version {}"), version), said(pattern("core", "version 1 to {}"), newest));
}

void JsonReader::Node::wrong(Said message, Said found, Said expected) const {
  if (reader_->failed()) return;
  reader_->error_ = Error{std::move(message), reader_->file_, pointer_.empty() ? "/" : pointer_,
                          std::move(found), std::move(expected)};
}

void JsonReader::Node::onlyKeys(std::initializer_list<std::string_view> keys) const {
  for (const auto& [key, member] : members()) {
    if (std::find(keys.begin(), keys.end(), key) != keys.end()) continue;
    return member.wrong(pattern("core", "unknown key"), "\"" + key + "\"",
                        fmt::format("{}", fmt::join(keys, ", ")));
  }
}

bool JsonReader::Node::has(const std::string& key) const {
  return value_->is_object() && value_->contains(key);
}

JsonReader::Node JsonReader::Node::at(const std::string& key) const {
  static const json null;
  const std::string pointer = pointer_ + jsonPointerStep(key);
  if (has(key)) return {*reader_, (*value_)[key], pointer};
  Node missing(*reader_, null, pointer);
  missing.wrong(pattern("core", "missing"), {}, pattern("core", "a value"));
  return missing;
}

std::vector<JsonReader::Node> JsonReader::Node::items() const {
  std::vector<Node> nodes;
  if (!value_->is_array()) {
    wrong(pattern("core", "wrong kind of value"), shortText(*value_), pattern("core", "a list"));
    return nodes;
  }
  nodes.reserve(value_->size());
  for (std::size_t i = 0; i < value_->size(); ++i)
    nodes.emplace_back(*reader_, (*value_)[i], pointer_ + "/" + std::to_string(i));
  return nodes;
}

std::vector<std::pair<std::string, JsonReader::Node>> JsonReader::Node::members() const {
  std::vector<std::pair<std::string, Node>> nodes;
  if (!value_->is_object()) {
    wrong(pattern("core", "wrong kind of value"), shortText(*value_), pattern("core", "an object"));
    return nodes;
  }
  nodes.reserve(value_->size());
  for (const auto& [key, value] : value_->items())
    nodes.emplace_back(key, Node(*reader_, value, pointer_ + jsonPointerStep(key)));
  return nodes;
}

std::string JsonReader::Node::text() const {
  if (value_->is_string()) return value_->get<std::string>();
  wrong(pattern("core", "wrong kind of value"), shortText(*value_), pattern("core", "a text"));
  return {};
}

bool JsonReader::Node::boolean() const {
  if (value_->is_boolean()) return value_->get<bool>();
  wrong(pattern("core", "wrong kind of value"), shortText(*value_), pattern("core", "true or false"));
  return false;
}

double JsonReader::Node::number(double least, double most) const {
  if (!value_->is_number()) {
    wrong(pattern("core", "wrong kind of value"), shortText(*value_), pattern("core", "a number"));
    return least;
  }
  const auto number = value_->get<double>();
  if (std::isfinite(number) && number >= least && number <= most) return number;
  wrong(pattern("core", "number out of range"), shortText(*value_),
        said(pattern("core", "{} to {}"), fmt::format("{:g}", least), fmt::format("{:g}", most)));
  return least;
}

std::uint64_t JsonReader::Node::whole() const {
  if (value_->is_number_unsigned()) return value_->get<std::uint64_t>();
  wrong(pattern("core", "wrong kind of value"), shortText(*value_),
        pattern("core", "a whole number from 0 on"));
  return 0;
}

std::string JsonReader::Node::source() const {
  const Node node = at("source");
  std::string text = node.text();
  if (text.empty())
    node.wrong(pattern("core", "no source is given"), asItIs("\"\""),
               pattern("core", "where the figures come from"));
  return text;
}

} // namespace netmend
