#include "line_words.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <charconv>

namespace netmend {

std::string lowerCase(std::string_view text) {
  std::string out(text);
  for (char& c : out)
    c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  // Ä, Ö, Ü in UTF-8
  for (std::size_t i = 1; i < out.size(); ++i)
    if (out[i - 1] == '\xC3' && (out[i] == '\x84' || out[i] == '\x96' || out[i] == '\x9C'))
      out[i] = static_cast<char>(out[i] + 0x20);
  return out;
}

std::string capitals(std::string_view text) {
  std::string out(text);
  for (char& c : out)
    c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
  return out;
}

std::vector<std::string> piecesOf(std::string_view text) {
  std::vector<std::string> out;
  bool fresh = true;
  for (const char c : text) {
    if (std::isspace(static_cast<unsigned char>(c)) != 0 || c == ';') {
      fresh = true;
      continue;
    }
    if (fresh) out.emplace_back();
    fresh = false;
    out.back() += c;
  }
  for (std::string& piece : out)
    while (piece.size() > 1 && piece.back() == ',')
      piece.pop_back();
  return out;
}

std::optional<std::size_t> wholeNumber(std::string_view text) {
  constexpr std::array<std::string_view, 6> words{"one", "two", "three", "four", "five", "six"};
  constexpr std::array<std::string_view, 6> german{"eins", "zwei", "drei", "vier", "fünf", "sechs"};
  for (std::size_t i = 0; i < words.size(); ++i)
    if (text == words[i] || text == german[i] || (i == 0 && text == "eine")) return i + 1;
  std::size_t number = 0;
  const auto read = std::from_chars(text.data(), text.data() + text.size(), number);
  if (read.ec != std::errc{} || read.ptr != text.data() + text.size()) return std::nullopt;
  return number;
}

std::optional<Length> lengthIn(std::string text) {
  if (text.ends_with("mm")) text.resize(text.size() - 2);
  std::replace(text.begin(), text.end(), ',', '.');
  double mm = 0.0;
  const auto read = std::from_chars(text.data(), text.data() + text.size(), mm);
  if (read.ec != std::errc{} || read.ptr != text.data() + text.size() || !(mm >= 0.001 && mm <= 1000.0))
    return std::nullopt;
  return Length::fromMm(mm);
}

std::optional<Size> sizeIn(const std::string& text) {
  const auto cross = text.find('x');
  if (cross == std::string::npos) return std::nullopt;
  const auto a = lengthIn(text.substr(0, cross));
  const auto b = lengthIn(text.substr(cross + 1));
  if (!a || !b) return std::nullopt;
  return Size{*a, *b};
}

std::optional<std::pair<std::size_t, std::size_t>> gridIn(const std::string& text) {
  const auto cross = text.find('x');
  if (cross == std::string::npos) return std::nullopt;
  const auto a = wholeNumber(text.substr(0, cross));
  const auto b = wholeNumber(text.substr(cross + 1));
  constexpr std::size_t most = 10'000;
  if (!a || !b || *a == 0 || *b == 0 || *a > most || *b > most) return std::nullopt;
  return std::pair(*a, *b);
}

bool isTimes(const std::string& word) {
  return word.starts_with('x') && wholeNumber(word.substr(1));
}

std::optional<std::size_t> countIn(const std::string& word) {
  const auto count = wholeNumber(isTimes(word) ? word.substr(1) : word);
  return count && *count > 0 && *count <= mostOfARow && !word.starts_with('0') ? count : std::nullopt;
}

} // namespace netmend
