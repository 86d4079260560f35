#pragma once

#include <optional>
#include <string>
#include <vector>

#include <QCoreApplication>
#include <QListWidget>

#include "netmend/casework/fault_case.h"

class QPainter;

namespace netmend {

/// One line of the list: letter, share, bar, words, and at the right what else is known of it.
struct SuspectRow {
  QString letter;
  QString share; ///< "30 %"
  double probability = 0.0;
  QString words;
  QString detail{};     ///< left out where there is no room
  bool leading = false; ///< bold
  bool rest = false;    ///< all others together: quiet
};
inline constexpr int suspectRowHeight = 44; ///< pixels at 100 %
void paintSuspectRow(QPainter& painter, const QRect& rect, const SuspectRow& row);
/// A letter on its plate, as list, tree and answers have it.
void paintLetter(QPainter& painter, const QRectF& plate, const QString& letter, double pixels);
inline constexpr int letterPlate = 26; ///< pixels at 100 %, both ways

/// Suspects, likeliest first: the first few, or all that anybody acts on.
class SuspectList : public QListWidget {
  Q_DECLARE_TR_FUNCTIONS(netmend::SuspectList)

public:
  explicit SuspectList(QWidget* parent = nullptr);
  /// `fault` null: none. `letters` are parallel to its ranked suspects.
  void setFault(const FaultCase* fault, const std::vector<std::string>& letters, bool all);
  /// Index into `Suspects::ranked`; nothing selected: none.
  [[nodiscard]] std::optional<std::size_t> chosen() const;
  void choose(std::size_t suspect);
  /// The suspects that are not listed, all together; its words are empty where there are none.
  [[nodiscard]] const SuspectRow& rest() const { return rest_; }
  /// As tall as its rows, where they need not scroll.
  [[nodiscard]] int wantedHeight() const;

private:
  SuspectRow rest_;
};

} // namespace netmend
