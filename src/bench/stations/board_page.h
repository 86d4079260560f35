#pragma once

#include "station.h"

class QLabel;
class QLineEdit;
class QListWidget;
class QProgressBar;
class QPushButton;
class QStackedLayout;

namespace netmend {

class DrawView;

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

  /// The board is drawn here, or no longer.
  void setDrawing(bool drawing);
  [[nodiscard]] bool drawing() const { return drawing_; }
  [[nodiscard]] DrawView& drawView();
  void setMetered(bool metered);
  [[nodiscard]] ReadingMode wantedMode() const override;
  [[nodiscard]] std::shared_ptr<const CopperMap::Hand> mapHand() const override;
  [[nodiscard]] QWidget* overMap() override;
  void setTheme(PictureTheme theme) override;

protected:
  void accept(const ReadingEvent& event) override;

private:
  void makeOverview(QWidget& overview);
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

  QStackedLayout* stack_ = nullptr;
  DrawView* draw_ = nullptr;
  bool metered_ = false;
  bool drawing_ = false;
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
