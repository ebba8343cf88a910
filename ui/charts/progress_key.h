// What the shapes and strokes of a progress chart mean: only those that are there, each with its word, in lines below the
// chart.
//
//   const auto key = progressKey(spec, colours);
//   keyLines(key, QFontMetricsF(font), width);      // how many lines it takes
#pragma once

#include "ui/charts/progress_frame.h"

#include <QtGui/QFontMetricsF>

#include <functional>

namespace steelyard {

struct KeyEntry {
    QString word;
    double width = 0;                               // of its shape
    std::function<void(QPainter&, QPointF)> paint;  // around its middle
};

[[nodiscard]] std::vector<KeyEntry> progressKey(const ProgressSpec& spec, const ChartColours& colours);
[[nodiscard]] int keyLines(const std::vector<KeyEntry>& key, const QFontMetricsF& metrics, double width);
// From scene.keyTop on, with the scene's small font set.
void paintKey(QPainter& painter, const std::vector<KeyEntry>& key, const ProgressScene& scene);

}  // namespace steelyard
