#pragma once

#include <vector>

#include "station.h"

class QComboBox;
class QGridLayout;
class QLabel;
class QLineEdit;
class QPlainTextEdit;
class QTimer;

namespace netmend {

class JobCards;
struct JobCard;
struct JobSummary;

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
  [[nodiscard]] QWidget* footKeys() override { return keys_; }

protected:
  void showEvent(QShowEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

private:
  struct Field {
    std::string Job::*member;
    QLineEdit* line = nullptr; ///< one of the two
    QPlainTextEdit* text = nullptr;
    [[nodiscard]] QString typed() const;
  };
  QWidget* form();
  QWidget* list();
  [[nodiscard]] QWidget* head();
  /// A field with its label, in these columns of the grid.
  struct FieldPlace {
    int row = 0;
    int column = 0;
    int span = 1;
    int lines = 1;
  };
  void addField(QGridLayout* layout, const QString& label, std::string Job::*member, FieldPlace place);
  /// Letters and gaps by the room there is; jobs or form where there is room for one.
  void space();
  void showJob();
  void save();
  void listJobs();
  [[nodiscard]] static JobCard cardOf(const JobSummary& job);
  void openChosen();

  std::vector<Field> fields_;
  QLabel* number_;
  QTimer* saving_;
  QLineEdit* search_;
  QComboBox* state_;
  JobCards* jobs_;
  QLabel* caption_;
  QWidget* keys_; ///< in the window's foot
  QWidget* form_ = nullptr;
  QWidget* list_ = nullptr;
  bool listFirst_ = false; ///< where there is room for one of them
  bool showing_ = false;
  bool listStale_ = true; ///< changed while nobody saw it
};

} // namespace netmend
