#pragma once

#include <vector>

#include "station.h"

class QComboBox;
class QFormLayout;
class QLabel;
class QLineEdit;
class QListWidget;
class QPlainTextEdit;
class QTimer;

namespace netmend {

/// What the customer brought and said, and the list of all jobs beside it. Each field is in the job book a
/// moment after it was typed.
class BookInPage : public StationPage {
  Q_OBJECT

public:
  explicit BookInPage(Desk desk, QWidget* parent = nullptr);
  void keepTyped() override { save(); }
  void arrive() override;
  void newJob();
  void search();

protected:
  void showEvent(QShowEvent* event) override;

private:
  struct Field {
    std::string Job::*member;
    QLineEdit* line = nullptr; ///< one of the two
    QPlainTextEdit* text = nullptr;
    [[nodiscard]] QString typed() const;
  };
  QWidget* form();
  QWidget* list();
  void addField(QFormLayout* layout, const QString& label, std::string Job::*member, int lines);
  void showJob();
  void save();
  void listJobs();
  void openChosen();

  std::vector<Field> fields_;
  QLabel* number_;
  QTimer* saving_;
  QLineEdit* search_;
  QComboBox* state_;
  QListWidget* jobs_;
  bool showing_ = false;
  bool listStale_ = true; ///< changed while nobody saw it
};

} // namespace netmend
