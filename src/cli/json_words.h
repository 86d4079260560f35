#pragma once

#include <string_view>
#include <vector>

#include <nlohmann/json.hpp>

#include "netmend/base/geometry.h"
#include "netmend/jobbook/job_words.h"
#include "netmend/words/step.h"

namespace netmend {

/// For people and scripts, places are in millimetres.
[[nodiscard]] inline nlohmann::json pointJsonMm(Point p) {
  return nlohmann::json::array({p.x.mm(), p.y.mm()});
}

[[nodiscard]] inline nlohmann::json wayJsonMm(const std::vector<Point>& way) {
  auto out = nlohmann::json::array();
  for (const Point p : way)
    out.push_back(pointJsonMm(p));
  return out;
}

/// Empty: not judged.
[[nodiscard]] inline std::string_view verdictWord(const JobReading& reading) {
  return reading.judged ? word(reading.kind()) : "";
}

/// As it reads in a job, or would.
[[nodiscard]] inline nlohmann::json stepJson(const WorkStep& step, const RepairAction& action) {
  return {{"text", wordsOf(stepSaid(step, action))},
          {"detail", wordsOf(detailSaid(step, action))},
          {"check", step.check},
          {"expected", wordsOf(expectedSaid(step, action))},
          {"otherwise", wordsOf(otherwiseSaid(step, action))}};
}

} // namespace netmend
