#pragma once

#include <memory>
#include <vector>

#include "bench/session/background.h"
#include "netmend/casework/hand_repair.h"
#include "netmend/drawing/board_scene.h"
#include "station.h"

class QLabel;
class QVBoxLayout;

namespace netmend {

class HandRepairCard;
class ProposalCard;

/// The ways to bridge the break, one beneath the other over the full width; a repair by hand is typed below
/// them, where it is asked for or where there is no way.
class ProposalsView : public QWidget {
  Q_OBJECT

public:
  explicit ProposalsView(Desk desk, QWidget* parent = nullptr);
  void setWhy(bool why);
  void pictureTurned();
  [[nodiscard]] std::size_t selected() const { return selected_; }
  [[nodiscard]] std::size_t count() const { return cards_.size(); }
  /// True when the key means something here.
  bool command(int key);
  void openByHand();
  /// Where a repair by hand is typed; null: it is not asked for.
  [[nodiscard]] QWidget* handField() const;
  void acceptSelected();

Q_SIGNALS:
  void selectionChanged();
  /// A repair was added to the job, as its last one.
  void added();
  void back();
  void told(const QString& text, bool isError);

protected:
  void changeEvent(QEvent* event) override;

private:
  void showProposals(std::size_t chosen = 0);
  void makeScene();
  [[nodiscard]] QString whyNone() const;
  void select(std::size_t proposal);
  void addByHand(const HandRepair& repair);

  Desk desk_;
  QLabel* title_;
  QLabel* why_;
  QVBoxLayout* column_;
  std::vector<ProposalCard*> cards_;
  std::size_t selected_ = 0;
  bool reasons_ = false; ///< the cards show them
  HandRepairCard* byHand_;
  bool handWanted_ = false;
  std::shared_ptr<const Board> sceneOf_;
  std::shared_ptr<const BoardScene> scene_;
  Background drawing_;
};

} // namespace netmend
