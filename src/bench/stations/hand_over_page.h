#pragma once

#include <filesystem>
#include <functional>
#include <memory>
#include <vector>

#include <QByteArray>

#include "bench/session/background.h"
#include "station.h"

class QComboBox;
class QLabel;
class QPlainTextEdit;
class QPrinter;
class QPushButton;
class QScrollArea;
class QTimer;

namespace netmend {

class ChargesView;
class PhotosView;
class SheetPreview;

/// The sum, and whether the repair is proved; charges, photos, letterhead, and the copy that will print. The
/// preview is drawn from the very document that is saved and printed; it is written anew, beside the event
/// loop, after every change.
class HandOverPage : public StationPage {
  Q_OBJECT

public:
  explicit HandOverPage(Desk desk, QWidget* parent = nullptr);
  void arrive() override;
  [[nodiscard]] QWidget* footKeys() override { return keys_; }
  /// The card is scrolled, and the copies go first (`layOut`).
  [[nodiscard]] QSize minimumSizeHint() const override;
  /// The sheet of the job as it is now is written and shown.
  [[nodiscard]] bool ready() const { return ready_; }
  /// The document shown.
  [[nodiscard]] const QByteArray& sheet() const { return sheet_; }
  /// Writes the sheet there, as soon as it is up to date; told when done.
  void saveTo(const std::filesystem::path& file);
  /// Prints the sheet, as soon as it is up to date, beside the event loop; told when done.
  void printTo(std::shared_ptr<QPrinter> printer);
  void handOver();

protected:
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dropEvent(QDropEvent* event) override;
  void showEvent(QShowEvent* event) override;
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  bool event(QEvent* event) override;

private:
  /// Whether this is the open job still; else it is said that nothing was done.
  [[nodiscard]] bool stillOpen(JobId id);
  QWidget* card();
  QLayout* head();
  QLayout* letterhead();
  QWidget* notes();
  QWidget* paper();
  void makeKeys();
  void layOut(); ///< to the room and to the letters' scale
  void showCopy(bool customers);
  void showProof();
  [[nodiscard]] bool customers() const;
  void chooseFile();
  void choosePrinter();
  void keepNotes();
  void refresh();
  void outOfDate();
  void writeSheet();
  void whenReady(std::function<void()> then);

  static constexpr int pauseOfSheet = 300; ///< ms without a change until it is written anew
  QLabel* total_;
  QLabel* currency_;
  QLabel* proved_;
  QLabel* proof_; ///< what it was proved by, or what is open
  QLabel* readiness_;
  ChargesView* charges_;
  PhotosView* photos_;
  QLabel* letterhead_;
  QWidget* card_ = nullptr;
  QWidget* fold_ = nullptr; ///< notes and letterhead, while they are changed
  QPushButton* change_ = nullptr;
  QPushButton* save_ = nullptr;
  QPushButton* done_ = nullptr;
  QPlainTextEdit* notes_;
  QPlainTextEdit* workshop_;
  QPushButton* customer_;
  QPushButton* workshopCopy_;
  QComboBox* paper_;
  SheetPreview* preview_;
  QWidget* keys_;
  QWidget* pane_ = nullptr; ///< of the preview
  QTimer* writing_;
  QTimer* typing_;
  QByteArray sheet_;
  int drawnFor_ = 0; ///< width of the preview's pages
  bool ready_ = false;
  bool seen_ = false; ///< drawn since it was shown
  bool showing_ = false;
  bool notesTyped_ = false; ///< and not kept yet
  std::vector<std::function<void()>> then_;
  Background sheets_;
  Background printing_;
};

} // namespace netmend
