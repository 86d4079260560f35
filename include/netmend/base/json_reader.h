#pragma once

#include <cstdint>
#include <filesystem>
#include <initializer_list>
#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

#include <nlohmann/json.hpp>

#include "netmend/base/error.h"
#include "netmend/base/length.h"
#include "netmend/base/words.h"

namespace netmend {

/// Walks through a JSON document and remembers the first thing that is wrong with it, with file and JSON
/// pointer, so that a reader can be written as a list of fields and asked once at the end. What is wrong
/// reads as an empty or lowest value meanwhile. Nodes point into their reader, which must stay where it is.
class JsonReader {
public:
  class Node;

  /// Parses strictly (see parseJson); `file` is what errors name.
  [[nodiscard]] static Result<JsonReader> ofText(std::string_view text, std::string file);
  /// A file of up to 16 MB that begins with `format` and a version up to `newest`.
  [[nodiscard]] static Result<JsonReader> ofFile(const std::filesystem::path& path, std::string_view format,
                                                 std::uint64_t newest = 1);

  /// Checks the members `format` and `version` that every file of ours begins with.
  void expectFormat(std::string_view format, std::uint64_t newest = 1);
  [[nodiscard]] Node root();
  [[nodiscard]] bool failed() const { return error_.has_value(); }

  /// `value` if nothing was wrong, else the first error.
  template <class T> [[nodiscard]] Result<T> result(T value) const {
    if (error_) return failure(*error_);
    return value;
  }

private:
  JsonReader(nlohmann::json document, std::string file)
      : document_(std::move(document)), file_(std::move(file)) {}

  nlohmann::json document_;
  std::string file_;
  std::optional<Error> error_;
};

/// A value of the document and where it stands. Copies share the reader's error.
class JsonReader::Node {
public:
  Node(JsonReader& reader, const nlohmann::json& value, std::string pointer)
      : reader_(&reader), value_(&value), pointer_(std::move(pointer)) {}

  /// Refuses anything but an object with no other keys than these.
  void onlyKeys(std::initializer_list<std::string_view> keys) const;
  [[nodiscard]] bool has(const std::string& key) const;
  /// The member; a missing one is an error and reads as null.
  [[nodiscard]] Node at(const std::string& key) const;
  /// The items of a list; anything else is an error.
  [[nodiscard]] std::vector<Node> items() const;
  /// The members of an object; anything else is an error.
  [[nodiscard]] std::vector<std::pair<std::string, Node>> members() const;

  [[nodiscard]] std::string text() const;
  [[nodiscard]] std::string text(const std::string& key, std::string fallback) const {
    return has(key) ? at(key).text() : std::move(fallback);
  }
  [[nodiscard]] bool boolean() const;
  /// A finite number within the bounds.
  [[nodiscard]] double number(double least, double most) const;
  /// A length in millimetres, zero or more.
  [[nodiscard]] Length mm(double most = 1000.0) const { return Length::fromMm(number(0.0, most)); }
  /// A length in millimetres of which nothing would be left at zero: a micrometre or more.
  [[nodiscard]] Length mmAboveZero(double most) const { return Length::fromMm(number(0.001, most)); }
  [[nodiscard]] std::uint64_t whole() const;
  [[nodiscard]] bool isNull() const { return value_->is_null(); }
  [[nodiscard]] bool is(std::string_view text) const {
    return value_->is_string() && value_->get_ref<const std::string&>() == text;
  }
  /// The member `source`, not empty: each entry of a data file says where its figures come from.
  std::string source() const; // NOLINT(modernize-use-nodiscard): often it only has to be there

  /// A word that `from` turns into an optional value; the error says what was expected.
  template <class From> auto wordOf(From from, std::string_view expected) const {
    const std::string found = text();
    const auto value = from(found);
    if (!value) wrong(said(pattern("core", "unknown word")), "\"" + found + "\"", std::string(expected));
    return value ? *value : std::remove_cvref_t<decltype(*value)>{};
  }
  /// One of `words`; the error lists them.
  template <class E, std::size_t N> [[nodiscard]] E oneOf(const std::array<Word<E>, N>& words) const {
    std::string all;
    for (const auto& word : words)
      all += (all.empty() ? "" : ", ") + std::string(word.text);
    return wordOf([&](std::string_view text) { return fromWord(words, text); }, all);
  }

  /// Notes that this value is wrong, unless something before it was.
  void wrong(Said message, Said found, Said expected) const;

private:
  JsonReader* reader_;
  const nlohmann::json* value_;
  std::string pointer_;
};

inline JsonReader::Node JsonReader::root() {
  return {*this, document_, ""};
}

} // namespace netmend
