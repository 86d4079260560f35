#pragma once

#include <filesystem>
#include <fstream>
#include <functional>
#include <sstream>
#include <string>
#include <vector>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <unistd.h>

#include "netmend/base/error.h"

/// Figures of the program's data files: read into their own fields, and refused outside their ranges.
namespace netmend::test {

inline std::string dataText(const std::string& name) {
  std::ifstream file(NETMEND_SOURCE_DIR "/data/" + name);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

inline std::string changed(const std::string& name, const std::string& pointer, const nlohmann::json& value) {
  auto json = nlohmann::json::parse(dataText(name));
  json[nlohmann::json::json_pointer(pointer)] = value;
  return json.dump();
}

/// A file that is gone after the test.
struct Written {
  std::filesystem::path path;
  Written(const std::string& name, const std::string& text)
      : path(std::filesystem::temp_directory_path() / (std::to_string(::getpid()) + "-" + name)) {
    std::ofstream(path) << text;
  }
  Written(const Written&) = delete;
  Written& operator=(const Written&) = delete;
  ~Written() { std::filesystem::remove(path); }
};

/// A figure of a data file, the range it has to be in, and where it goes.
template <class Read> struct RangedFigure {
  std::string pointer;
  double least;
  double most;
  std::function<double(const Read&)> field;
};

/// Each figure by itself: both ends of its range are read and land in their field and in no other, what is
/// beyond is refused with its place.
template <class Read, class Load>
void checkRanges(const std::string& name, const std::vector<RangedFigure<Read>>& figures, const Load& load) {
  const auto readWith = [&](const std::string& pointer, double value) {
    const Written file("figures.json", changed(name, pointer, value));
    return load(file.path);
  };
  const Read asItComes = load(std::filesystem::path(NETMEND_SOURCE_DIR "/data/" + name)).value();
  for (const auto& figure : figures) {
    INFO(figure.pointer);
    const auto node = nlohmann::json::parse(dataText(name)).at(nlohmann::json::json_pointer(figure.pointer));
    CHECK(figure.field(asItComes) == Approx(node.template get<double>()));
    for (const double end : {figure.least, figure.most}) {
      const auto read = readWith(figure.pointer, end);
      INFO(end);
      REQUIRE(read.has_value());
      CHECK(figure.field(*read) == Approx(end));
      for (const auto& other : figures)
        if (other.pointer != figure.pointer) CHECK(other.field(*read) == Approx(other.field(asItComes)));
    }
    const double below = figure.least > 0.0 ? 0.95 * figure.least : -0.01;
    for (const double beyond : {below, 1.05 * figure.most}) {
      const auto read = readWith(figure.pointer, beyond);
      INFO(beyond);
      REQUIRE_FALSE(read.has_value());
      CHECK(wordsOf(read.error().place) == figure.pointer);
    }
  }
}

} // namespace netmend::test
