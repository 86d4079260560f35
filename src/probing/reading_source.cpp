#include "netmend/probing/reading_source.h"

#include <fmt/format.h>

#include "netmend/probing/reading_entry.h"
#include "netmend/probing/words.h"
#include "plain_text.h"
#include "trimmed.h"

namespace netmend {

namespace {

constexpr std::size_t longestLine = 4096;

class TextSource : public ReadingSource {
public:
  TextSource(std::istream& in, std::string name, ReadingMode mode)
      : in_(&in), name_(std::move(name)), mode_(mode) {}

  std::optional<Result<ReadingEvent>> next() override {
    std::string line;
    while (readLine(line)) {
      ++line_;
      std::string_view text(line);
      if (line_ == 1 && text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
      if (const auto remark = text.find('#'); remark != std::string_view::npos) text = text.substr(0, remark);
      text = trimmed(text);
      if (text.empty()) continue;
      auto event = parse(text);
      if (!event) {
        event.error().file = name_;
        event.error().place = FilePlace::atLine(line_);
      }
      return event;
    }
    return std::nullopt;
  }

  bool ended() const override { return ended_; }

private:
  /// A line of sensible length; the rest of a longer one is thrown away, so that a file without any line end
  /// does not fill the memory.
  bool readLine(std::string& line) {
    line.clear();
    for (int c = in_->get(); c != std::istream::traits_type::eof(); c = in_->get()) {
      if (c == '\n') return true;
      if (line.size() <= longestLine) line += static_cast<char>(c);
    }
    ended_ = true;
    return !line.empty();
  }

  Result<ReadingEvent> parse(std::string_view text) {
    if (text.size() > longestLine) return failure({pattern("core", "line too long")});
    if (!probing::isPlainText(text)) return failure({pattern("core", "not text in UTF-8")});
    if (text == "skip") return PointSkipped{};
    if (text == "back") return StepBack{};
    if (text == "undo") return UndoLast{};
    if (text.starts_with("mode ")) {
      const auto name = trimmed(text.substr(5));
      const auto mode = readingModeFrom(name);
      if (!mode) {
        return failure({pattern("core", "unknown mode"), "", "", fmt::format("\"{}\"", name),
                        pattern("core", "diode, diode reversed, ohms, milliohms, continuity, volts, drop "
                                        "under current or temperature")});
      }
      mode_ = *mode;
      return ModeChanged{*mode};
    }
    return parseValue(text);
  }

  Result<ReadingEvent> parseValue(std::string_view text) const {
    ValueTaken taken;
    taken.mode = mode_;
    for (const Settling settling : {Settling::rising, Settling::settled}) {
      const auto name = word(settling);
      if (!text.ends_with(name) || text.size() == name.size()) continue;
      if (text[text.size() - name.size() - 1] != ' ') continue;
      taken.settling = settling;
      text = trimmed(text.substr(0, text.size() - name.size()));
      break;
    }
    auto whole = parseReadingValue(text, mode_);
    if (whole) {
      taken.value = whole->value;
      return taken;
    }
    const auto space = text.find_first_of(" \t");
    if (space == std::string_view::npos) return failure(whole.error());
    const auto value = parseReadingValue(trimmed(text.substr(space)), mode_);
    // "452 mV" in ohms mode is a wrong value, not a point called 452.
    const bool startsLikeNumber =
        std::string_view("0123456789.,+-").find(text.front()) != std::string_view::npos;
    if (!value) return failure(startsLikeNumber ? whole.error() : value.error());
    taken.label = text.substr(0, space);
    taken.value = value->value;
    return taken;
  }

  std::istream* in_;
  std::string name_;
  ReadingMode mode_;
  std::size_t line_ = 0;
  bool ended_ = false;
};

} // namespace

std::unique_ptr<ReadingSource> makeTextSource(std::istream& in, std::string name, ReadingMode mode) {
  return std::make_unique<TextSource>(in, std::move(name), mode);
}

} // namespace netmend
