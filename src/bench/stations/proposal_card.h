#pragma once

#include <functional>
#include <memory>

#include <QCoreApplication>
#include <QFrame>

#include "netmend/casework/fault_case.h"
#include "netmend/drawing/board_scene.h"
#include "netmend/jumper/proposal.h"
#include "netmend/netgraph/place_name.h"

class QLabel;

namespace netmend {

class BoardClip;

/// One way to bridge the break: its number, its picture, its figures in the columns of all cards, what it
/// needs, and both landings close up where there is room.
class ProposalCard : public QFrame {
  Q_DECLARE_TR_FUNCTIONS(netmend::ProposalCard)

public:
  struct Content {
    std::size_t number = 1;
    const FaultCase& fault;
    const JumperProposal& proposal;
    const PlaceNames& places;
    netmend::Box seen; ///< of the board, the same for all cards: one scale
    Seconds work;
  };
  explicit ProposalCard(const Content& content, QWidget* parent = nullptr);
  void setChosen(bool chosen);
  [[nodiscard]] bool chosen() const { return chosen_; }
  /// Score and reasons, and the remarks in full.
  void setWhy(bool why);
  void setScene(const std::shared_ptr<const BoardScene>& scene);
  std::function<void()> onChosen; ///< clicked, or reached by the keyboard

protected:
  void mousePressEvent(QMouseEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void paintEvent(QPaintEvent* event) override;

private:
  QWidget* facts(const Content& content);
  void addClips(const Content& content);
  [[nodiscard]] QString reasons(const PlaceNames& places) const;
  [[nodiscard]] QString remarks(const PlaceNames& places) const;
  void share();
  JumperProposal proposal_;
  std::size_t number_;
  bool chosen_ = false;
  QWidget* block_; ///< room for the number
  BoardClip* way_;
  BoardClip* from_;
  BoardClip* to_;
  QLabel* reasons_;
  QLabel* remarks_;
};

} // namespace netmend
