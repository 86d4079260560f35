#pragma once

#include <functional>
#include <memory>
#include <stop_token>
#include <vector>

#include <QByteArray>
#include <QImage>
#include <QString>
#include <QtPlugin>

#include "netmend/base/error.h"

class QPageSize;
class QPrinter;
class QWidget;

namespace netmend {

/// Draws and prints documents that have been written. Get it by `late<Paper>()`.
class Paper {
public:
  static constexpr const char* plugin = "netmend_paper";
  virtual ~Paper() = default;

  /// The pages as pictures of `width` pixels. Stops between pages. Any thread may ask.
  [[nodiscard]] virtual Result<std::vector<QImage>> draw(const QByteArray& pdf, int width,
                                                         const std::stop_token& stop) = 0;
  /// Prints page by page; the printer belongs to the caller's thread until it returns.
  [[nodiscard]] virtual Result<void> print(const QByteArray& pdf, QPrinter& printer) = 0;
  /// Asks for a printer beside the window; `chosen` is called if one was accepted.
  virtual void choosePrinter(QWidget* parent, const QString& title, const QPageSize& size,
                             std::function<void(std::shared_ptr<QPrinter>)> chosen) = 0;
};

} // namespace netmend

Q_DECLARE_INTERFACE(netmend::Paper, "org.netmend.Paper/1")
