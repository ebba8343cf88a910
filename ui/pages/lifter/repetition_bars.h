// The repetitions of one set as small bars: how far each went, which were short or marked otherwise, how long each was lowered.
//
//   bars->setRepetitions(repetitions, full, 90);
//
// Full bars are to the standard, hollow ones marked, with the letters of their marks below; dashed: failed part-way. The line is
// the least travel that counts. Repetitions of unknown travel stand at half height, with a question mark. The tool tip says each.
#pragma once

#include "core/analysis/repetition_travel.h"

#include <QtWidgets/QWidget>

namespace steelyard {

class RepetitionBars final : public QWidget {
    Q_OBJECT

public:
    explicit RepetitionBars(QWidget* parent = nullptr);
    void setRepetitions(std::vector<Repetition> repetitions, std::optional<FullTravel> full,
                        std::optional<int> leastPercent);
    [[nodiscard]] QSize sizeHint() const override { return {480, 220}; }

protected:
    void paintEvent(QPaintEvent* event) override;
    bool event(QEvent* event) override;

private:
    [[nodiscard]] double top() const;  // of the scale, in millimetres
    [[nodiscard]] double step() const;
    void paintBar(QPainter& painter, const QRectF& slot, const Repetition& one) const;
    void paintLeast(QPainter& painter, const QRectF& plot) const;

    std::vector<Repetition> m_repetitions;
    std::optional<FullTravel> m_full;
    std::optional<int> m_leastPercent;
};

}  // namespace steelyard
