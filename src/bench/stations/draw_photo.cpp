// The photo under the drawing: how it gets there, and to its place.
#include <algorithm>
#include <utility>

#include <QBuffer>
#include <QClipboard>
#include <QFileDialog>
#include <QGuiApplication>
#include <QLabel>
#include <QMimeData>
#include <QPushButton>
#include <QUrl>

#include "bench/late/late.h"
#include "bench/late/photographs.h"
#include "draw_view.h"
#include "netmend/board/underlay.h"
#include "photo_inset.h"

namespace netmend {

void DrawView::choosePhoto() {
  auto* dialog = new QFileDialog(this, tr("A photo of the board"));
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  dialog->setFileMode(QFileDialog::ExistingFile);
  dialog->setNameFilter(tr("Photos (*.png *.jpg *.jpeg *.webp)"));
  connect(dialog, &QFileDialog::fileSelected, this, &DrawView::addPhoto);
  dialog->open();
}

void DrawView::addPhoto(const QString& file) {
  const Side side = pointer_.side;
  desk_.drawing.addPhoto(file, side, hasStraightPhoto(side));
}

bool DrawView::hasStraightPhoto(Side side) const {
  const auto& photos = desk_.drawing.photos();
  return std::any_of(photos.begin(), photos.end(), [&](const ShownPhoto& shown) {
    return shown.underlay.side == side && shown.underlay.lie.certain();
  });
}

void DrawView::paste() {
  const QMimeData* pasted = QGuiApplication::clipboard()->mimeData();
  if (pasted == nullptr) return;
  if (pasted->hasUrls() && pasted->urls().first().isLocalFile())
    return addPhoto(pasted->urls().first().toLocalFile());
  if (pasted->hasImage()) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    qvariant_cast<QImage>(pasted->imageData()).save(&buffer, "PNG");
    desk_.drawing.addPhoto(bytes, tr("pasted photo"), pointer_.side, hasStraightPhoto(pointer_.side));
  } else if (pasted->hasText() && desk_.drawing.begin()) {
    desk_.drawing.pasteNets(pasted->text());
  }
}

void DrawView::photoAdded(UnderlayId photo) {
  const Board& board = *desk_.drawing.board();
  const bool placed =
      std::any_of(board.pads.begin(), board.pads.end(), [](const Pad& pad) { return pad.position.known(); });
  laying_.emplace(photo, placed || hasStraightPhoto(Side::top) || hasStraightPhoto(Side::bottom)
                             ? PhotoLaying::By::pairs
                             : PhotoLaying::By::corners);
  straightened_.reset();
  edgesOff_.reset();
  refresh();
  Q_EMIT mapWanted();
}

const Underlay* DrawView::underlayInHand() const {
  if (!desk_.drawing.begun()) return nullptr;
  const Board& board = *desk_.drawing.board();
  if (laying_) return board.underlays.find(laying_->photo());
  const auto& photos = desk_.drawing.photos();
  const auto found = std::find_if(photos.rbegin(), photos.rend(), [&](const ShownPhoto& shown) {
    return shown.underlay.side == pointer_.side;
  });
  return found != photos.rend() ? board.underlays.find(found->underlay.id) : nullptr;
}

/// Straightens the photo in hand once more, by places in it and on the board.
void DrawView::lay(PhotoLaying::By by) {
  const Underlay* photo = underlayInHand();
  if (photo == nullptr) return;
  laying_.emplace(photo->id, by);
  straightened_.reset();
  refresh();
}

void DrawView::straighten() {
  straightened_.reset();
  const Underlay* photo = underlayInHand();
  const auto model = laying_ ? laying_->model() : std::nullopt;
  if (photo != nullptr && model) {
    auto* photographs = static_cast<Photographs*>(nullptr);
    if (const auto loaded = late<Photographs>())
      photographs = *loaded;
    else
      Q_EMIT told(shown(loaded.error().said()), true);
    if (photographs != nullptr) {
      if (auto straight = photographs->straighten(*photo, laying_->pairs(), *model))
        straightened_ = std::move(*straight);
      else
        Q_EMIT told(shown(straight.error().said()), true);
    }
  }
  refresh();
}

