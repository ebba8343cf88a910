// The time ruler of a progress chart: blocks above, deload weeks and layoffs through both panels, the arms of trials by letter (in
// brackets: getting used to it), decisions and notes a row
// each below the dates. What is too long for its place is cut short; pointing at it says the whole. Pointing at a limit of the
// smallest change explains it.
//
//   ProgressRuler(scene).paint(painter);
//   const QString tip = ProgressRuler(scene).tipAt(mouse);    // empty: nothing there
//
// Units: pixels of the scene.
#pragma once

#include "ui/charts/progress_frame.h"

namespace steelyard {

class ProgressRuler {
public:
    explicit ProgressRuler(const ProgressScene& scene) : m_scene(scene) {}
    // With the scene's small font set.
    void paint(QPainter& painter) const;
    [[nodiscard]] QString tipAt(QPointF at) const;

private:
    // Something of a row, where it stands and what it says.
    struct Place {
        QPointF mark;  // the foot of its mark
        QRectF words;
        QString label;  // as much as there is room for
        QRectF reach;   // where it can be pointed at
        QString tip;
    };
    template <class Tick>
    [[nodiscard]] std::vector<Place> ticks(const std::vector<Tick>& all, double top) const;
    [[nodiscard]] std::vector<Place> blocks() const;
    // Through both panels; above, up to the blocks.
    [[nodiscard]] QRectF through(const BlockSpan& span) const;
    [[nodiscard]] bool inSight(const BlockSpan& span) const;
    [[nodiscard]] bool isOnChange(QPointF at) const;
    void paintThrough(QPainter& painter) const;
    void paintBlocks(QPainter& painter) const;
    void paintTicks(QPainter& painter) const;
    // Letters of a trial's arms; where they would lie over each other, every second or third is left out.
    [[nodiscard]] std::vector<Place> trials() const;
    void paintTrials(QPainter& painter) const;

    const ProgressScene& m_scene;
};

}  // namespace steelyard
