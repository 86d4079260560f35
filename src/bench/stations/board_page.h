#pragma once

#include <vector>

#include "station.h"

class QHBoxLayout;
class QLabel;
class QLineEdit;
class QListWidget;
class QProgressBar;
class QPushButton;
class QStackedLayout;
class QStackedWidget;

namespace netmend {

class DrawView;
class PartRows;

/// Which board it is: a file in any format, dropped or chosen, or a connector typed in one line; and which of
/// its parts is walked. Without a board all of it is one place to drop a file on.
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
  /// The part that would be walked, framed.
  [[nodiscard]] Overlay overlay() const override;
  void pinChosen(PinId pin) override;
  [[nodiscard]] QWidget* footKeys() override { return drawing_ ? nullptr : keys_; }
  [[nodiscard]] bool goesOnItself() const override;
  /// Keyboard to the field that searches the parts; false: there is none now.
  bool filter();

protected:
  void accept(const ReadingEvent& event) override;
  void resizeEvent(QResizeEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

private:
  void makeOverview(QWidget& overview);
  [[nodiscard]] QWidget* opening();
  /// Without a board, and with one.
  [[nodiscard]] QWidget* dropZone();
  [[nodiscard]] QWidget* beside();
  void makeKeys();
  [[nodiscard]] QLineEdit* connectorField(const QString& hint);
  void showBoard();
  [[nodiscard]] QWidget* question();
  void space();
  void walkChosen();
  void showNotes(bool show);
  void typedConnector(QLineEdit& field);
  void remember(const QString& file);
  void listRecent();
  void listParts();
  void showOpening(const QString& what, double share);
  /// Lists the boards of an archive, until one of them or another file is opened.
  void offer(const QString& archive, const QStringList& names);

  static constexpr const char* recentKey = "recentBoards"; ///< of the settings
  QStackedLayout* stack_ = nullptr;
  DrawView* draw_ = nullptr;
  bool metered_ = false;
  bool drawing_ = false;
  QString wanted_; ///< the file that was asked for last
  QWidget* question_ = nullptr;
  QLabel* asked_ = nullptr;
  QPushButton* stay_ = nullptr;
  QStackedWidget* views_ = nullptr;
  QLineEdit* typed_ = nullptr;   ///< in the drop zone
  QLineEdit* another_ = nullptr; ///< beside a board
  QLineEdit* filter_;
  QPushButton* notes_;
  QWidget* keys_; ///< in the window's foot
  QPushButton* walk_ = nullptr;
  QLabel* name_;
  QLabel* known_;
  QLabel* opening_;
  QProgressBar* progress_;
  QPushButton* cancel_;
  PartRows* parts_;
  QListWidget* recent_;
  QListWidget* offered_;
  QString archive_; ///< in which the offered boards are
  QListWidget* notices_;
  QWidget* drop_ = nullptr;
  QWidget* recentBox_ = nullptr;
  std::vector<QLabel*> asides_; ///< in the drop zone; they go where room is short
};

} // namespace netmend
