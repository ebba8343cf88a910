#include "core/samples/sample_club.h"

#include "core/planning/trial_in_block.h"
#include "core/samples/club_people.h"
#include "core/samples/club_training.h"
#include "core/samples/club_trials.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

namespace steelyard {
namespace {

struct SampleClubText {
    Q_DECLARE_TR_FUNCTIONS(SampleClubText)
};

// The target muscle of each place in a day, over four kinds of day.
const std::vector<std::vector<QString>>& dayPlans()
{
    static const std::vector<std::vector<QString>> plans{
        {QStringLiteral("chest"), QStringLiteral("lats"), QStringLiteral("triceps"), QStringLiteral("biceps"),
         QStringLiteral("side_deltoid"), QStringLiteral("calves")},
        {QStringLiteral("quadriceps"), QStringLiteral("hamstrings"), QStringLiteral("biceps"),
         QStringLiteral("abdominals"), QStringLiteral("glutes"), QStringLiteral("calves")},
        {QStringLiteral("upper_back"), QStringLiteral("front_deltoid"), QStringLiteral("biceps"),
         QStringLiteral("rear_deltoid"), QStringLiteral("brachioradialis"), QStringLiteral("chest")},
        {QStringLiteral("glutes"), QStringLiteral("chest"), QStringLiteral("upper_back"), QStringLiteral("triceps"),
         QStringLiteral("forearm_flexors"), QStringLiteral("abdominals")}};
    return plans;
}

constexpr int kBlockWeeks = 5;

struct PlannedLift {
    LiftLine line;
    TrainedLift lift;
};

struct DayLift {
    PlannedLift planned;
    LiftTraining training;
    LifterHabits habits;
};

struct TrainingDay {
    int weekday = 1;
    std::vector<DayLift> lifts;
};

// What was done of one lift in a session.
struct DoneLift {
    LiftLine line;
    QUuid uuid;  // of the line, if it is new
    WrittenExposure written;
};

struct SessionTime {
    double week = 0;         // from the club's first Monday
    double restedWeeks = 0;  // since the session before
    bool deload = false;
};

class ClubWriter {
public:
    ClubWriter(Book& book, Transaction& transaction, const SampleClubOptions& options, const Library& library,
               const std::vector<Row<Gym>>& gyms)
        : m_book(book),
          m_transaction(transaction),
          m_options(options),
          m_library(library),
          m_gyms(gyms),
          m_firstMonday(options.lastDay.addDays(1 - options.lastDay.dayOfWeek() - 7 * (52 * options.years - 1)))
    {}

    [[nodiscard]] Result<void> writeLifter(int index);

private:
    [[nodiscard]] std::optional<PlannedLift> pickLift(const QString& muscle, const Athlete&, Id<Athlete>,
                                                      double strength, ClubRandom&) const;
    [[nodiscard]] std::optional<PlannedLift> otherGrip(const PlannedLift& was, ClubRandom&) const;
    [[nodiscard]] std::vector<TrainingDay> inventDays(const Athlete&, Id<Athlete>, ClubRandom&) const;
    void switchOneLift(TrainingDay&, ClubRandom&) const;
    [[nodiscard]] Result<void> writeBodyMass(Id<Athlete>, const Athlete&, ClubRandom&);
    [[nodiscard]] Result<void> writeYears(Id<Athlete>, std::vector<TrainingDay>&, ClubRandom&);
    [[nodiscard]] Result<void> writeSession(Id<Athlete>, QDate, TrainingDay&, SessionTime, ClubRandom&);
    [[nodiscard]] Result<void> writeBlock(Id<Athlete>, const std::vector<TrainingDay>&, ClubRandom&);
    void setUpTrial(const std::vector<TrainingDay>&);
    [[nodiscard]] Block withTrial(const Block&, const std::vector<TrainingDay>&) const;
    [[nodiscard]] Result<void> writeDecision(int index, Id<Athlete>, const std::vector<TrainingDay>&, ClubRandom&);

