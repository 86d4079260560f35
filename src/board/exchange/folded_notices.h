#pragma once

#include <string>
#include <unordered_map>
#include <vector>

#include "netmend/base/said.h"

namespace netmend {

/// What was left out or taken otherwise, one line a kind: "records 370, not read: 3, first at line 12".
class FoldedNotices {
public:
  void add(const Said& kind, const Said& place) {
    const auto [it, isNew] = index_.emplace(wordsOf(kind), kinds_.size());
    if (isNew) kinds_.push_back({kind, place, 0});
    ++kinds_[it->second].count;
  }

  /// In the order in which the kinds were first met.
  void moveTo(std::vector<Said>& notices) {
    for (const Kind& k : kinds_)
      notices.push_back(said(pattern("core", "{}: {}, first at {}"), k.kind, k.count, k.firstPlace));
    *this = {};
  }

private:
  struct Kind {
    Said kind;
    Said firstPlace;
    std::size_t count = 0;
  };
  std::unordered_map<std::string, std::size_t> index_; ///< by the kind in English
  std::vector<Kind> kinds_;
};

} // namespace netmend
