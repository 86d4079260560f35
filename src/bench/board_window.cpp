#include "netmend/bench/board_window.h"

#include <QApplication>
#include <QDragEnterEvent>
#include <QFileDialog>
#include <QLabel>
#include <QMimeData>
#include <QShortcut>
#include <QStatusBar>

#include "netmend/board/exchange/import.h"

namespace netmend {

namespace {

constexpr int readableSize = 17; ///< pixels: read from the microscope's distance

QString summaryOf(const Board& board) {
  return QStringLiteral("%1 parts, %2 pads, %3 nets")
      .arg(board.parts.size())
      .arg(board.pads.size())
      .arg(board.nets.size());
}

std::filesystem::path pathOf(const QString& file) {
  return std::filesystem::path(file.toStdU16String());
}

} // namespace

BoardWindow::BoardWindow() : canvas_(new CopperMap), message_(new QLabel), place_(new QLabel) {
  QFont readable = font();
  readable.setPixelSize(readableSize);
  setFont(readable);
  setCentralWidget(canvas_);
  setAcceptDrops(true);
  setWindowTitle(QStringLiteral("Netmend"));
  for (QLabel* label : {message_, place_}) {
    label->setTextFormat(Qt::PlainText);
    label->setMargin(readableSize / 2);
  }
  message_->setWordWrap(true);
  message_->setText(QStringLiteral(
      "Drag or arrows: move    wheel or + −: zoom    F: fit    T: turn over    X: see through"));
  statusBar()->addWidget(message_, 1);
  statusBar()->addPermanentWidget(place_);
  statusBar()->setSizeGripEnabled(false);
  canvas_->onPlace = [this](const MapPlace& place) { place_->setText(place.text); };
  auto* shortcut = new QShortcut(QKeySequence::Open, this);
  connect(shortcut, &QShortcut::activated, this, [this] {
    const QString file = QFileDialog::getOpenFileName(this, QStringLiteral("Open a board"));
    if (!file.isEmpty()) this->open(pathOf(file));
  });
}

bool BoardWindow::open(const std::filesystem::path& file) {
  QApplication::setOverrideCursor(Qt::WaitCursor);
  auto imported = importBoard(file);
  QApplication::restoreOverrideCursor();
  if (!imported) {
    message_->setText(QStringLiteral("Not opened: ") + QString::fromStdString(imported.error().text()));
    return false;
  }
  const auto notices = imported->notices.size();
  show(std::move(imported->board), QString::fromStdU16String(file.filename().u16string()));
  if (notices > 0)
    message_->setText(message_->text() + QStringLiteral("    %1 notices on reading").arg(notices));
  return true;
}

void BoardWindow::show(Board board, const QString& title) {
  message_->setText(title + QStringLiteral(": ") + summaryOf(board));
  setWindowTitle(title + QStringLiteral(" – Netmend"));
  canvas_->setBoard(std::move(board));
  canvas_->setFocus();
}

QString BoardWindow::message() const {
  return message_->text();
}

void BoardWindow::dragEnterEvent(QDragEnterEvent* event) {
  if (event->mimeData()->hasUrls() && event->mimeData()->urls().first().isLocalFile())
    event->acceptProposedAction();
}

void BoardWindow::dropEvent(QDropEvent* event) {
  const QList<QUrl> urls = event->mimeData()->urls();
  if (!urls.isEmpty() && urls.first().isLocalFile()) open(pathOf(urls.first().toLocalFile()));
}

} // namespace netmend
