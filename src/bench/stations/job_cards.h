#pragma once

#include <vector>

#include <QListWidget>

#include "netmend/jobbook/job_book.h"

namespace netmend {

/// A job as a card: number and device, what is wrong, and how far it has come.
struct JobCard {
  JobId id;
  QString text; ///< all of it in words
  QString number;
  QString device;
  QString symptom;
  QString date;
  QString state;
  int here = 0;      ///< of the seven stations; 7: it is through
  bool open = false; ///< it is the one on the bench
};

class JobCards : public QListWidget {
public:
  explicit JobCards(QWidget* parent = nullptr);
  void setCards(const std::vector<JobCard>& cards);
  [[nodiscard]] JobId chosen() const;
  [[nodiscard]] QSize minimumSizeHint() const override { return {0, 0}; }

protected:
  void changeEvent(QEvent* event) override;
};

} // namespace netmend
