#include "netmend/base/json_text.h"

#include <algorithm>
#include <optional>

namespace netmend {

using nlohmann::json;

namespace {

FilePlace lineAndColumn(std::string_view text, std::size_t offset) {
  const std::string_view before = text.substr(0, std::min(offset, text.size()));
  const auto line = static_cast<std::size_t>(std::count(before.begin(), before.end(), '\n')) + 1;
  const auto lineStart = before.rfind('\n');
  const auto column = before.size() - (lineStart == std::string_view::npos ? 0 : lineStart + 1) + 1;
  return FilePlace::atLine(line, column);
}

/// Printable and short, whatever stands in a broken file.
std::string presentable(std::string_view text) {
  constexpr std::size_t most = 120;
  std::string out(text.substr(0, most));
  std::replace_if(
      out.begin(), out.end(), [](char c) { return c < ' ' || c == '\x7f'; }, '?');
  if (text.size() > most) out += "...";
  return out;
}

/// Builds the document from the parser's events and stops at the first thing that it must not hold.
class Builder : public nlohmann::json_sax<json> {
public:
  Builder(std::string_view text, const JsonLimits& limits) : text_(text), limits_(limits) {}

  bool null() override { return add(nullptr); }
  bool boolean(bool value) override { return add(value); }
  bool number_integer(number_integer_t value) override { return add(value); }
  bool number_unsigned(number_unsigned_t value) override { return add(value); }
  bool number_float(number_float_t value, const string_t&) override { return add(value); }
  bool string(string_t& value) override { return add(std::move(value)); }
  bool binary(binary_t&) override { return false; }
  bool start_object(std::size_t) override { return open(json::object()); }
  bool end_object() override { return close(); }
  bool start_array(std::size_t) override { return open(json::array()); }
  bool end_array() override { return close(); }

  bool key(string_t& name) override {
    auto& object = open_.back()->get_ref<json::object_t&>();
    const auto [slot, fresh] = object.emplace(std::move(name), nullptr);
    if (!fresh)
      return refuse(
          {pattern("core", "the name stands twice in one object"), "", place(), presentable(slot->first)});
    slot_ = &slot->second;
    key_ = &slot->first;
    return count();
  }

  bool parse_error(std::size_t position, const std::string&, const json::exception& reason) override {
    const std::string_view what = reason.what();
    // "[json.exception.…] parse error at line 1, column 2: syntax error …": the place is given apart.
    const auto colon = what.find(": ");
    const auto detail = colon == std::string_view::npos ? what : what.substr(colon + 2);
    return refuse({"is not valid JSON: " + presentable(detail), "",
                   lineAndColumn(text_, position == 0 ? 0 : position - 1)});
  }

  json document;
  std::optional<Error> problem;

private:
  bool refuse(Error error) {
    problem = std::move(error);
    return false;
  }

  bool count() {
    if (++members_ <= limits_.members) return true;
    return refuse({pattern("core", "holds too much"),
                   "",
                   place(),
                   {},
                   said(pattern("core", "at most {} values"), limits_.members)});
  }

  json* put(json value) {
    if (open_.empty()) {
      document = std::move(value);
      return &document;
    }
    if (open_.back()->is_array()) {
      auto& list = open_.back()->get_ref<json::array_t&>();
      return &list.emplace_back(std::move(value));
    }
    *slot_ = std::move(value);
    return slot_;
  }

  template <class T> bool add(T value) {
    put(json(std::move(value)));
    return true;
  }

  bool open(json container) {
    if (open_.size() == limits_.depth)
      return refuse({pattern("core", "is nested too deeply"),
                     "",
                     place(),
                     {},
                     said(pattern("core", "at most {} levels"), limits_.depth)});
    open_.push_back(put(std::move(container)));
    keys_.push_back(key_);
    return count();
  }

  bool close() {
    open_.pop_back();
    keys_.pop_back();
    return true;
  }

  [[nodiscard]] std::string place() const {
    std::string out;
    for (std::size_t i = 1; i < open_.size(); ++i) {
      out += open_[i - 1]->is_array() ? "/" + std::to_string(open_[i - 1]->size() - 1)
                                      : jsonPointerStep(*keys_[i]);
    }
    return out;
  }

  std::string_view text_;
  JsonLimits limits_;
  std::vector<json*> open_;
  std::vector<const std::string*> keys_; ///< under which name each open container stands
  const std::string* key_ = nullptr;
  json* slot_ = nullptr;
  std::size_t members_ = 0;
};

} // namespace

Result<json> parseJson(std::string_view text, const JsonLimits& limits) {
  if (text.size() > limits.bytes) {
    return failure({pattern("core", "is too large"), "", "", said(pattern("core", "{} bytes"), text.size()),
                    said(pattern("core", "at most {} bytes"), limits.bytes)});
  }
  if (text.find_first_not_of(" \t\r\n") == std::string_view::npos)
    return failure({pattern("core", "is empty")});
  Builder builder(text, limits);
  if (!json::sax_parse(text, &builder)) {
    return failure(builder.problem ? std::move(*builder.problem)
                                   : Error{pattern("core", "is not valid JSON")});
  }
  return std::move(builder.document);
}

std::string jsonPointerStep(std::string_view name) {
  std::string out = "/";
  for (const char c : name) {
    if (c == '~')
      out += "~0";
    else if (c == '/')
      out += "~1";
    else
      out += c;
  }
  return out;
}

std::string shortText(const json& value) {
  if (value.is_object()) return "an object";
  if (value.is_array()) return "a list of " + std::to_string(value.size());
  return presentable(value.dump(-1, ' ', true, json::error_handler_t::replace));
}

} // namespace netmend
