#pragma once

#include <memory>
#include <optional>
#include <vector>

#include <QObject>
#include <QTimer>

#include "background.h"
#include "bench_job.h"
#include "netmend/board/kept_board.h"
#include "netmend/drawing/board_photo.h"
#include "netmend/photo/straighten.h"
#include "netmend/sketch/merge.h"
#include "netmend/sketch/sketch.h"

namespace netmend {

/// A board being drawn: what is typed and clicked becomes edits, which are in the board's journal before
/// `changed` says so, and on the job's history. The stations get the board once its copper has been followed
/// anew, beside the event loop.
class BenchDrawing : public QObject {
  Q_OBJECT

public:
  explicit BenchDrawing(BenchJob& job);

  /// Makes the open board one that can be drawn on: a board in a file of another kind, or elsewhere, is
  /// copied into the store first; without one a new one begins. False where that fails.
  bool begin();
  /// Whether there is one that can be drawn on.
  [[nodiscard]] bool begun() const { return kept_.has_value(); }
  [[nodiscard]] const std::shared_ptr<const Board>& board() const { return kept_->board(); }
  [[nodiscard]] const Lookup& lookup() const { return *lookup_; }
  [[nodiscard]] const Sketch& sketch() const { return sketch_; }

  /// The click at a place, with what is drawn there.
  [[nodiscard]] SketchClick clickAt(Point at, Side side, Length reach) const;
  void type(const std::string& text);
  void click(const SketchClick& click);
  void stroke(const SketchClick& from, const Ring& way, const SketchClick& to);
  void key(SketchKey key, const SketchClick& pointer);
  /// Something that the meter says of the ringed pin while a lead is held at the net: whether they are
  /// joined.
  void touched(const Reading& reading, bool joined);
  void pasteNets(const QString& text);
  void movePart(PartId part, Point by);
  void setTrackWidth(Length width);

  /// Edits of any kind, under a name of the history; durable when it returns.
  bool perform(const QString& what, const Edit& edit);

  /// Keeps the photo beside the board's file and lays it under the drawing, not yet straightened. Read beside
  /// the event loop; `photoAdded` or `failed` of the job follows.
  void addPhoto(const QString& file, Side side, bool closeUp);
  void addPhoto(const QByteArray& bytes, const QString& name, Side side, bool closeUp);
  /// Those that could be read, in the order in which they lie.
  [[nodiscard]] const std::vector<ShownPhoto>& photos() const { return shown_; }
  /// Lays a photo by what was found in it.
  bool layPhoto(UnderlayId photo, const Straightened& straightened, std::vector<PhotoPair> pairs);
  bool setPhotoTones(UnderlayId photo, Share faded, Share lightened);

  /// Reads a board in any format to be merged into the one that is drawn; `mergeRead` or `failed` follows.
  void readToMerge(const QString& file);
  bool merge(const Board& file, const MergePlan& plan);

  /// Has the stations know the board as it is now, and writes its file. Waits for neither where it is large.
  void workUp();

Q_SIGNALS:
  void changed();     ///< the board, by an edit, undo or redo
  void handChanged(); ///< what is in hand, or what is due
  void photosChanged();
  void photoAdded(UnderlayId photo);
  void mergeRead(const QString& name, std::shared_ptr<const netmend::Board> file);
  /// To be told at the next thing: a conflict, or what was not understood.
  void told(const QString& text, bool isError);

private:
  void followJob();
  void keepGood(PinId pin, const std::string& text);
  bool open(const std::filesystem::path& file);
  void take(KeptBoard kept);
  void answered(const Result<SketchAnswer>& answer);
  [[nodiscard]] Result<void> applyNow(const Edit& edit, std::shared_ptr<Edit> inverse);
  void refreshPhotos();
  void loadPhotos();
  void give(BoardUnderWork board);
  struct ReadPhoto {
    std::string file;
    std::string name;
    std::shared_ptr<const BoardPhoto> photo;
  };
  /// Reads it and puts its file beside the board's; `from` is for errors. Any thread.
  [[nodiscard]] static Result<ReadPhoto> keepPhoto(const std::string& bytes, const std::string& name,
                                                   const std::filesystem::path& folder,
                                                   const std::string& from);
  void photoRead(Result<ReadPhoto> read, Side side, bool closeUp);

  BenchJob& job_;
  Sketch sketch_;
  std::optional<KeptBoard> kept_;
  std::unique_ptr<Lookup> lookup_;
  std::vector<ShownPhoto> shown_;
  std::vector<std::pair<std::string, std::shared_ptr<const BoardPhoto>>> loaded_; ///< by file
  bool giving_ = false;
  bool behind_ = false; ///< the stations have an older board
  QTimer idle_;
  Background working_;
  Background reading_;
  Background loading_;
};

} // namespace netmend
