// What the day of the week adds to a lifter's sets on one line: the session after a rest day, after a hard one, before work.
//
//   WeekdayHabits habits;
//   habits.take(date, away);      // every session: how far it was from what was expected of any day
//   habits.effectOn(date)         // 0 until the record shows that days differ
//
// Away from what was expected, a session of weekday w is c_w + error, where the c_w are either all 0 (the days are alike) or
// normal around 0. The effect is the mean of c_w under both, weighed by what the record says of them, less the mean over the
// days that are trained, so that the level of the line means its usual week. Sessions fade with half a year's training, for
// habits change. A spike-and-slab prior (Mitchell & Beauchamp 1988, JASA 83:1023-1032; from memory); the numbers are ours.
//
// Units: z = ln(1 + repetitions to failure / 30). Pure; no failures.
#pragma once

#include <QtCore/QDate>

#include <array>

namespace steelyard {

class WeekdayHabits {
public:
    // `away`: z reached less z expected of a usual day.
    void take(QDate, double away);
    [[nodiscard]] double effectOn(QDate date) const { return m_effect[dayOf(date)]; }
    // How likely it is that the days differ; the prior where only one is trained.
    [[nodiscard]] double chanceOfDifference() const { return m_chance; }

private:
    static constexpr std::size_t kDays = 7;

    [[nodiscard]] static std::size_t dayOf(QDate date) { return static_cast<std::size_t>(date.dayOfWeek() - 1); }
    void weigh();

    std::array<double, kDays> m_sessions{};  // faded
    std::array<double, kDays> m_away{};
    std::array<double, kDays> m_effect{};
    double m_squares = 0;
    double m_chance = 0;
};

}  // namespace steelyard
