#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include <nlohmann/json.hpp>

#include "netmend/base/error.h"

namespace netmend::probing {

/// Parses JSON text; an error names file, line and column.
[[nodiscard]] Result<nlohmann::json> parseJson(std::string_view text, const std::string& file);

/// Walks through a parsed file and remembers the first thing that is wrong with it, so that a reader can be
/// written as a list of fields and asked once at the end.
class JsonReader {
public:
  JsonReader(const nlohmann::json& root, std::string file);

  /// A place in the file. Copies share the reader's error.
  class Node {
  public:
    Node(JsonReader& reader, const nlohmann::json& value, std::string pointer)
        : reader_(&reader), value_(&value), pointer_(std::move(pointer)) {}

    /// Refuses anything but an object with no other keys than these.
    void onlyKeys(std::initializer_list<std::string_view> keys) const;
    [[nodiscard]] bool has(const std::string& key) const;
    /// The member; a missing one is an error and reads as null.
    [[nodiscard]] Node at(const std::string& key) const;
    /// The items of an array; anything else is an error.
    [[nodiscard]] std::vector<Node> items() const;

    [[nodiscard]] std::string text() const;
    [[nodiscard]] bool boolean() const;
    /// A finite number within the bounds.
    [[nodiscard]] double number(double lowest, double highest) const;
    [[nodiscard]] std::uint64_t whole() const;
    [[nodiscard]] bool is(std::string_view text) const {
      return value_->is_string() && value_->get_ref<const std::string&>() == text;
    }

    [[nodiscard]] std::string text(const std::string& key, std::string fallback) const {
      return has(key) ? at(key).text() : std::move(fallback);
    }
    /// A word that `from` turns into an optional value; the error lists what was expected.
    template <class From> auto wordOf(From from, std::string_view expected) const {
      const std::string found = text();
      const auto value = from(found);
      if (!value) wrong("unknown word", "\"" + found + "\"", std::string(expected));
      return value ? *value : std::remove_cvref_t<decltype(*value)>{};
    }

    void wrong(std::string message, std::string found, std::string expected) const;

  private:
    JsonReader* reader_;
    const nlohmann::json* value_;
    std::string pointer_;
  };

  [[nodiscard]] Node root() { return {*this, *root_, ""}; }
  [[nodiscard]] bool failed() const { return failed_; }
  [[nodiscard]] const Error& error() const { return error_; }

  /// `value` if nothing was wrong.
  template <class T> [[nodiscard]] Result<T> result(T value) const {
    if (failed_) return failure(error_);
    return value;
  }

private:
  const nlohmann::json* root_;
  std::string file_;
  bool failed_ = false;
  Error error_;
};

/// Checks the members `format` and `version` that every file of ours begins with.
void checkFormat(const JsonReader::Node& root, std::string_view format, int newest);

} // namespace netmend::probing
