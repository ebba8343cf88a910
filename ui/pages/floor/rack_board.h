// One lifter's half of the rack view, painted so that it is read from two metres: the count above all, then load and rest, the
// repetitions with their marks, the standard's cues.
//
//   board->setStation(station, isActive, steadyNow());
//
// All sizes follow the height of the widget. A text that is too long is set smaller, then cut with an ellipsis; the tool tip says
// the whole. Whose turn it is shows as a word and a frame, never as a colour alone.
#pragma once

#include "ui/pages/floor/rack_station.h"

#include <QtWidgets/QWidget>

namespace steelyard {

class RackBoard final : public QWidget {
    Q_OBJECT

public:
    explicit RackBoard(QWidget* parent = nullptr);
    void setStation(const RackStation& station, bool active, RepCounter::Time now);
    // What is read out, and what tests read.
    [[nodiscard]] QString words() const;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    void paintHead(QPainter& painter, QRectF area) const;
    void paintCount(QPainter& painter, QRectF area) const;
    void paintRepetitions(QPainter& painter, QRectF area) const;
    void paintLoadAndRest(QPainter& painter, QRectF area) const;
    [[nodiscard]] QString setWords() const;
    [[nodiscard]] QString loadLine() const;
    [[nodiscard]] QString restLine() const;
    [[nodiscard]] QString offLine() const;
    [[nodiscard]] QString timeLine() const;
    [[nodiscard]] QString targetLine() const;

    RackStation m_station;
    bool m_active = false;
    RepCounter::Time m_now{};
};

}  // namespace steelyard
