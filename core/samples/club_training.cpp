#include "core/samples/club_training.h"

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

double amountInKg(double amount, MassUnit unit)
{
    return unit == MassUnit::kg ? amount : amount * kKilogramsPerPound;
}

}  // namespace

LiftTraining::LiftTraining(TrainedLift lift, LifterHabits habits, ClubRandom& random)
    : m_lift(lift), m_habits(habits), m_random(&random), m_strength(lift.strengthKg)
{
    const double middle = 0.5 * (lift.band.low + lift.band.high) + 2;
    const double startKg = lift.strengthKg / (1 + middle / lift.endurance);
    const double amount = startKg / amountInKg(1, lift.unit);
    m_load = std::max(lift.emptyAmount, lift.stepAmount * std::round(amount / lift.stepAmount));
    m_spellEnds = random.uniform(8, 30);
    if (random.chance(0.3)) {
        m_cheatFrom = random.uniform(10, 160);
        m_cheatUntil = m_cheatFrom + random.uniform(4, 10);
    }
    if (random.chance(lift.jointTrouble)) {
        m_painFrom = random.uniform(6, 160);
        m_painUntil = m_painFrom + random.uniform(2, 6);
    }
}

void LiftTraining::moveOn(double week, double restedWeeks)
{
    const double passed = std::max(0.0, week - m_week);
    m_week = week;
    if (restedWeeks > 2.3) m_strength *= 1 - 0.006 * std::min(restedWeeks, 12.0);
    const double pace = m_spell == Spell::Rise ? m_lift.pacePerWeek : m_spell == Spell::Fall ? -0.006 : 0.0;
    // Gains shrink with what is gained already.
    m_strength *= 1 + pace * passed * (pace > 0 ? m_lift.strengthKg / m_strength : 1.0);
    if (week < m_spellEnds) return;
    const double roll = m_random->uniform();
    m_spell = m_spell != Spell::Rise || roll < 0.25 ? Spell::Rise : roll < 0.85 ? Spell::Flat : Spell::Fall;
    m_spellEnds = week + (m_spell == Spell::Rise ? m_random->uniform(12, 34) : m_random->uniform(6, 14));
    // Once in a while trouble comes back.
    if (week > m_cheatUntil + 40 && m_random->chance(0.3)) {
        m_cheatFrom = week + m_random->uniform(0, 20);
        m_cheatUntil = m_cheatFrom + m_random->uniform(4, 10);
    }
    if (week > m_painUntil + 30 && m_random->chance(m_lift.jointTrouble)) {
        m_painFrom = week + m_random->uniform(0, 20);
        m_painUntil = m_painFrom + m_random->uniform(2, 6);
    }
}

Load LiftTraining::loadOf(double amount) const
{
    return Load::make(Decimal::nearest(std::max(0.0, amount), 2), m_lift.unit).value_or(Load{});
}

SetEntry LiftTraining::workSet(int index, double strengthToday, bool deload)
{
    SetEntry set;
    const double amount = deload ? std::max(m_lift.emptyAmount, m_load - 2 * m_lift.stepAmount) : m_load;
    set.load = loadOf(amount);
    set.kind = deload ? SetKind::Deload : SetKind::Work;
    const double tired = 1 - 0.02 * index;
    const double kg = std::max(1.0, amountInKg(amount, m_lift.unit));
    const double atMost = m_lift.endurance * (strengthToday * tired / kg - 1) + 0.35 * m_random->normal();
    const int planned = deload ? 4 : m_random->chance(0.25) ? 1 : 2;
    int reps = static_cast<int>(std::floor(atMost)) - planned;
    const bool stopsAtTop = reps > m_lift.band.high + 2;
    if (stopsAtTop) reps = m_lift.band.high + 1;
    if (deload) reps = std::min(reps, m_lift.band.low);
    set.reps = std::clamp(reps, 1, 60);
    if (!deload && atMost < m_lift.band.low && m_random->chance(0.35)) set.failed = true;
    const double left = std::max(0.0, std::round(2 * (atMost - set.reps + 0.4 * m_random->normal())) / 2);
    if (set.failed) {
        set.effort = Effort{Effort::Scale::Rir, Decimal(0)};
    } else if (m_random->chance(m_habits.saysEffort)) {
        const double rir = std::min(left, 6.0);
        set.effort = m_habits.usesRpe ? Effort{Effort::Scale::Rpe, Decimal::nearest(std::max(4.0, 10 - rir), 1)}
                                      : Effort{Effort::Scale::Rir, Decimal::nearest(rir, 1)};
    }
    return set;
}

