#pragma once

#include <array>
#include <optional>

#include <QEvent>
#include <QString>

#include "netmend/base/error.h"

namespace netmend {

/// What a foot does at the bench.
enum class FootAct { take, skip, back };
inline constexpr std::array<FootAct, 3> footActs{FootAct::take, FootAct::skip, FootAct::back};
[[nodiscard]] QString nameOf(FootAct act);

/// What a pedal sends: a key with its modifiers, or a mouse button; neither: nothing is sent.
struct FootPress {
  int key = 0; ///< as of QKeyCombination
  Qt::MouseButton button = Qt::NoButton;
  [[nodiscard]] bool any() const { return key != 0 || button != Qt::NoButton; }
  friend bool operator==(const FootPress&, const FootPress&) = default;
};
[[nodiscard]] QString nameOf(const FootPress& press);
/// Of a key or mouse button going down, or of a key that asks whether it is a shortcut; none of other events
/// and of modifiers alone.
[[nodiscard]] FootPress pressOf(const QEvent& event);
/// Letters and the like, which a field being typed in wants.
[[nodiscard]] bool prints(const FootPress& press);

/// Which press means what; kept in the settings.
class Pedals {
public:
  Pedals();
  [[nodiscard]] const FootPress& of(FootAct act) const { return presses_.at(static_cast<std::size_t>(act)); }
  [[nodiscard]] std::optional<FootAct> actOf(const FootPress& press) const;
  /// Takes the press from another act that had it. Refused: keys that readings are typed with, and the left
  /// mouse button.
  [[nodiscard]] Result<void> assign(FootAct act, const FootPress& press);

private:
  std::array<FootPress, footActs.size()> presses_;
};

} // namespace netmend
