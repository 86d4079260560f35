#pragma once

#include <filesystem>
#include <memory>
#include <string>

#include "netmend/board/journal.h"

namespace netmend {

/// A board in a file of ours, with a journal beside it: what is done to it is durable at once, and the file
/// itself is written now and then. Whoever has it open is the only one who may change it.
class KeptBoard {
public:
  KeptBoard(KeptBoard&& other) noexcept;
  KeptBoard& operator=(KeptBoard&& other) noexcept;
  KeptBoard(const KeptBoard&) = delete;
  KeptBoard& operator=(const KeptBoard&) = delete;
  /// Takes the journal away where everything is saved.
  ~KeptBoard();

  /// Takes in what a journal has that was not saved. A journal that belongs to another state of the file
  /// (which was replaced meanwhile) is put aside under the name `…-old`. Fails where another program draws on
  /// it.
  [[nodiscard]] static Result<KeptBoard> open(const std::filesystem::path& file);
  /// Writes a new file first; one that is there is replaced. `board()` is this very one until it is changed.
  [[nodiscard]] static Result<KeptBoard> create(const std::filesystem::path& file,
                                                std::shared_ptr<const Board> board);

  [[nodiscard]] const std::filesystem::path& file() const { return file_; }
  /// As it is now. What is given out never changes: threads may keep it.
  [[nodiscard]] const std::shared_ptr<const Board>& board() const { return board_; }
  /// SHA-256 of the file as it was saved last.
  [[nodiscard]] const std::string& digest() const { return digest_; }
  [[nodiscard]] bool unsaved() const { return unsaved_; }

  /// Changes the board and gives back what takes it back. Durable when it returns; an error changes nothing.
  [[nodiscard]] Result<Edit> apply(const Edit& edit);
  /// Writes the file anew and empties the journal. Killed at any moment, all that was done is there.
  [[nodiscard]] Result<void> save();

private:
  KeptBoard(std::filesystem::path file, Journal journal)
      : file_(std::move(file)), journal_(std::move(journal)) {}

  std::filesystem::path file_;
  Journal journal_;
  std::shared_ptr<const Board> board_;
  std::string digest_;
  bool unsaved_ = false;
};

/// Where the journal of a board in this file is.
[[nodiscard]] std::filesystem::path journalOf(const std::filesystem::path& boardFile);

} // namespace netmend