void LiftTraining::addQuality(SetEntry& set)
{
    const bool cheating = m_week >= m_cheatFrom && m_week < m_cheatUntil;
    if (cheating) set.reps += 1 + static_cast<int>(2 * (m_week - m_cheatFrom) / 6);
    if (!m_random->chance(m_habits.watchedShare)) return;
    int off = m_random->chance(0.06) ? 1 : 0;
    if (cheating && m_random->chance(0.85)) off += 2 + m_random->integer(0, 3);
    off = std::min(off, set.reps);
    set.off = off;
    if (off == 0) return;
    const Mark mark = cheating ? Mark::Swing : m_random->chance(0.5) ? Mark::ShortBottom : Mark::ShortTop;
    set.marks.set(mark, off);
    if (cheating && off > 1 && m_lift.leanIsMeasured) set.leanDegrees = Decimal(12 + 2 * off);
    if (off > 2 && m_random->chance(0.4)) set.marks.set(Mark::Dropped, off - 1);
    if (m_random->chance(0.15)) set.loweringSeconds = Decimal::nearest(m_random->uniform(0.5, 1.5), 1);
}

void LiftTraining::addSlip(SetEntry& set)
{
    if (!m_random->chance(m_habits.slipOfThePen)) return;
    const double amount = set.load.amount().toDouble();
    switch (m_random->integer(0, 2)) {
    case 0:  // the point forgotten
        if (amount * 10 <= Load::kMaxAmount) set.load = loadOf(amount * 10);
        break;
    case 1:  // written in the other unit
        set.load = loadOf(m_lift.unit == MassUnit::kg ? amount / kKilogramsPerPound : amount * kKilogramsPerPound);
        break;
    default:
        set.reps = std::min(set.reps + 10, 70);
    }
}

ExerciseRating LiftTraining::rate()
{
    ExerciseRating rating;
    const bool pain = m_week >= m_painFrom && m_week < m_painUntil;
    if (pain) rating.discomfort[static_cast<std::size_t>(m_lift.joint)] = m_random->integer(3, 6);
    if (!m_random->chance(m_habits.ratesExercises)) return rating;
    rating.tension =
        std::clamp(7 + m_random->integer(-2, 2) - (m_week >= m_cheatFrom && m_week < m_cheatUntil ? 2 : 0), 0, 10);
    rating.burn = m_random->integer(3, 8);
    rating.pump = m_random->integer(3, 9);
    rating.gaveOut = m_random->chance(0.85) ? QStringLiteral("target") : QStringLiteral("forearm_flexors");
    if (m_random->chance(0.6)) {
        rating.nextSoreness = m_random->integer(0, 5);
        rating.nextWeakness = m_random->integer(0, 6);
    }
    return rating;
}

// Repetitions within the band, then the next step of load.
void LiftTraining::progressLoad(const std::vector<SetEntry>& sets)
{
    int atTop = 0;
    int tooFew = 0;
    int work = 0;
    for (const SetEntry& set : sets) {
        if (set.kind != SetKind::Work) continue;
        ++work;
        if (set.reps >= m_lift.band.high) ++atTop;
        if (set.reps < m_lift.band.low - 1) ++tooFew;
    }
    if (work == 0) return;
    if (atTop == work) m_load += m_lift.stepAmount;
    if (tooFew == work) m_load = std::max(m_lift.emptyAmount, m_load - m_lift.stepAmount);
}

WrittenExposure LiftTraining::next(double week, double restedWeeks, bool deload)
{
    moveOn(week, restedWeeks);
    const double offDay = m_random->chance(0.02) ? 0.06 : 0.0;
    const double today = m_strength * (1 + m_habits.dayNoise * m_random->normal() - offDay);
    WrittenExposure written;
    if (m_load > 2 * m_lift.emptyAmount && m_random->chance(0.5)) {
        SetEntry warm;
        warm.load = loadOf(m_lift.stepAmount * std::round(0.6 * m_load / m_lift.stepAmount));
        warm.reps = 5;
        warm.kind = SetKind::WarmUp;
        written.sets.push_back(warm);
    }
    const int count = deload ? 2 : 3;
    for (int i = 0; i < count; ++i) {
        SetEntry set = workSet(i, today, deload);
        if (!deload) addQuality(set);
        written.sets.push_back(set);
    }
    progressLoad(written.sets);
    for (SetEntry& set : written.sets) addSlip(set);
    written.rating = rate();
    return written;
}

}  // namespace steelyard
