// What a view draws as a picture to hand on: PNG, SVG or PDF, with a line above that says whose it is.
//
//   STEELYARD_CHECK(saveChart(*view.drawing(), {"Dana Quill · Arm curl", "20 Nov 2026"}, "curl.svg"));
//   clipboard->setImage(chartImage(*view.drawing(), caption));
//
// A picture is dark on white whatever the window looks like. SVG and PDF keep lines as lines and words as words that can be
// selected and searched; a PNG has two dots for each of the screen's. The suffix of the path says which it is.
//
// The drawing is any widget; it is dressed in the light palette while it is drawn and gets its own back.
// Failures: Invalid (a suffix that isn't one of the three), Storage (the file can't be written; what was there stays).
#pragma once

#include "core/base/result.h"

#include <QtCore/QByteArray>
#include <QtGui/QImage>

class QWidget;

namespace steelyard {

struct ChartCaption {
    QString title;   // cut short when it is too long for the picture
    QString detail;  // smaller, at the right: the date
};

inline constexpr int kPictureScale = 2;  // dots of a PNG for each of the screen's

[[nodiscard]] QImage chartImage(QWidget& drawing, const ChartCaption& caption);
[[nodiscard]] QByteArray chartSvg(QWidget& drawing, const ChartCaption& caption);
[[nodiscard]] QByteArray chartPdf(QWidget& drawing, const ChartCaption& caption);
[[nodiscard]] Result<void> saveChart(QWidget& drawing, const ChartCaption& caption, const QString& path);

}  // namespace steelyard
