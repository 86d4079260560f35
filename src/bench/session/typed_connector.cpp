#include "typed_connector.h"

#include <array>
#include <cctype>
#include <charconv>
#include <utility>

#include <QUuid>

#include "netmend/board/board_file.h"
#include "netmend/board/connector_board.h"

namespace netmend {

namespace {

std::optional<std::size_t> numberIn(const std::string& word) {
  constexpr std::array<std::string_view, 7> words{"zero", "one", "two", "three", "four", "five", "six"};
  constexpr std::array<std::string_view, 7> german{"null", "eins", "zwei", "drei", "vier", "fünf", "sechs"};
  for (std::size_t i = 1; i < words.size(); ++i)
    if (word == words[i] || word == german[i]) return i;
  std::size_t number = 0;
  const auto parsed = std::from_chars(word.data(), word.data() + word.size(), number);
  if (parsed.ec != std::errc{} || parsed.ptr != word.data() + word.size()) return std::nullopt;
  return number;
}

/// Words in lower case, with the way they were written beside them.
struct TypedWord {
  std::string lower;
  std::string written;
};
std::vector<TypedWord> wordsOf(const std::string& text) {
  std::vector<TypedWord> out;
  bool fresh = true;
  for (const char c : text) {
    const auto u = static_cast<unsigned char>(c);
    if (std::isspace(u) != 0 || c == ',' || c == ';') {
      fresh = true;
      continue;
    }
    if (fresh) out.emplace_back();
    fresh = false;
    out.back().written += c;
    out.back().lower += static_cast<char>(std::tolower(u));
  }
  return out;
}

bool oneOf(const std::string& word, std::initializer_list<std::string_view> words) {
  for (const auto w : words)
    if (word == w) return true;
  return false;
}

} // namespace

Result<TypedConnector> parseConnector(const std::string& text) {
  constexpr Pattern example = pattern("core", "for example J4, 40 pins, two rows");
  TypedConnector out;
  std::size_t number = 0; // read, and not yet known what of; 0: none
  bool named = false;
  for (const TypedWord& word : wordsOf(text)) {
    if (oneOf(word.lower, {"connector", "with", "in", "of", "and", "stecker", "mit", "und"})) continue;
    if (oneOf(word.lower, {"pin", "pins", "p", "contacts", "way", "ways", "stifte", "kontakte", "polig"})) {
      if (number == 0) return failure({pattern("core", "how many pins?"), "", "", text, example});
      out.pins = std::exchange(number, 0);
    } else if (oneOf(word.lower, {"row", "rows", "reihe", "reihen"})) {
      if (number == 0) return failure({pattern("core", "how many rows?"), "", "", text, example});
      out.rows = std::exchange(number, 0);
    } else if (const std::size_t read = numberIn(word.lower).value_or(0); read > 0) {
      if (number > 0) out.pins = number;
      number = read;
    } else if (!named) {
      out.reference = word.written;
      named = true;
    } else {
      return failure({pattern("core", "not understood"), "", "", word.written, example});
    }
  }
  if (number > 0) out.pins = number;
  if (out.pins == 0) return failure({pattern("core", "how many pins has it?"), "", "", text, example});
  return out;
}

Result<Board> withConnector(const Board& board, const TypedConnector& connector) {
  Board out = board;
  if (auto added = addConnector(out, connector.reference, connector.pins, connector.rows); !added)
    return failure(added.error());
  return out;
}

Result<BoardUnderWork> makeConnectorFile(const TypedConnector& connector,
                                         const std::filesystem::path& folder) {
  auto board = makeConnectorBoard(connector.reference, connector.pins, connector.rows);
  if (!board) return failure(board.error());
  const std::string id = QUuid::createUuid().toString(QUuid::WithoutBraces).toStdString();
  board->info.uuid = id;
  std::error_code error;
  std::filesystem::create_directories(folder, error);
  if (error) return failure({said(pattern("core", "cannot be made: {}"), error.message()), folder.string()});
  const auto file = folder / (connector.reference.find('/') == std::string::npos
                                  ? connector.reference + "-" + id.substr(0, 8) + ".netmend-board.json"
                                  : id + ".netmend-board.json");
  if (auto written = writeBoardFile(file, *board); !written) return failure(written.error());
  return openBoard(file);
}

} // namespace netmend