    Book& m_book;
    Transaction& m_transaction;
    const SampleClubOptions& m_options;
    const Library& m_library;
    const std::vector<Row<Gym>>& m_gyms;
    QDate m_firstMonday;
    // Of the lifter who is being written.
    std::optional<ClubTrial> m_compares = {};
    std::optional<Trial> m_trial = {};
    int m_trialWeekday = 1;
};

std::optional<PlannedLift> ClubWriter::pickLift(const QString& muscle, const Athlete& athlete, Id<Athlete> id,
                                                double strength, ClubRandom& random) const
{
    std::vector<const Row<Variant>*> fitting;
    for (const Row<Variant>& variant : m_library.variants) {
        const auto* exercise = m_library.find(variant.value.exercise);
        if (!exercise || exercise->value.shares.empty() || !variant.value.usualGrip) continue;
        const auto* target = m_library.find(exercise->value.shares.front().muscle);
        const bool loadable = variant.value.loading != Loading::Added && variant.value.loading != Loading::Assisted;
        if (target && target->value.key == muscle && loadable) fitting.push_back(&variant);
    }
    if (fitting.empty()) return std::nullopt;
    const Row<Variant>& variant = *random.pick(fitting);
    const auto standard = std::ranges::find_if(m_library.standards, [&](const Row<RepStandard>& row) {
        return row.value.variant == variant.id && row.value.isDefault;
    });
    if (standard == m_library.standards.end()) return std::nullopt;

    PlannedLift planned{{id, variant.id, *variant.value.usualGrip, standard->id}, {}};
    TrainedLift& lift = planned.lift;
    lift.loading = variant.value.loading;
    lift.band = variant.value.band;
    lift.unit = athlete.unit;
    const bool perHand = lift.loading == Loading::PerHand;
    const bool stack = lift.loading == Loading::Stack;
    const bool pounds = lift.unit == MassUnit::lb;
    lift.stepAmount = perHand ? (pounds ? 5 : 2) : stack ? (pounds ? 10 : 5) : (pounds ? 5 : 2.5);
    const double barKg = variant.value.barMass ? variant.value.barMass->kilograms() : 0;
    lift.emptyAmount = perHand || stack ? lift.stepAmount
                       : pounds         ? 5 * std::round(barKg / kKilogramsPerPound / 5)
                                        : barKg;
    lift.emptyAmount = std::max(lift.emptyAmount, lift.stepAmount);
    const double minimumKg = (pounds ? kKilogramsPerPound : 1.0) * lift.emptyAmount * 1.5;
    lift.strengthKg = std::max(minimumKg, usualStrengthKg(muscle) * strength * (perHand ? 0.45 : 1.0));
    lift.endurance = random.uniform(24, 38);
    const double pace = athlete.experience == Experience::Novice         ? random.uniform(0.008, 0.014)
                        : athlete.experience == Experience::Intermediate ? random.uniform(0.002, 0.006)
                                                                         : random.uniform(0.0003, 0.0015);
    lift.pacePerWeek = pace;
    lift.jointTrouble = 0.3;
    const bool arms = muscle == QStringLiteral("biceps") || muscle == QStringLiteral("triceps")
                      || muscle == QStringLiteral("brachioradialis");
    const bool legs = muscle == QStringLiteral("quadriceps") || muscle == QStringLiteral("glutes");
    lift.leanIsMeasured = muscle == QStringLiteral("biceps") && variant.value.position == QStringLiteral("upright");
    lift.joint = arms ? Joint::Elbow : legs ? Joint::Knee : Joint::Shoulder;
    return planned;
}

// The same variant with the hands elsewhere: a new line starts.
std::optional<PlannedLift> ClubWriter::otherGrip(const PlannedLift& was, ClubRandom& random) const
{
    PlannedLift now = was;
    std::vector<Id<Grip>> grips;
    const auto* grip = m_library.find(was.line.grip);
    for (const Row<Grip>& other : m_library.grips)
        if (grip && other.id != grip->id && other.value.orientation == grip->value.orientation && other.value.spacing)
            grips.push_back(other.id);
    if (grips.empty()) return std::nullopt;
    now.line.grip = random.pick(grips);
    now.lift.strengthKg *= random.uniform(0.92, 1.05);
    return now;
}

void ClubWriter::switchOneLift(TrainingDay& day, ClubRandom& random) const
{
    if (day.lifts.empty()) return;
    const auto place = random.integer(0, static_cast<int>(day.lifts.size()) - 1);
    const DayLift was = day.lifts[static_cast<std::size_t>(place)];
    const auto now = otherGrip(was.planned, random);
    if (!now) return;
    day.lifts.erase(day.lifts.begin() + place);
    day.lifts.push_back({*now, LiftTraining(now->lift, was.habits, random), was.habits});
}

Result<void> ClubWriter::writeSession(Id<Athlete> athlete, QDate date, TrainingDay& day, SessionTime time,
                                      ClubRandom& random)
{
    const LogbookRepository logbook = m_book.logbook();
    STEELYARD_TRY(const auto session, logbook.session(m_transaction, athlete, date));
    std::vector<DoneLift> all;
    for (DayLift& lift : day.lifts) {
        const QUuid uuid = random.uuid();
        DoneLift done{lift.planned.line, uuid, lift.training.next(time.week, time.restedWeeks, time.deload)};
        if (!m_compares || !m_compares->takes(done.line, date, time.deload)) {
            all.push_back(std::move(done));
            continue;
        }
        // What is compared stands first.
        done.line = m_compares->train(date, done.written);
        done.uuid = m_compares->random().uuid();
        all.insert(all.begin(), std::move(done));
    }
    int position = 0;
    for (DoneLift& done : all) {
        STEELYARD_TRY(const auto line, logbook.line(m_transaction, done.line, done.uuid));
        for (SetEntry& set : done.written.sets) {
            set.number = ++position;
            STEELYARD_CHECK(logbook.insert(m_transaction, athlete, {session, line, position, set}));
        }
        if (!done.written.rating.none())
            STEELYARD_CHECK(logbook.putRating(m_transaction, athlete, session, line, done.written.rating));
    }
    return {};
}

// Five weeks around the last day, the last one easier, on the lifter's training days: there is a usual week ahead to change.
Result<void> ClubWriter::writeBlock(Id<Athlete> athlete, const std::vector<TrainingDay>& days, ClubRandom& random)
{
    const QDate monday = m_options.lastDay.addDays(1 - m_options.lastDay.dayOfWeek());
    Block block{.athlete = athlete};
    block.name = SampleClubText::tr("Five weeks of steady work");
    block.aim = SampleClubText::tr("Add repetitions to the standard, then load");
    block.start = monday.addDays(-14);
    for (int week = 0; week < kBlockWeeks; ++week) {
        const bool easier = week == kBlockWeeks - 1;
        PlannedWeek planned;
        planned.kind = easier ? WeekKind::Deload : WeekKind::Normal;
        for (const TrainingDay& training : days) {
            PlannedDay day{block.start.addDays(7 * week + training.weekday - 1), {}, {}};
            for (const DayLift& lift : training.lifts) {
                const LiftLine& line = lift.planned.line;
                Slot slot{.variant = line.variant, .grip = line.grip, .standard = line.standard};
                slot.sets = easier ? 2 : 3;
                if (const auto* variant = m_library.find(line.variant)) slot.band = variant->value.band;
                slot.plannedRir = Decimal(easier ? 4 : week == 0 ? 3 : 2);
                slot.restSeconds = 120;
                day.slotList.push_back(slot);
            }
            planned.days.push_back(std::move(day));
        }
        block.weeks.push_back(std::move(planned));
    }
    STEELYARD_CHECK(m_book.blocks().insert(m_transaction, withTrial(block, days), random.uuid()));
    return {};
}

// The first lift of the lifter that can be done with the hands elsewhere.
void ClubWriter::setUpTrial(const std::vector<TrainingDay>& days)
{
    if (!m_compares) return;
    for (const TrainingDay& day : days)
        for (const DayLift& lift : day.lifts) {
            const auto other = otherGrip(lift.planned, m_compares->random());
            const auto* variant = m_library.find(lift.planned.line.variant);
            if (!other || !variant) continue;
            m_compares->compare(lift.planned.line, other->line, variant->value.band,
                                SampleClubText::tr("%1: which grip?").arg(m_library.fullName(variant->value)));
            m_trialWeekday = day.weekday;
            return;
        }
}

// The sessions of a trial that runs stand in the plan, and what one chose is the plan.
Block ClubWriter::withTrial(const Block& block, const std::vector<TrainingDay>& days) const
{
    if (!m_trial) return block;
    const std::vector<Row<Block>> blocks{{Id<Block>(0), QUuid(), block}};
    // Past weeks as well: they were planned as they were done.
    TrialGround ground{blocks, m_library, {}, m_trial->ending ? m_trial->ending->date.addDays(1) : block.start};
    for (const TrainingDay& day : days) ground.weekdays.push_back(day.weekday);
    const bool carried = m_trial->ending && m_trial->ending->choice;
    if (m_trial->ending && !carried) return block;
    const LaidTrial laid =
        carried ? carryChoice(ground, *m_trial, *m_trial->ending->choice) : layTrial(ground, *m_trial);
    return laid.blocks.empty() ? block : laid.blocks.front().value;
}

// Every third lifter was decided about some weeks ago, so that there is something to look back on.
Result<void> ClubWriter::writeDecision(int index, Id<Athlete> athlete, const std::vector<TrainingDay>& days,
                                       ClubRandom& random)
{
    if (index % 3 != 1 || days.empty() || days.front().lifts.empty()) return {};
    const LiftLine& line = days.front().lifts.front().planned.line;
    STEELYARD_TRY(const auto id, m_book.logbook().line(m_transaction, line, random.uuid()));
    Decision decision{.athlete = athlete, .line = id};
    decision.madeOn = m_options.lastDay.addDays(-42 - 7 * (index % 4));
    switch (index % 4) {
    case 0:
        decision.rule = QStringLiteral("unwatched");
        decision.kind = DecisionKind::Act;
        decision.action = QStringLiteral("watch_sets");
        break;
    case 1:
        decision.rule = QStringLiteral("stalled");
        decision.kind = DecisionKind::Act;
        decision.action = QStringLiteral("add_set");
        decision.reason = SampleClubText::tr("sleeps well again");
        break;
    case 2:
        decision.rule = QStringLiteral("slipping");
        decision.kind = DecisionKind::Watch;
        decision.until = decision.madeOn.addDays(14);
        break;
    default:
        decision.rule = QStringLiteral("effort_unknown");
        decision.kind = DecisionKind::Dismiss;
        decision.reason = SampleClubText::tr("knows the scale now");
        break;
    }
    STEELYARD_CHECK(m_book.decisions().insert(m_transaction, decision, random.uuid()));
    return {};
}

// Training days, and what is trained on each.
std::vector<TrainingDay> ClubWriter::inventDays(const Athlete& athlete, Id<Athlete> id, ClubRandom& random) const
{
    static constexpr std::array<std::array<int, 4>, 3> kWeekdays{{{1, 4, 0, 0}, {1, 3, 5, 0}, {1, 2, 4, 6}}};
    const LifterHabits habits = inventHabits(random);
    const double experienced = athlete.experience == Experience::Novice         ? 0.9
                               : athlete.experience == Experience::Intermediate ? 1.3
                                                                                : 1.7;
    const double strength = (athlete.sex == Sex::Female ? 0.62 : 1.0) * experienced * random.uniform(0.85, 1.15);
    const int count = athlete.daysPerWeek.value_or(3);
    std::vector<TrainingDay> days;
    for (int d = 0; d < count; ++d) {
        TrainingDay& day = days.emplace_back();
        day.weekday = kWeekdays[static_cast<std::size_t>(count - 2)][static_cast<std::size_t>(d)];
        const auto& plan = dayPlans()[static_cast<std::size_t>(d)];
        for (int place = 0; place < m_options.exercisesPerSession; ++place) {
            const QString& muscle = plan[static_cast<std::size_t>(place) % plan.size()];
            const auto lift = pickLift(muscle, athlete, id, strength, random);
            const bool twice = lift && std::ranges::any_of(day.lifts, [&](const DayLift& other) {
                                   return other.planned.line.variant == lift->line.variant;
                               });
            if (lift && !twice) day.lifts.push_back({*lift, LiftTraining(lift->lift, habits, random), habits});
        }
    }
    return days;
}

// Years of sessions: a pause in the middle for half of them, an easier week now and then, missed days, a new grip.
Result<void> ClubWriter::writeYears(Id<Athlete> id, std::vector<TrainingDay>& days, ClubRandom& random)
{
    const int weeks = 52 * m_options.years;
    const int pauseStart = random.chance(0.5) ? random.integer(10, weeks - 6) : -100;
    const int pauseEnd = pauseStart + random.integer(3, 8);
    const int deloadEvery = random.integer(5, 8);
    const int lastWeek = random.chance(0.06) ? weeks - random.integer(3, 6) : weeks;  // somebody who stopped coming
    double before = 0;
    for (int week = 0; week < lastWeek; ++week) {
        if (week >= pauseStart && week < pauseEnd) continue;
        for (TrainingDay& day : days) {
            const QDate date = m_firstMonday.addDays(7 * week + day.weekday - 1);
            if (date > m_options.lastDay || random.chance(0.08)) continue;
            if (week % 26 == 25 && random.chance(0.1)) switchOneLift(day, random);
            const double at = week + day.weekday / 7.0;
            STEELYARD_CHECK(
                writeSession(id, date, day, {at, at - before, week % deloadEvery == deloadEvery - 1}, random));
            before = at;
        }
    }
    return {};
}

Result<void> ClubWriter::writeBodyMass(Id<Athlete> id, const Athlete& athlete, ClubRandom& random)
{
    double kg = (athlete.sex == Sex::Female ? 64 : 80) * random.uniform(0.85, 1.2);
    for (int week = 0; week < 52 * m_options.years; week += 4) {
        kg *= 1 + 0.004 * random.normal();
        const double amount = athlete.unit == MassUnit::kg ? kg : kg / kKilogramsPerPound;
        const auto mass = Load::make(Decimal::nearest(amount, 1), athlete.unit).value_or(Load{});
        STEELYARD_CHECK(m_book.athletes().putBodyMass(m_transaction, id, {m_firstMonday.addDays(7 * week), mass}));
    }
    return {};
}

Result<void> ClubWriter::writeLifter(int index)
{
    ClubRandom random(m_options.seed * 1'000'003 + static_cast<std::uint64_t>(index));
    const Athlete athlete = inventAthlete({index, m_options.lastDay, m_library, m_gyms}, random);
    STEELYARD_TRY(const auto id, m_book.athletes().insert(m_transaction, athlete, random.uuid()));
    STEELYARD_CHECK(writeBodyMass(id, athlete, random));
    std::vector<TrainingDay> days = inventDays(athlete, id, random);
    m_compares = ClubTrial::of(index, m_options);
    setUpTrial(days);
    STEELYARD_CHECK(writeYears(id, days, random));
    m_trial = m_compares ? m_compares->finish(m_trialWeekday) : std::nullopt;
    if (m_trial) STEELYARD_CHECK(m_book.trials().insert(m_transaction, *m_trial, m_compares->random().uuid()));
    if (random.chance(0.6)) STEELYARD_CHECK(writeBlock(id, days, random));
    return writeDecision(index, id, days, random);
}

}  // namespace

Result<void> fillSampleClub(Book& book, const SampleClubOptions& options, const Progress& progress)
{
    if (options.athletes < 1 || options.athletes > 500 || options.years < 1 || options.years > 10
        || options.exercisesPerSession < 1 || options.exercisesPerSession > 8 || !options.lastDay.isValid())
        return fail(ErrorCode::Invalid,
                    SampleClubText::tr("A sample club has 1 to 500 athletes and 1 to 10 years of sessions."));
    STEELYARD_TRY(const auto library, book.library().read());
    STEELYARD_TRY(const auto gyms, book.gyms().all());
    STEELYARD_TRY(auto transaction, Transaction::begin(book.database()));
    ClubWriter writer(book, transaction, options, library, gyms);
    for (int i = 0; i < options.athletes; ++i) {
        if (progress.cancelled())
            return fail(ErrorCode::Cancelled, SampleClubText::tr("Stopped; the book is as it was."));
        STEELYARD_CHECK(writer.writeLifter(i));
        progress.report(static_cast<double>(i + 1) / options.athletes);
    }
    const Changes changes = transaction.changes();
    STEELYARD_CHECK(transaction.commit());
    book.hub().publish(changes);
    return {};
}

}  // namespace steelyard
