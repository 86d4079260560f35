#include "netmend/board/board_file.h"

#include <map>
#include <numeric>

#include "board_upgrade.h"
#include "file_bound.h"
#include "netmend/base/file.h"
#include "netmend/board/edit.h"
#include "object_json.h"
#include "references.h"

namespace netmend {

using nlohmann::json;

namespace {

constexpr std::string_view formatName = "netmend-board";
/// What one file may hold: above any board, below what would eat the memory.
constexpr JsonLimits fileLimits{};

class BoardDecoder {
public:
  Result<Board> decode(const json& document) {
    for (const auto& [name, value] : document.items()) {
      if (!knownName(name))
        return failure({pattern("core", "is no field of a board"), "", Place(root_, name).pointer()});
    }
    readInfo(document);
    forEachKind([&](auto kind) { readList(document, kind); });
    if (!decoder_.problem) checkIds(document);
    if (!decoder_.problem) findDangling();
    if (decoder_.problem) return failure(std::move(*decoder_.problem));
    return std::move(board_);
  }

private:
  static bool knownName(const std::string& name) {
    bool known = name == "format" || name == "version" || name == "last_id" || name == "info";
    forEachKind([&](auto kind) { known = known || name == kind.list; });
    return known;
  }

  void readInfo(const json& document) {
    const auto info = document.find("info");
    if (info != document.end()) decoder_.plain(*info, board_.info, Place(root_, "info"), Origin::unknown);
  }

  template <class K> void readList(const json& document, K) {
    using T = typename K::Type;
    const auto list = document.find(K::list);
    const Place place(root_, K::list);
    if (decoder_.problem || list == document.end() || !decoder_.isList(*list, place)) return;
    std::vector<T> items(list->size());
    for (std::size_t i = 0; i < items.size() && !decoder_.problem; ++i) {
      decoder_.object((*list)[i], items[i], Place(place, i));
      ids_.push_back({items[i].id.value, K::list, i});
    }
    // A list written by hand may be in any order; errors speak of the order in the file.
    std::vector<std::size_t> order(items.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return items[a].id < items[b].id; });
    auto& table = board_.*K::table;
    table.reserve(items.size());
    for (const std::size_t i : order)
      table.put(std::move(items[i]));
    fileOrder_[K::list] = std::move(order);
  }

  void checkIds(const json& document) {
    const auto last = document.find("last_id");
    if (last == document.end())
      return decoder_.refuseText(pattern("core", "a field is missing"), root_, {}, asItIs("last_id"));
    decoder_.number(*last, board_.lastId, Place(root_, "last_id"));
    std::stable_sort(ids_.begin(), ids_.end(), [](const Used& a, const Used& b) { return a.id < b.id; });
    for (std::size_t i = 1; i < ids_.size(); ++i) {
      if (ids_[i].id != ids_[i - 1].id) continue;
      return refuseId(ids_[i], said(pattern("core", "id {} is used twice"), ids_[i].id),
                      "also at /" + std::string(ids_[i - 1].list) + "/" + std::to_string(ids_[i - 1].index));
    }
    if (!ids_.empty() && ids_.back().id > board_.lastId)
      refuseId(ids_.back(), said(pattern("core", "id {} is above last_id"), ids_.back().id),
               "last_id " + std::to_string(board_.lastId));
  }

  struct Used {
    std::uint64_t id;
    std::string_view list;
    std::size_t index;
  };

  void refuseId(const Used& used, Said message, std::string found) {
    const Place list(root_, used.list);
    const Place object(list, used.index);
    decoder_.refuseText(std::move(message), Place(object, "id"), std::move(found), {});
  }

  void findDangling() {
    const auto bad = firstDangling(board_);
    if (!bad) return;
    std::string pointer = "/" + std::string(bad->list);
    if (bad->list != "info") pointer += "/" + std::to_string(fileOrder_.at(bad->list).at(bad->index));
    decoder_.problem = Error{said(pattern("core", "{} {}"), bad->object, bad->what.said()), "",
                             pointer + bad->what.place.pointer()};
  }

