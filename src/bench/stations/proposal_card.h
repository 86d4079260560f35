#pragma once

#include <functional>

#include <QCoreApplication>
#include <QFrame>

#include "netmend/jumper/proposal.h"
#include "netmend/netgraph/place_name.h"

class QLabel;

namespace netmend {

/// One way to bridge the break, with all that speaks for and against it.
class ProposalCard : public QFrame {
  Q_DECLARE_TR_FUNCTIONS(netmend::ProposalCard)

public:
  ProposalCard(std::size_t number, const JumperProposal& proposal, const PlaceNames& places,
               QWidget* parent = nullptr);
  void setChosen(bool chosen);
  /// Score and reasons, too; notes and warnings are always shown.
  void setWhy(bool why);
  std::function<void()> onChosen; ///< clicked, or reached by the keyboard

protected:
  void mousePressEvent(QMouseEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;

private:
  [[nodiscard]] QString reasons(const PlaceNames& places) const;
  [[nodiscard]] QString remarks(const PlaceNames& places) const;
  JumperProposal proposal_;
  std::size_t number_;
  QLabel* head_;
  QLabel* reasons_;
};

} // namespace netmend
