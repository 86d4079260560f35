#pragma once

#include <algorithm>
#include <vector>

#include "netmend/base/json_reader.h"
#include "netmend/probing/reading.h"
#include "netmend/probing/words.h"

namespace netmend::probing {

/// The entry for a mode, or null.
template <class T> const T* entryFor(const std::vector<T>& entries, ReadingMode mode) {
  const auto it = std::find_if(entries.begin(), entries.end(), [&](const T& e) { return e.mode == mode; });
  return it == entries.end() ? nullptr : &*it;
}

inline ReadingMode readMode(const JsonReader::Node& node) {
  return node.wordOf(readingModeFrom, "a mode of reading such as \"diode\" or \"ohms\"");
}

/// A list with at most one entry for each mode.
template <class T>
std::vector<T> readEachMode(const JsonReader::Node& list, T (*read)(const JsonReader::Node&)) {
  std::vector<T> entries;
  for (const auto& item : list.items()) {
    T entry = read(item);
    if (entryFor(entries, entry.mode) != nullptr)
      item.at("mode").wrong(pattern("core", "mode given twice"), std::string(word(entry.mode)),
                            pattern("core", "each mode once"));
    entries.push_back(std::move(entry));
  }
  return entries;
}

} // namespace netmend::probing
