#include "netmend/casework/function_check.h"

#include <algorithm>
#include <cctype>
#include <regex>

namespace netmend {

bool isFunctionCheck(const WorkStep& step) {
  return step.function;
}

WorkStep functionCheck(const std::string& what) {
  WorkStep out;
  out.text = what;
  out.check = true;
  out.function = true;
  return out;
}

std::vector<std::string> functionsIn(const std::string& symptom) {
  constexpr std::size_t longest = 2000; // letters: what comes after them is a story
  static const std::string separator =
      R"((?:\s*,\s*(?:and |or |und |oder )?|\s+(?:and|or|und|oder)\s+|\s*/\s*))";
  static const std::string bare = R"((?:[0-9]{1,2}|[A-Z][a-z]+|[A-Z])(?![A-Za-z0-9.]*[0-9A-Za-z]))";
  static const std::string called = R"((?:[0-9]{1,3}|[A-Z][A-Za-z]*[0-9]*|[*#])(?![A-Za-z0-9]))";
  static const std::string noUnit = R"((?!\s*(?:V|A|W|mV|mA|mm|s|h|Hz|kHz|MHz|%)(?![A-Za-z])))";
  // A list is taken whole or not at all: its last figure says what all of them are.
  static const std::string noMore = "(?!" + separator + "[0-9A-Z])";
  static const std::regex afterKey(R"((?:^|[^A-Za-z])([Kk]ey|[Bb]utton|[Tt]aste)[sn]?\s+()" + called +
                                   "(?:" + separator + called + ")*)" + noMore + noUnit);
  static const std::regex list(R"((?:^|[\s:;(])([0-9]{1,2}(?![0-9A-Za-z.]*[0-9A-Za-z])(?:)" + separator +
                               bare + ")+)" + noMore + noUnit);
  static const std::regex ofKeys("[Kk]ey|[Bb]utton|[Tt]ast");
  const std::string text = symptom.substr(0, longest);
  std::smatch found, kind;
  std::string names, what;
  if (std::regex_search(text, found, afterKey)) {
    what = found[1];
    names = found[2];
  } else if (std::regex_search(text, found, list)) {
    names = found[1];
    if (std::regex_search(text, kind, ofKeys))
      what = kind[0] == "Tast" || kind[0] == "tast" ? kind[0].str() + "e" : kind[0].str();
  }
  if (!what.empty()) what[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(what[0])));
  std::vector<std::string> out;
  static const std::regex name("[0-9]+|[A-Z][A-Za-z0-9]*|[*#]");
  for (std::sregex_iterator it(names.begin(), names.end(), name), end; it != end; ++it) {
    const std::string one = it->str();
    const bool word = one.size() > 1 && std::isalpha(static_cast<unsigned char>(one[1])) != 0;
    std::string function = word || what.empty() ? std::string() : what + " ";
    function += one;
    if (std::find(out.begin(), out.end(), function) == out.end()) out.push_back(std::move(function));
  }
  return out;
}

const RepairAction* actionToProve(const Job& job) {
  const auto last = std::find_if(job.actions.rbegin(), job.actions.rend(),
                                 [](const RepairAction& a) { return a.kind != RepairKind::notEconomic; });
  return last == job.actions.rend() ? nullptr : &*last;
}

} // namespace netmend
