#pragma once

#include <vector>

#include "station.h"

class QComboBox;
class QHBoxLayout;
class QLabel;
class QLineEdit;
class QPushButton;

namespace netmend {

class ProposalCard;

/// The ways to bridge the break, side by side, and every other repair below them.
class ProposalsView : public QWidget {
  Q_OBJECT

public:
  ProposalsView(Desk desk, QPushButton* whyButton, QWidget* parent = nullptr);
  void setWhy(bool why);
  void pictureTurned();
  [[nodiscard]] std::size_t selected() const { return selected_; }
  /// Whether there are work steps to go back to.
  void setWorkBehind(bool behind);
  /// True when the key means something here.
  bool command(int key);

Q_SIGNALS:
  void selectionChanged();
  /// A repair was added to the job, as its last one.
  void added();
  void back();
  void told(const QString& text, bool isError);

private:
  QLayout* otherRepair();
  void showProposals(std::size_t chosen = 0);
  [[nodiscard]] QString whyNone() const;
  void select(std::size_t proposal);
  void acceptSelected();
  void addOther();

  Desk desk_;
  QLabel* title_;
  QLabel* why_;
  QHBoxLayout* cardRow_;
  std::vector<ProposalCard*> cards_;
  std::size_t selected_ = 0;
  bool reasons_ = false; ///< the cards show them
  QPushButton* accept_;
  QComboBox* kind_;
  QLineEdit* target_;
  QLineEdit* reason_;
  QPushButton* toWork_;
};

} // namespace netmend
