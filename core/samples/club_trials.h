// The trials of the sample club: three lifters compare two grips of one lift. One is over and clear, one runs half-way and once had
// the other arm done, one was stopped because an arm hurt.
//
//   auto trial = ClubTrial::of(index, options);            // absent: this lifter is in none
//   trial->compare(usual, other, tr("Which grip?"));
//   if (trial->takes(lift, date, deload)) line = trial->train(date, written);
//   trial->finish(date)                                    // with the sessions that are still to come
//
// It has a chance of its own, so that everything else of the club stays as it is without it. The sizes are this generator's: in
// the trial that is over the second grip is felt three points more; the ratings scatter by one.
#pragma once

#include "core/domain/trial.h"
#include "core/samples/club_random.h"
#include "core/samples/club_training.h"
#include "core/samples/sample_club.h"

namespace steelyard {

class ClubTrial {
public:
    enum class Story { Concluded, Running, Hurting };

    [[nodiscard]] static std::optional<ClubTrial> of(int index, const SampleClubOptions&);
    // What is compared, from now on. `random` is the trial's own.
    void compare(const LiftLine& usual, const LiftLine& other, const RepBand& band, const QString& question);
    [[nodiscard]] ClubRandom& random() { return m_random; }
    [[nodiscard]] bool isSetUp() const { return !m_trial.arms.empty(); }

    // Whether this session of the lift is one of the trial, or done as the trial chose.
    [[nodiscard]] bool takes(const LiftLine& lift, QDate date, bool deload) const;
    // The line it is done on; what was felt goes into the rating.
    [[nodiscard]] LiftLine train(QDate date, WrittenExposure& written);
    // The trial as it stands after the club's last day; days to come on that weekday. Nothing: no session took place.
    [[nodiscard]] std::optional<Trial> finish(int weekday);

private:
    ClubTrial(Story story, std::uint64_t seed, QDate from, QDate lastDay);
    [[nodiscard]] LiftLine lineOf(std::size_t arm) const;
    void rate(std::size_t arm, ExerciseRating& rating);
    void endWhenDue(QDate date, std::size_t arm);

    Story m_story;
    ClubRandom m_random;
    QDate m_from;
    QDate m_lastDay;
    LiftLine m_usual;
    Trial m_trial;
    std::vector<TrialDay> m_order;  // as drawn; dates come with the sessions
    int m_hurtRunning = 0;
};

}  // namespace steelyard
