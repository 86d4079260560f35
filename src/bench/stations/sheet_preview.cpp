#include "sheet_preview.h"

#include <algorithm>

#include <QPaintEvent>
#include <QPainter>
#include <QScrollBar>

namespace netmend {

namespace {

constexpr int pageGap = 12; ///< between two pages, pixels

} // namespace

/// Draws what is in sight; drawn at the width that pages were made for, else scaled until they are made anew.
class SheetPreview::Pages : public QWidget {
public:
  using QWidget::QWidget;
  void set(std::vector<QImage> pages) {
    images_ = std::move(pages);
    fit();
    update();
  }

protected:
  void resizeEvent(QResizeEvent*) override { fit(); }
  void paintEvent(QPaintEvent* event) override {
    QPainter painter(this);
    painter.fillRect(event->rect(), palette().color(QPalette::Mid));
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    int top = pageGap;
    for (const QImage& image : images_) {
      const QRect box(pageGap, top, pageWidth(), heightOf(image));
      if (box.intersects(event->rect())) painter.drawImage(box, image);
      top += box.height() + pageGap;
    }
  }

private:
  [[nodiscard]] int pageWidth() const { return std::max(1, width() - 2 * pageGap); }
  [[nodiscard]] int heightOf(const QImage& image) const {
    return image.isNull() ? 0 : pageWidth() * image.height() / image.width();
  }
  void fit() {
    int height = pageGap;
    for (const QImage& image : images_)
      height += heightOf(image) + pageGap;
    setMinimumHeight(height);
  }
  std::vector<QImage> images_;
};

SheetPreview::SheetPreview(QWidget* parent) : QScrollArea(parent), pages_(new Pages(this)) {
  setWidgetResizable(true);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  // Always there, so that its coming does not change the width that pages are drawn for.
  setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);
  setFocusPolicy(Qt::StrongFocus);
  setWidget(pages_);
  setObjectName(QStringLiteral("preview"));
  setAccessibleName(tr("Job sheet as it will print"));
  verticalScrollBar()->setSingleStep(fontMetrics().height() * 2);
}

void SheetPreview::setPages(std::vector<QImage> pages) {
  setAccessibleDescription(tr("%n page(s)", nullptr, static_cast<int>(pages.size())));
  const int at = verticalScrollBar()->value();
  pages_->set(std::move(pages));
  verticalScrollBar()->setValue(at);
}

int SheetPreview::wantedWidth() const {
  constexpr int least = 200;
  return std::max(least, static_cast<int>((viewport()->width() - 2 * pageGap) * devicePixelRatioF()));
}

} // namespace netmend
