// What a view of a lifter draws, handed on as a picture: to the clipboard or to a file the coach names. Serves every view
// through LifterView alone; a view without a drawing has nothing to hand on.
//
//   copyChart(view, shown);
//   saveChartAs(prompter, view, shown, this, [this](const QString& path) { said(path); });
#pragma once

#include "ui/pages/lifter/lifter_view.h"

#include <functional>

namespace steelyard {

class Prompter;
struct ChartCaption;

// "Dana Quill · Arm curl, straight bar, upright · supinated", and the day.
[[nodiscard]] ChartCaption captionOf(const LifterView& view, const ShownLine& shown);
// A file name to begin with, without characters that some file systems don't take.
[[nodiscard]] QString pictureName(const ShownLine& shown);

void copyChart(const LifterView& view, const ShownLine& shown);
// `saved` gets the path. What goes wrong is told by the prompter.
void saveChartAs(Prompter& prompter, const LifterView& view, const ShownLine& shown, QWidget* parent,
                 std::function<void(const QString& path)> saved);

}  // namespace steelyard
