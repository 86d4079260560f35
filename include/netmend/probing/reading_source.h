#pragma once

#include <functional>
#include <istream>
#include <memory>
#include <optional>
#include <string>
#include <variant>

#include "netmend/base/error.h"
#include "netmend/probing/reading.h"
#include "netmend/probing/walk.h"

namespace netmend {

/// A value has come. Without a label it belongs to the point whose turn it is.
struct ValueTaken {
  std::string label;
  std::optional<double> value;     ///< in the SI unit of the mode; empty: OL
  std::optional<ReadingMode> mode; ///< empty: the walk's
  Settling settling = Settling::unknown;
  std::optional<Reading> whole; ///< from sources that know more than the value: everything but the point
  bool again =
      false; ///< the leads have not been lifted since the value before: it belongs to that one's point
};
struct PointSkipped {};
/// Go to the point before, to read it again.
struct StepBack {};
/// Take back what happened last, whatever it was.
struct UndoLast {};
/// From here on readings are in another mode.
struct ModeChanged {
  ReadingMode mode = ReadingMode::diode;
};

using ReadingEvent = std::variant<ValueTaken, PointSkipped, StepBack, UndoLast, ModeChanged>;

/// Anything that readings come from: somebody typing, a file, a linked meter.
class ReadingSource {
public:
  virtual ~ReadingSource() = default;

  /// The next event. Nothing: there is none now, and if `ended()`, there never will be. A source that reads a
  /// stream waits for its line; one that is driven by events never waits, and calls the handler below. An
  /// error concerns this event only: reading may go on.
  [[nodiscard]] virtual std::optional<Result<ReadingEvent>> next() = 0;
  [[nodiscard]] virtual bool ended() const = 0;

  /// Called by sources driven by events whenever `next()` has something to give.
  void whenReady(std::function<void()> handler) { ready_ = std::move(handler); }

protected:
  void announce() const {
    if (ready_) ready_();
  }

private:
  std::function<void()> ready_;
};

/// Lines of text, one event each: `0.452`, `J4.11 0.452`, `OL`, `J4.11 OL rising`, `skip`, `back`, `undo`,
/// `mode ohms`; `#` begins a remark. Errors name `name` and the line. The stream must outlive the source.
[[nodiscard]] std::unique_ptr<ReadingSource> makeTextSource(std::istream& in, std::string name,
                                                            ReadingMode mode = ReadingMode::diode);

} // namespace netmend
