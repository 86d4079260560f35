#pragma once

#include "station.h"

class QLabel;
class QLineEdit;
class QListWidget;
class QProgressBar;
class QPushButton;

namespace netmend {

/// Which board it is: a file in any format, dropped or chosen, or a connector typed in one line; and which of
/// its parts is walked.
class BoardPage : public StationPage {
  Q_OBJECT

public:
  explicit BoardPage(Desk desk, QWidget* parent = nullptr);
  void arrive() override;
  void chooseFile();
  /// Opens the file; once it has been read it stands first among the recent ones.
  void open(const QString& file);

private:
  void showBoard();
  [[nodiscard]] QWidget* labelled(const QString& text, QListWidget& list);
  [[nodiscard]] QWidget* question();
  void typedConnector();
  void remember(const QString& file);
  void listRecent();
  void listParts();
  void showOpening(const QString& what, double share);
  /// Lists the boards of an archive, until one of them or another file is opened.
  void offer(const QString& archive, const QStringList& names);

  QString wanted_; ///< the file that was asked for last
  QWidget* question_ = nullptr;
  QLabel* asked_ = nullptr;
  QPushButton* stay_ = nullptr;
  QLineEdit* typed_;
  QLabel* name_;
  QLabel* known_;
  QLabel* opening_;
  QProgressBar* progress_;
  QPushButton* cancel_;
  QListWidget* parts_;
  QListWidget* recent_;
  QListWidget* offered_;
  QString archive_; ///< in which the offered boards are
  QListWidget* notices_;
};

} // namespace netmend
