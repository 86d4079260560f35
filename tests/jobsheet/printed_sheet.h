#pragma once

#include <catch2/catch.hpp>

#include <regex>
#include <sstream>
#include <string>
#include <vector>

#include "drawing/gui.h"
#include "netmend/jobsheet/job_sheet.h"

/// A sheet as poppler's tools (pdftotext, pdffonts, pdfinfo) read it, which share no code with what writes
/// it.
namespace netmend::testing {

struct Printed {
  TemporaryFolder folder;
  Result<void> result;

  explicit Printed(const SheetContent& content, const SheetOptions& options = {})
      : result((needApplication(), writeJobSheet(folder.path / "sheet.pdf", content, options))) {}

  [[nodiscard]] std::string tool(const std::string& command, const std::string& arguments = "") const {
    return outputOf(command + " '" + folder.file("sheet.pdf") + "' " + arguments);
  }
  [[nodiscard]] std::string text() const { return tool("pdftotext -layout", "-"); }
  [[nodiscard]] int pages() const {
    std::smatch match;
    const std::string info = tool("pdfinfo");
    return std::regex_search(info, match, std::regex("Pages: +([0-9]+)")) ? std::stoi(match[1]) : -1;
  }
};

inline bool contains(const std::string& text, const std::string& what) {
  return text.find(what) != std::string::npos;
}

inline std::string essay(std::size_t words) {
  std::ostringstream out;
  for (std::size_t i = 0; i < words; ++i)
    out << "word" << i << ' ';
  return out.str();
}

struct Word {
  double left, top, right, bottom;
  std::string text;
};

/// Every word of a document with its box, page by page, and the pages' sizes.
struct Words {
  std::vector<std::pair<double, double>> pages;
  std::vector<Word> words;
};

inline Words wordBoxes(const Printed& printed) {
  const std::string xml = printed.tool("pdftotext -bbox", "-");
  Words out;
  std::istringstream lines(xml);
  const std::regex page("<page width=\"([0-9.]+)\" height=\"([0-9.]+)\"");
  const std::regex word(
      "<word xMin=\"([-0-9.]+)\" yMin=\"([-0-9.]+)\" xMax=\"([-0-9.]+)\" yMax=\"([-0-9.]+)\">(.*)</word>");
  std::smatch match;
  for (std::string line; std::getline(lines, line);) {
    if (std::regex_search(line, match, page))
      out.pages.emplace_back(std::stod(match[1]), std::stod(match[2]));
    if (std::regex_search(line, match, word))
      out.words.push_back(
          {std::stod(match[1]), std::stod(match[2]), std::stod(match[3]), std::stod(match[4]), match[5]});
  }
  return out;
}

} // namespace netmend::testing
