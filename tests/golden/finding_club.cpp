#include "tests/golden/finding_club.h"

#include <cmath>
#include <functional>

namespace steelyard::testing_support {
namespace {

constexpr int kWeeks = 24;
constexpr int kEasyEvery = 6;  // weeks
const QDate kFirstMonday = kClubDay.addDays(-6 - 7 * (kWeeks - 1));
const Id<Muscle> kBiceps(1);
const Id<Muscle> kBack(2);

// One session of the plain way to train: what the lifter of a case does otherwise is changed in it.
struct SteadySession {
    int week = 0;      // from 0
    int weeksAgo = 0;  // 0: the last
    int number = 0;    // of all sessions on the line
    QDate date;
    std::vector<MadeSet> sets;
    bool easy = false;
};
using Change = std::function<void(SteadySession&)>;

// Up and down in a pattern without a trend, about as much as a lifter's days differ: shares of load.
double dayOf(int number)
{
    static constexpr std::array<double, 7> kDays{0.011, -0.014, 0.004, 0.016, -0.009, -0.012, 0.006};
    return kDays[static_cast<std::size_t>(number) % kDays.size()];
}

class Trainee {
public:
    explicit Trainee(const QString& name)
    {
        m_builder.athlete().name = name;
        m_builder.bodyMass(kFirstMonday, 80);
    }

    // Two sessions a week of three sets, watched, with the reserve written down, 0.6 % a week, every sixth week easy.
    Trainee& trains(const QString& exercise, double startKg, const Change& change = {},
                    const std::vector<int>& weekdays = {2, 5})
    {
        m_builder.line(exercise);
        int number = 0;
        for (int week = 0; week < kWeeks; ++week)
            for (const int weekday : weekdays) {
                SteadySession one{week, kWeeks - 1 - week, number++, kFirstMonday.addDays(7 * week + weekday - 1)};
                one.easy = week % kEasyEvery == 1;
                one.sets = plainSets(startKg, one);
                if (change) change(one);
                if (!one.sets.empty()) m_builder.exposure(one.date, one.sets);
            }
        return *this;
    }
    [[nodiscard]] LogBuilder& record() { return m_builder; }
    [[nodiscard]] ClubMember expecting(std::vector<Finding> findings) const
    {
        return {m_builder.build(), std::move(findings)};
    }

private:
    static std::vector<MadeSet> plainSets(double startKg, const SteadySession& one)
    {
        const double kg = startKg * std::exp(0.006 * one.week + dayOf(one.number));
        if (one.easy) {
            const MadeSet set{.load = 0.6 * kg, .reps = 8, .off = 0, .rir = 5, .kind = SetKind::Deload};
            return {set, set};
        }
        return {{.load = kg, .reps = 10, .off = 0, .rir = 2},
                {.load = kg, .reps = 10, .off = 0, .rir = 1},
                {.load = kg, .reps = 9, .off = 0, .rir = 1}};
    }

