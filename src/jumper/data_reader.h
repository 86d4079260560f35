#pragma once

#include <filesystem>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <nlohmann/json.hpp>

#include "netmend/base/error.h"
#include "netmend/base/length.h"
#include "netmend/jumper/price.h"

/// Reading of the data files a user may edit, so that every mistake is told with file and JSON pointer.
namespace netmend::jumper {

/// Remembers the first mistake; a reader is written as a list of fields and asks at the end.
struct DataFile {
  nlohmann::json root;
  std::string name;
  std::optional<Error> error;
};

/// A value of the file and where it stands.
class DataNode {
public:
  DataNode(DataFile& file, const nlohmann::json& value, std::string pointer)
      : file_(&file), value_(&value), pointer_(std::move(pointer)) {}

  void onlyKeys(std::initializer_list<std::string_view> keys) const;
  [[nodiscard]] bool has(const std::string& key) const;
  [[nodiscard]] DataNode
  at(const std::string& key) const; ///< a missing member is a mistake, and reads as null
  [[nodiscard]] std::vector<DataNode> items() const;
  [[nodiscard]] std::vector<std::pair<std::string, DataNode>> members() const;
  [[nodiscard]] std::string text() const;
  [[nodiscard]] std::string textOr(const std::string& key, std::string fallback) const {
    return has(key) ? at(key).text() : std::move(fallback);
  }
  [[nodiscard]] bool boolean() const;
  [[nodiscard]] double number(double least, double most) const;
  [[nodiscard]] Length mm(double most = 1000.0) const { return Length::fromMm(number(0.0, most)); }
  [[nodiscard]] Price price() const { return Price(number(0.0, 1e6)); }
  /// The place of the text among `words`.
  [[nodiscard]] std::size_t oneOf(const std::vector<std::string_view>& words) const;
  void wrong(std::string message, std::string found, std::string expected) const;

private:
  DataFile* file_;
  const nlohmann::json* value_;
  std::string pointer_;
};

/// Reads and parses; checks the members `format` and `version`.
[[nodiscard]] Result<DataFile> openData(const std::filesystem::path& path, std::string_view format);
[[nodiscard]] inline DataNode rootOf(DataFile& file) {
  return {file, file.root, ""};
}

} // namespace netmend::jumper