  Place root_;
  Board board_;
  Decoder decoder_;
  std::vector<Used> ids_;
  std::map<std::string_view, std::vector<std::size_t>> fileOrder_;
};

Result<Board> decodeDocument(std::string_view text) {
  auto document = parseJson(text, fileLimits);
  if (!document) return failure(std::move(document.error()));
  const auto format = document->is_object() ? document->find("format") : document->end();
  if (!document->is_object() || format == document->end() || *format != formatName) {
    return failure({pattern("core", "is no Netmend board file"), "", "",
                    document->is_object() && format != document->end()
                        ? said(pattern("core", "format {}"), shortText(*format))
                        : asItIs(""),
                    asItIs(R"("format": "netmend-board")")});
  }
  const auto version = document->find("version");
  const std::string wanted = "1 to " + std::to_string(boardFileVersion);
  if (version == document->end())
    return failure({pattern("core", "a field is missing"), "", "", {}, asItIs("version")});
  if (!version->is_number_unsigned() || *version == 0U)
    return failure({pattern("core", "is no version"), "", "/version", shortText(*version), wanted});
  if (*version > boardFileVersion) {
    return failure({said(pattern("core", "written by a newer Netmend: format {}, this one reads up to {}"),
                         shortText(*version), boardFileVersion),
                    "", "/version"});
  }
  if (auto done = upgradeBoardDocument(*document, version->get<int>()); !done)
    return failure(std::move(done.error()));
  return BoardDecoder().decode(*document);
}

/// No id of two objects, none beyond what JSON readers keep.
Result<void> checkIds(const Board& board) {
  std::vector<std::uint64_t> ids;
  forEachKind([&](auto kind) {
    for (const auto& object : board.*kind.table)
      ids.push_back(object.id.value);
  });
  std::sort(ids.begin(), ids.end());
  const auto twice = std::adjacent_find(ids.begin(), ids.end());
  if (twice != ids.end()) return failure({said(pattern("core", "id {} is used twice"), *twice)});
  if (!ids.empty() && (ids.front() == 0 || std::max(ids.back(), board.lastId) > largestId))
    return failure({pattern("core", "an id is zero or too large")});
  return {};
}

std::size_t membersIn(const json& value) {
  if (!value.is_structured()) return 0;
  std::size_t count = 1 + (value.is_object() ? value.size() : 0);
  for (const json& child : value)
    count += membersIn(child);
  return count;
}

/// Writes one line per object, names sorted, so that two boards can be compared with a text tool.
class BoardWriter {
public:
  Result<std::string> write(const Board& board) {
    std::map<std::string, std::string> members;
    if (auto sound =
            forEachMember(board, [&](const std::string& name, std::string text) { members[name] += text; });
        !sound)
      return failure(std::move(sound.error()));
    std::string out;
    for (const auto& [name, value] : members)
      out += (out.empty() ? "{\n" : ",\n") + json(name).dump() + ": " + value;
    out += "\n}\n";
    if (out.size() > fileLimits.bytes) return failure({std::string(tooLarge)});
    return out;
  }

  Result<void> measure(const Board& board) {
    std::size_t bytes = 1000; // more than all that stands round the members' texts
    if (auto sound =
            forEachMember(board, [&](const std::string&, const std::string& text) { bytes += text.size(); });
        !sound)
      return sound;
    if (bytes > fileLimits.bytes) return failure({std::string(tooLarge)});
    return {};
  }

private:
  static constexpr std::string_view tooLarge = "the board is too large for a file";

  /// Calls `add(name, text)` for each piece of text of the file's members.
  template <class Add> Result<void> forEachMember(const Board& board, Add add) {
    add("format", json(formatName).dump());
    add("version", std::to_string(boardFileVersion));
    add("last_id", std::to_string(std::max(board.lastId, highestId(board))));
    const Place infoPlace(root_, "info");
    add("info", text(encoder_.plain(board.info, infoPlace, Origin::unknown), infoPlace));
    forEachKind([&](auto kind) {
      const std::string list(kind.list);
      const Place place(root_, kind.list);
      std::size_t i = 0;
      for (const auto& object : board.*kind.table) {
        const Place here(place, i);
        add(list, (i++ == 0 ? "[\n " : ",\n ") + text(encoder_.object(object, here), here));
        if (encoder_.problem) return;
      }
      add(list, i == 0 ? "[]" : "\n]");
    });
    if (encoder_.problem) return failure(std::move(*encoder_.problem));
    if (members_ > fileLimits.members - 100) return failure({std::string(tooLarge)});
    return {};
  }

  static std::uint64_t highestId(const Board& board) {
    std::uint64_t highest = 0;
    forEachKind([&](auto kind) {
      const auto& table = board.*kind.table;
      if (!table.empty()) highest = std::max(highest, table[table.size() - 1].id.value);
    });
    return highest;
  }

  std::string text(const json& value, const Place& place) {
    members_ += membersIn(value);
    try {
      return value.dump();
    } catch (const json::exception&) {
      encoder_.refuse(pattern("core", "holds a text that is not UTF-8"), place, {});
      return {};
    }
  }

  Place root_;
  Encoder encoder_;
  std::size_t members_ = 0;
};

} // namespace

Result<Board> boardFromText(std::string_view text, std::string file) {
  auto board = decodeDocument(text);
  if (!board) board.error().file = std::move(file);
  return board;
}

Result<std::string> boardToText(const Board& board) {
  // What is written must be readable again.
  if (auto sound = checkReferences(board); !sound) return failure(std::move(sound.error()));
  if (auto sound = checkIds(board); !sound) return failure(std::move(sound.error()));
  return BoardWriter().write(board);
}

Result<void> checkWritable(const Board& board) {
  if (auto sound = checkReferences(board); !sound) return sound;
  if (auto sound = checkIds(board); !sound) return sound;
  // Nearly always, and in a tenth of the time.
  const auto bound = fileBound(board);
  if (bound && bound->bytes <= fileLimits.bytes && bound->members <= fileLimits.members) return {};
  return BoardWriter().measure(board);
}

Result<void> writeBoardFile(const std::filesystem::path& path, const Board& board) {
  auto text = boardToText(board);
  if (!text) {
    text.error().file = path.string();
    return failure(std::move(text.error()));
  }
  return writeFileAtomically(path, *text);
}

bool looksLikeBoardFile(std::string_view content) {
  const auto start = content.find_first_not_of("\xEF\xBB\xBF \t\r\n");
  if (start == std::string_view::npos || content[start] != '{') return false;
  // Written by this program, `format` follows the list of areas, which may be long.
  return content.find(formatName) != std::string_view::npos;
}

} // namespace netmend
