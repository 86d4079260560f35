#pragma once

#include <functional>
#include <utility>

#include <QPointer>
#include <QUndoCommand>

namespace netmend {

/// A step of the undo stack that belongs to a page: without the page it does nothing.
class PageUndo : public QUndoCommand {
public:
  PageUndo(const QString& what, QObject* owner, std::function<void()> redo, std::function<void()> undo)
      : QUndoCommand(what), owner_(owner), redo_(std::move(redo)), undo_(std::move(undo)) {}
  void redo() override {
    if (owner_) redo_();
  }
  void undo() override {
    if (owner_) undo_();
  }

private:
  QPointer<QObject> owner_;
  std::function<void()> redo_;
  std::function<void()> undo_;
};

} // namespace netmend
