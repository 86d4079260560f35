#include "data_reader.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

#include "netmend/base/file.h"

namespace netmend::jumper {
namespace {

using nlohmann::json;

std::string shown(const json& value) {
  if (value.is_object()) return "an object";
  if (value.is_array()) return "a list";
  std::string text = value.dump(-1, ' ', false, json::error_handler_t::replace);
  return text.size() > 60 ? text.substr(0, 57) + "..." : text;
}

std::string joined(const auto& words) {
  std::string text;
  for (const auto& word : words)
    text += (text.empty() ? "" : ", ") + std::string(word);
  return text;
}

} // namespace

void DataNode::wrong(std::string message, std::string found, std::string expected) const {
  if (file_->error) return;
  file_->error = Error{std::move(message), file_->name, pointer_.empty() ? "/" : pointer_, std::move(found),
                       std::move(expected)};
}

void DataNode::onlyKeys(std::initializer_list<std::string_view> keys) const {
  for (const auto& [key, node] : members())
    if (std::find(keys.begin(), keys.end(), key) == keys.end())
      node.wrong("unknown key", "\"" + key + "\"", joined(keys));
}

bool DataNode::has(const std::string& key) const {
  return value_->is_object() && value_->contains(key);
}

DataNode DataNode::at(const std::string& key) const {
  static const json null;
  if (has(key)) return {*file_, (*value_)[key], pointer_ + "/" + key};
  DataNode missing(*file_, null, pointer_ + "/" + key);
  missing.wrong("missing", "nothing", "a value");
  return missing;
}

std::vector<DataNode> DataNode::items() const {
  std::vector<DataNode> nodes;
  if (!value_->is_array()) wrong("wrong kind of value", shown(*value_), "a list");
  for (std::size_t i = 0; value_->is_array() && i < value_->size(); ++i)
    nodes.emplace_back(*file_, (*value_)[i], pointer_ + "/" + std::to_string(i));
  return nodes;
}

std::vector<std::pair<std::string, DataNode>> DataNode::members() const {
  std::vector<std::pair<std::string, DataNode>> nodes;
  if (!value_->is_object()) {
    wrong("wrong kind of value", shown(*value_), "an object");
    return nodes;
  }
  for (const auto& [key, value] : value_->items())
    nodes.emplace_back(key, DataNode(*file_, value, pointer_ + "/" + key));
  return nodes;
}

std::string DataNode::text() const {
  if (value_->is_string()) return value_->get<std::string>();
  wrong("wrong kind of value", shown(*value_), "a text");
  return {};
}

bool DataNode::boolean() const {
  if (value_->is_boolean()) return value_->get<bool>();
  wrong("wrong kind of value", shown(*value_), "true or false");
  return false;
}

double DataNode::number(double least, double most) const {
  if (value_->is_number()) {
    const auto value = value_->get<double>();
    if (std::isfinite(value) && value >= least && value <= most) return value;
    wrong("number out of range", shown(*value_), fmt::format("{:g} to {:g}", least, most));
  } else {
    wrong("wrong kind of value", shown(*value_), "a number");
  }
  return least;
}

std::size_t DataNode::oneOf(const std::vector<std::string_view>& words) const {
  const std::string word = text();
  const auto found = std::find(words.begin(), words.end(), word);
  if (found != words.end()) return static_cast<std::size_t>(found - words.begin());
  wrong("unknown word", "\"" + word + "\"", joined(words));
  return 0;
}

Result<DataFile> openData(const std::filesystem::path& path, std::string_view format) {
  const auto content = readFile(path, 16u << 20);
  if (!content) return failure(content.error());
  DataFile file{{}, path.string(), {}};
  try {
    const json::parser_callback_t shallow = [](int depth, json::parse_event_t, json&) {
      if (depth > 32) throw std::length_error("nested deeper than 32 levels");
      return true;
    };
    file.root = json::parse(*content, shallow);
  } catch (const json::parse_error& e) {
    const auto before = std::string_view(*content).substr(0, e.byte == 0 ? 0 : e.byte - 1);
    const auto line = std::count(before.begin(), before.end(), '\n') + 1;
    const auto start = before.rfind('\n');
    return failure(
        {.message = "not valid JSON",
         .file = file.name,
         .place = fmt::format("line {}, column {}", line,
                              start == std::string_view::npos ? before.size() + 1 : before.size() - start)});
  } catch (const std::length_error& e) {
    return failure({.message = e.what(), .file = file.name});
  }
  if (!file.root.is_object())
    return failure({.message = "wrong kind of value",
                    .file = file.name,
                    .place = "/",
                    .found = shown(file.root),
                    .expected = "an object"});
  const DataNode root = rootOf(file);
  if (root.at("format").text() != format)
    root.at("format").wrong("another kind of file", shown(file.root.value("format", json())),
                            std::string(format));
  if (root.at("version").number(1, 1e6) > 1)
    root.at("version").wrong("written for a newer Netmend", shown(file.root["version"]), "version 1");
  if (file.error) return failure(*file.error);
  return file;
}

} // namespace netmend::jumper