void DrawView::takeLaying() {
  if (!laying_ || !straightened_) return;
  const PhotoLaying laid = *std::exchange(laying_, std::nullopt);
  const auto straight = *std::exchange(straightened_, std::nullopt);
  if (!desk_.drawing.layPhoto(laid.photo(), straight, laid.pairs())) return;
  edgesOff_.reset();
  if (!laid.outline().empty()) {
    BoardInfo info = desk_.drawing.board()->info;
    if (!info.outline.known()) {
      info.outline = fromUser(std::vector<Polygon>{{laid.outline(), {}}});
      Edit edit;
      edit.changes.emplace_back(InfoChange{std::move(info)});
      desk_.drawing.perform(tr("outline of the board"), edit);
    }
    const auto& photos = desk_.drawing.photos();
    const auto shown = std::find_if(photos.begin(), photos.end(),
                                    [&](const ShownPhoto& p) { return p.underlay.id == laid.photo(); });
    if (const auto loaded = late<Photographs>(); loaded && shown != photos.end())
      edgesOff_ = (*loaded)->edgesOff(shown->photo->whole(), shown->underlay, laid.outline());
  }
  refresh();
  Q_EMIT straightenedOnMap();
}

bool DrawView::layingKey(int key) {
  switch (key) {
  case Qt::Key_A:
    takeLaying();
    return true;
  case Qt::Key_X:
  case Qt::Key_Escape:
    laying_.reset();
    straightened_.reset();
    refresh();
    return true;
  case Qt::Key_P:
    lay(laying_->by() == PhotoLaying::By::corners ? PhotoLaying::By::pairs : PhotoLaying::By::corners);
    return true;
  default:
    return false;
  }
}

void DrawView::showLaying() {
  inset_->setVisible(laying_ && laying_->by() == PhotoLaying::By::pairs);
  layTake_->setVisible(laying_ && straightened_);
  const Underlay* photo = underlayInHand();
  QStringList facts;
  if (laying_ && photo != nullptr) {
    help_->show();
    if (laying_->by() == PhotoLaying::By::corners) {
      due_->setText(laying_->wantsSize() && laying_->corners().size() == 4
                        ? tr("Enter, then the board's size: 84 x 56")
                        : tr("Click corner %1 of the board").arg(laying_->corners().size() + 1));
      help_->setText(
          tr("From the upper left one clockwise. Two places and Enter with how far apart they are do, too, "
             "where the photo was taken from straight above. P: other places"));
      line_->setHint(tr("84 x 56"));
    } else {
      const auto number = laying_->pairs().size() + 1;
      due_->setText(laying_->waiting() ? tr("Now the same place on the board, %1").arg(number)
                                       : tr("Click place %1 in the photo").arg(number));
      help_->setText(tr("A hole, a pad, a letter that is to be seen in both. Two places turn and scale it, "
                        "four take out the "
                        "slant, six the lens; each one more checks those before"));
      std::vector<PhotoPoint> places;
      for (const PhotoPair& pair : laying_->pairs())
        places.push_back(pair.photo);
      if (laying_->waiting()) places.push_back(*laying_->waiting());
      const auto& photos = desk_.drawing.photos();
      const auto shown = std::find_if(photos.begin(), photos.end(),
                                      [&](const ShownPhoto& p) { return p.underlay.id == photo->id; });
      if (shown != photos.end()) inset_->showPhoto(shown->photo);
      inset_->setPlaces(std::move(places));
    }
  }
  if (straightened_) {
    const auto& off = straightened_->residuals;
    if (off.empty()) {
      facts << tr("so many points always fit: one more checks them");
    } else {
      const auto worst = std::max_element(off.begin(), off.end());
      facts << tr("worst place off by %1 mm, number %2")
                   .arg(worst->mm(), 0, 'f', 2)
                   .arg(worst - off.begin() + 1);
    }
  } else if (edgesOff_) {
    facts << tr("edges straight within %1 mm").arg(edgesOff_->mm(), 0, 'f', 2);
  }
  if (photo != nullptr && photo->lie.certain())
    facts << tr("sharp to %1 px/mm").arg(PhotoMapping(*photo).pixelsPerMm(), 0, 'f', 0);
  if (!laying_) {
    const QStringList inHand = factsInHand();
    if (!inHand.isEmpty()) facts = inHand;
  }
  facts_->setText(facts.join(QStringLiteral("   ·   ")));
  facts_->setVisible(!facts.isEmpty());
}

} // namespace netmend
