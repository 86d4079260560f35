// The microscope's camera in the window.
#include <QInputDialog>

#include "bench_window.h"
#include "netmend/drawing/shown.h"
#include "still_camera.h"

namespace netmend {

void BenchWindow::addCamera() {
  camera_ = std::make_unique<StillCamera>(*job_);
  connect(camera_.get(), &StillCamera::told, this, &BenchWindow::tell);
  connect(camera_.get(), &StillCamera::addressWanted, this, &BenchWindow::askCamera);
}

void BenchWindow::askCamera() {
  auto* dialog = new QInputDialog(this);
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  dialog->setObjectName(QStringLiteral("cameraAddress"));
  dialog->setWindowTitle(tr("The microscope's camera"));
  dialog->setLabelText(
      tr("Address: camera: for the one there is, camera:NAME, or file:PATH of a picture that "
         "another program keeps up to date. F8 takes a picture into the job."));
  const QString known = StillCamera::address();
  dialog->setTextValue(known.isEmpty() ? QStringLiteral("camera:") : known);
  connect(dialog, &QInputDialog::textValueSelected, this, [this](const QString& address) {
    if (const auto set = camera_->setAddress(address); !set) tell(shown(set.error()), true);
  });
  // Beside the window, not in its way.
  dialog->setModal(false);
  dialog->show();
}

} // namespace netmend