    LogBuilder m_builder;
};

const QString kCurl = QStringLiteral("Arm curl");
const QString kRow = QStringLiteral("Row");
const QString kSquat = QStringLiteral("Squat");

Change fromWeek(int week, const std::function<void(SteadySession&)>& change)
{
    return [=](SteadySession& one) {
        if (one.week >= week) change(one);
    };
}

void eachWorkSet(SteadySession& one, const std::function<void(MadeSet&)>& change)
{
    for (MadeSet& set : one.sets)
        if (set.kind == SetKind::Work) change(set);
}

// From that week on the level changes by so much a week against what it would have been.
Change drifting(int week, double perWeek)
{
    return fromWeek(week, [=](SteadySession& one) {
        const double factor = std::exp((perWeek - 0.006) * (one.week - week + 1));
        for (MadeSet& set : one.sets) set.load *= factor;
    });
}

ClubMember steady()
{
    return Trainee(QStringLiteral("Ada Steady")).trains(kCurl, 30).trains(kRow, 60).trains(kSquat, 90).expecting({});
}

Trainee withOthers(const char* name)
{
    return Trainee(QString::fromLatin1(name)).trains(kRow, 60).trains(kSquat, 90);
}

ClubMember aching()
{
    Trainee one = withOthers("Bo Aching");
    one.trains(kCurl, 30).record().discomfort(Joint::Elbow, 6);
    return one.expecting({{QStringLiteral("joint_discomfort"), kCurl, Severity::High}});
}

ClubMember slipping()
{
    return withOthers("Cy Slipping")
        .trains(kCurl, 30, drifting(14, -0.02))
        .expecting({{QStringLiteral("slipping"), kCurl, Severity::High}});
}

ClubMember fallingTogether()
{
    Trainee one(QStringLiteral("Di Falling"));
    for (const char* lift : {"Arm curl", "Row", "Squat", "Press", "Pulldown", "Lunge", "Calf raise"})
        one.trains(QString::fromLatin1(lift), 50, drifting(12, -0.012));
    return one.expecting({{QStringLiteral("whole_lifter_drop"), {}, Severity::High}});
}

ClubMember mixed()
{
    return withOthers("Ed Mixed")
        .trains(kCurl, 30,
                fromWeek(18, [](SteadySession& one) { eachWorkSet(one, [](MadeSet& set) { set.off = 5; }); }))
        .expecting({{QStringLiteral("mixed_record"), kCurl, Severity::Medium}});
}

ClubMember jumping()
{
    return withOthers("Fay Jumping")
        .trains(kCurl, 30,
                [](SteadySession& one) {
                    if (one.number != 2 * kWeeks - 3) return;
                    eachWorkSet(one, [](MadeSet& set) {
                        set.load *= 1.2;
                        set.reps = 5;
                        set.rir = 0;
                    });
                })
        .expecting({{QStringLiteral("unsupported_jump"), kCurl, Severity::Medium}});
}

ClubMember switching()
{
    Trainee one = withOthers("Gil Switching");
    const QDate last = kClubDay.addDays(-3);
    for (int way = 0; way < 3; ++way) {
        one.record().line(kCurl, QStringLiteral("grip %1").arg(way));
        one.record().exposures(2, last.addDays(-2 * way), 9,
                               [](int i) { return MadeSet{.load = 30.0 + i, .reps = 10, .off = 0, .rir = 1}; });
    }
    return one.expecting({{QStringLiteral("line_switching"), kCurl, Severity::Medium}});
}

ClubMember stalled()
{
    return withOthers("Hal Stalled")
        .trains(kCurl, 30, drifting(8, 0.0))
        .expecting({{QStringLiteral("stalled"), kCurl, Severity::Medium}});
}

ClubMember missing()
{
    const Change stays = [](SteadySession& one) {
        if (one.weeksAgo < 2) one.sets.clear();
    };
    return Trainee(QStringLiteral("Ina Missing"))
        .trains(kRow, 60, stays)
        .trains(kSquat, 90, stays)
        .expecting({{QStringLiteral("missed_sessions"), {}, Severity::Medium}});
}

ClubMember slipOfThePen()
{
    return withOthers("Jo Slip")
        .trains(kCurl, 30,
                [](SteadySession& one) {
                    if (one.number == 2 * kWeeks - 1) one.sets.front().load *= 10;
                })
        .expecting({{QStringLiteral("implausible_entry"), kCurl, Severity::Medium}});
}

ClubMember untoldEffort()
{
    return withOthers("Kit Untold")
        .trains(kCurl, 30,
                fromWeek(18, [](SteadySession& one) { eachWorkSet(one, [](MadeSet& set) { set.rir.reset(); }); }))
        .expecting({{QStringLiteral("effort_unknown"), kCurl, Severity::Low}});
}

ClubMember unwatched()
{
    return withOthers("Lu Unwatched")
        .trains(kCurl, 30,
                fromWeek(16,
                         [](SteadySession& one) {
                             for (MadeSet& set : one.sets) set.off.reset();
                         }))
        .expecting({{QStringLiteral("unwatched"), kCurl, Severity::Low}});
}

ClubMember toBeFilmed()
{
    return withOthers("Mo Filmed")
        .trains(kCurl, 30,
                [](SteadySession& one) {
                    if (one.number == 2 * kWeeks - 3) one.sets.front().reps = 17;
                })
        .expecting({{QStringLiteral("film_check"), kCurl, Severity::Low}});
}

// Ratings after every session of the newest line, oldest first.
template <class Rate>
void rateAll(LogBuilder& record, Rate rate)
{
    for (Exposure& exposure : record.newestLine().exposures) rate(exposure);
}

ClubMember wronglyLimited()
{
    Trainee one = withOthers("Nel Limited");
    one.trains(kCurl, 30);
    rateAll(one.record(), [](Exposure& exposure) {
        exposure.rating.tension = 6;
        exposure.rating.gaveOut = QStringLiteral("forearm_flexors");
    });
    return one.expecting({{QStringLiteral("wrong_limiter"), kCurl, Severity::Medium}});
}

ClubMember wrongBand()
{
    Trainee one = withOthers("Ole Band");
    one.trains(kCurl, 30, fromWeek(18, [](SteadySession& session) {
                   eachWorkSet(session, [](MadeSet& set) {
                       set.load *= 0.72;
                       set.reps += 12;
                   });
               }));
    rateAll(one.record(), [](Exposure& exposure) {
        const bool many = exposure.date >= kFirstMonday.addDays(7 * 18);
        exposure.rating.tension = many ? 4 : 7;
        exposure.rating.pump = many ? 2 : 7;
        exposure.rating.gaveOut = QStringLiteral("target");
    });
    return one.expecting({{QStringLiteral("rep_band_misfit"), kCurl, Severity::Low}});
}

ClubMember feltWeakly()
{
    Trainee one = withOthers("Pia Weak");
    one.trains(kCurl, 30);
    rateAll(one.record(), [](Exposure& exposure) {
        exposure.rating.tension = 2;
        exposure.rating.burn = 3;
        exposure.rating.pump = 2;
    });
    return one.expecting({{QStringLiteral("weak_stimulus"), kCurl, Severity::Low}});
}

ClubMember easyGoing()
{
    return withOthers("Rex Easy")
        .trains(kCurl, 30,
                fromWeek(18,
                         [](SteadySession& one) {
                             eachWorkSet(one, [](MadeSet& set) {
                                 set.reps -= 4;
                                 set.rir = *set.rir + 5;
                             });
                         }))
        .expecting({{QStringLiteral("effort_low"), kCurl, Severity::Low}});
}

ClubMember backCarriedOver()
{
    Trainee one(QStringLiteral("Sue Back"));
    one.trains(kSquat, 90).trains(kCurl, 30, {}, {1, 4});
    for (Exposure& exposure : one.record().newestLine().exposures)
        if (exposure.date > kClubDay.addDays(-28))
            for (LoggedSet& logged : exposure.sets)
                if (logged.set.kind == SetKind::Work) {
                    logged.set.off = 2;
                    logged.set.marks.set(Mark::Swing, 2);
                }
    one.trains(QStringLiteral("Deadlift"), 120).record().backLoading(BackLoading::High);
    return one.expecting({{QStringLiteral("spillover_fatigue"), {}, Severity::Low}});
}

ClubMember dueForAnEasyWeek()
{
    const Change never = [](SteadySession& one) {
        if (!one.easy) return;
        for (MadeSet& set : one.sets) set = {.load = set.load / 0.6, .reps = 10, .off = 0, .rir = 1};
    };
    Trainee one(QStringLiteral("Tam Due"));
    one.trains(kRow, 60, never).trains(kSquat, 90, never).record().soreAfter(8);
    return one.expecting({{QStringLiteral("deload_due"), {}, Severity::Medium}});
}

ClubMember tooFewSets()
{
    Trainee one = withOthers("Uwe Few");
    one.trains(kCurl, 30).record().trains(kBiceps, QStringLiteral("biceps"), 1).aim(kBiceps, 12, 18);
    return one.expecting({{QStringLiteral("sets_out_of_band"), {}, Severity::Low}});
}

ClubMember leaning()
{
    Trainee one = withOthers("Vic Leaning");
    one.trains(kCurl, 30).record().trains(kBiceps, QStringLiteral("biceps"), 1);
    one.record().athlete().height = lengthFromMillimetres(1750);
    Variant& variant = one.record().variant();
    variant.implement = Implement::StraightBar;
    variant.travel = TravelKind::Arc;
    variant.position = QStringLiteral("upright");
    for (Exposure& exposure : one.record().newestLine().exposures)
        if (exposure.date > kClubDay.addDays(-14)) exposure.sets.front().set.leanDegrees = Decimal(19);
    return one.expecting({{QStringLiteral("lean_beyond_balance"), kCurl, Severity::Medium}});
}

}  // namespace

std::vector<ClubMember> findingClub()
{
    return {steady(),     aching(),           slipping(),  fallingTogether(), mixed(),        jumping(),
            switching(),  stalled(),          missing(),   slipOfThePen(),    untoldEffort(), unwatched(),
            toBeFilmed(), wronglyLimited(),   wrongBand(), feltWeakly(),      easyGoing(),    backCarriedOver(),
            tooFewSets(), dueForAnEasyWeek(), leaning()};
}

}  // namespace steelyard::testing_support
