#include "time_text.h"

#include <charconv>

#include <fmt/format.h>

namespace netmend::probing {

namespace ch = std::chrono;

std::string timeText(Time time) {
  const auto day = ch::floor<ch::days>(time);
  const ch::year_month_day date(day);
  const ch::hh_mm_ss clock(time - day);
  return fmt::format("{:04}-{:02}-{:02}T{:02}:{:02}:{:02}.{:03}Z", static_cast<int>(date.year()),
                     static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()),
                     clock.hours().count(), clock.minutes().count(), clock.seconds().count(),
                     clock.subseconds().count());
}

std::optional<Time> timeFrom(std::string_view text) {
  if (text.size() != 20 && text.size() != 24) return std::nullopt;
  bool good = text.back() == 'Z';
  const auto number = [&](std::size_t at, std::size_t length) {
    int value = 0;
    const char* end = text.data() + at + length;
    for (const char* c = text.data() + at; c != end; ++c)
      good = good && *c >= '0' && *c <= '9';
    if (good) std::from_chars(text.data() + at, end, value);
    return value;
  };
  const auto mark = [&](std::size_t at, char c) { good = good && text[at] == c; };
  mark(4, '-');
  mark(7, '-');
  mark(10, 'T');
  mark(13, ':');
  mark(16, ':');
  const ch::year_month_day date{ch::year(number(0, 4)), ch::month(static_cast<unsigned>(number(5, 2))),
                                ch::day(static_cast<unsigned>(number(8, 2)))};
  const int hours = number(11, 2);
  const int minutes = number(14, 2);
  const int seconds = number(17, 2);
  int milliseconds = 0;
  if (text.size() == 24) {
    mark(19, '.');
    milliseconds = number(20, 3);
  }
  if (!good || !date.ok() || hours > 23 || minutes > 59 || seconds > 59) return std::nullopt;
  return Time(ch::sys_days(date)) + ch::hours(hours) + ch::minutes(minutes) + ch::seconds(seconds) +
         ch::milliseconds(milliseconds);
}

} // namespace netmend::probing
