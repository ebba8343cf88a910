// The days of a logbook as a quiet grid, three months to a row: a day trained is filled, a deload is a frame, a day with
// discomfort has a notch in its corner; days that the search doesn't find are pale. Black and white safe.
//
//   calendar->setDays(&days, found, today);
//   connect(calendar, &LogbookCalendar::dayChosen, this, &View::lookAtDay);
//
// Keys: Left and Right go to the trained day before and after, Up and Down at least a week back and on, Page up and down a month,
// Home and End to the first and last; Enter goes on to the day's sets. Only days that were found are walked.
#pragma once

#include "ui/pages/lifter/logbook_days.h"

#include <QtWidgets/QAbstractScrollArea>

#include <set>

namespace steelyard {

class LogbookCalendar final : public QAbstractScrollArea {
    Q_OBJECT

public:
    explicit LogbookCalendar(QWidget* parent = nullptr);
    // `days` newest first, kept by the caller until the next call; `found` are the dates among them that a search has found.
    void setDays(const std::vector<LogbookDay>* days, std::set<QDate> found, QDate today);
    void choose(QDate day);  // makes it visible; says nothing
    [[nodiscard]] QDate chosen() const { return m_chosen; }
    // Where a day stands in the viewport; null: not in the grid.
    [[nodiscard]] QRect placeOf(QDate day) const;
    [[nodiscard]] QSize sizeHint() const override;

Q_SIGNALS:
    void dayChosen(QDate day);  // by key or click
    void setsWanted();          // go on to the chosen day's sets

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    bool viewportEvent(QEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    struct Measures {
        int cell = 0;
        int title = 0;
        int month = 0;  // width
        int row = 0;    // height
    };
    [[nodiscard]] Measures measures() const;
    [[nodiscard]] QDate firstMonth() const;
    [[nodiscard]] QDate dayAt(QPoint position) const;
    [[nodiscard]] const LogbookDay* find(QDate day) const;
    [[nodiscard]] std::optional<QDate> target(int key) const;
    void paintMonth(QPainter& painter, QDate month) const;
    void paintDay(QPainter& painter, QDate day) const;
    void fitBar();
    void describe();

    const std::vector<LogbookDay>* m_days = nullptr;
    std::set<QDate> m_found;
    QDate m_today;
    QDate m_chosen;
};

}  // namespace steelyard
