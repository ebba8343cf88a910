// Coaching at the rack: two lifters in turns, counted live by keys, over the whole window.
//
//   rack->open(sheets, current, date);           // over its window; Escape closes it and keeps what is counted
//
// Space counts a repetition, + one that failed part-way, the letters of the set notation mark the last one, V (or the down arrow)
// is held while the load goes down, Backspace takes back. Digits type a load, Enter takes it or stores the set: watched, with its
// repetitions one by one, as one step of undo named after the lifter. Tab: the other lifter. Left and right: the exercise. Page
// up and down: another lifter of the day at this place. The rest of a lifter begins when their set is stored.
//
// These keys belong to the view like letters to a text field: no action of the window is reached by a plain key while it is open.
// Times are taken at the moment of the key. What was counted and not stored stays here until it is stored, taken
// back, or the book is closed.
#pragma once

#include "core/base/steady_clock.h"
#include "ui/pages/floor/rack_station.h"
#include "ui/shell/context.h"

#include <QtWidgets/QWidget>

#include <array>

class QLabel;
class QTimer;

namespace steelyard {

class RackBoard;

class RackView final : public QWidget {
    Q_OBJECT

public:
    RackView(const UiContext& context, QWidget* parent);
    // `current` of the sheets comes first, the one after it second, unless somebody is being counted.
    void open(std::vector<DaySheet> sheets, std::size_t current, QDate date);
    void leave();
    void bookChanged();
    // A test measures with its own time.
    void measureWith(SteadyTime time) { m_time = std::move(time); }
    [[nodiscard]] const RackStation& station(std::size_t place) const { return m_stations.at(place); }
    [[nodiscard]] std::size_t active() const { return m_active; }
    [[nodiscard]] RackBoard* board(std::size_t place) const { return m_boards.at(place); }
    [[nodiscard]] QString message() const;

Q_SIGNALS:
    void closed();

protected:
    bool event(QEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;
    bool focusNextPrevChild(bool next) override;
    void keyPressEvent(QKeyEvent* event) override;
    void keyReleaseEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    [[nodiscard]] RackStation& mine() { return m_stations[m_active]; }
    [[nodiscard]] RepCounter::Time now() const;
    bool count(const QKeyEvent& event);
    bool look(int key);
    bool typeLoad(QChar character);
    void takeBack();
    void enter();
    void store();
    void turn();
    void chooseLifter(int by);
    void readDone(RackStation& station);
    void say(const QString& text);
    void refresh();

    UiContext m_context;
    std::vector<DaySheet> m_sheets;
    QDate m_date;
    SteadyTime m_time = steadyNow;
    std::array<RackStation, 2> m_stations;
    std::size_t m_active = 0;
    std::array<RackBoard*, 2> m_boards{};
    QLabel* m_message = nullptr;
    QTimer* m_ticks = nullptr;
};

}  // namespace steelyard
