// A small invented lifter for the tests of sheets: a library of four variants, a gym, and a log that tests add to.
//
//   SheetSample sample;
//   sample.done(sample.curl, QDate(2027, 3, 1), {{u"40", 10}, {u"40", 9}});
//   buildSessionSheet(sample.log, sample.library, sample.gym, QDate(2027, 3, 8));
#pragma once

#include "core/sheets/session_sheet.h"

#include <algorithm>

namespace steelyard::testing_support {

struct SampleSet {
    QStringView load;
    int reps = 0;
    std::optional<int> off = 0;
    std::optional<double> rir = 2;
    SetKind kind = SetKind::Work;
};

inline Load kg(QStringView amount)
{
    return *Load::parse(amount, MassUnit::kg);
}

struct SheetSample {
    Library library;
    Gym gym{QStringLiteral("Test hall"), {}, std::nullopt, {}, {}, {}};
    AthleteLog log{{Id<Athlete>(1), QUuid(QStringLiteral("{0123abcd-0000-4000-8000-000000000000}")), Athlete()},
                   {},
                   {},
                   {},
                   {},
                   {}};
    std::size_t curl = 0, squat = 1, dumbbell = 2, pulldown = 3;  // lines

    SheetSample()
    {
        log.athlete.value.name = QStringLiteral("Sample Lifter");
        log.athlete.value.consents = {HealthConsent::given(QDate(2020, 1, 1))};
        gym.bars = {{QStringLiteral("bar"), Implement::StraightBar, kg(u"20")}};
        for (const auto* plate : {u"25", u"20", u"15", u"10", u"5", u"2.5", u"1.25"})
            gym.plates.push_back({kg(plate), QStringView(plate) == u"20" ? 4 : 2});
        gym.dumbbells = {{QStringLiteral("dumbbells"), kg(u"4"), kg(u"2"), kg(u"40")}};
        gym.stacks = {{QStringLiteral("stack"), kg(u"5"), kg(u"5"), kg(u"100")}};
        addLine(QStringLiteral("Arm curl"), QStringLiteral("straight bar, upright"), Loading::BarTotal,
                Implement::StraightBar);
        addLine(QStringLiteral("Squat"), QStringLiteral("bar on the back"), Loading::BarTotal, Implement::StraightBar);
        addLine(QStringLiteral("Bench press"), QStringLiteral("dumbbells, flat"), Loading::PerHand,
                Implement::Dumbbells);
        addLine(QStringLiteral("Pulldown"), QStringLiteral("cable, seated"), Loading::Stack, Implement::Cable);
    }

    void addLine(const QString& exercise, const QString& variant, Loading loading, Implement implement)
    {
        const auto n = static_cast<std::int64_t>(log.lines.size()) + 1;
        const QUuid none;
        Variant v{Id<Exercise>(n), variant};
        v.loading = loading;
        v.implement = implement;
        RepStandard s{Id<Variant>(n), std::nullopt, QStringLiteral("strict")};
        s.start = QStringLiteral("arms straight, bar at the thighs");
        s.end = QStringLiteral("forearms just past upright");
        s.path = QStringLiteral("elbows stay at the sides");
        s.body = QStringLiteral("no lean, no swing from the hips");
        s.lowering = QStringLiteral("two seconds under control");
        library.exercises.push_back({Id<Exercise>(n), none, {exercise, {}, false}});
        library.variants.push_back({Id<Variant>(n), none, v});
        library.grips.push_back({Id<Grip>(n), none, {QStringLiteral("supinated, medium"), {}, {}, {}}});
        library.standards.push_back({Id<RepStandard>(n), none, s});
        log.lines.push_back({Id<LiftLine>(n),
                             {log.athlete.id, Id<Variant>(n), Id<Grip>(n), Id<RepStandard>(n)},
                             QString::number(n),
                             library.exercises.back(),
                             library.variants.back(),
                             library.grips.back(),
                             library.standards.back(),
                             {}});
    }

    Exposure& done(std::size_t line, QDate date, const std::vector<SampleSet>& sets)
    {
        Exposure exposure{date, {}, {}};
        for (const SampleSet& sample : sets) {
            SetEntry set;
            set.load = kg(sample.load);
            set.reps = sample.reps;
            set.off = sample.off;
            if (sample.rir) set.effort = Effort{Effort::Scale::Rir, *Decimal::parse(QString::number(*sample.rir))};
            set.kind = sample.kind;
            const int position = static_cast<int>(line) * 10 + static_cast<int>(exposure.sets.size()) + 1;
            exposure.sets.push_back({Id<SetEntry>(position), position, set});
        }
        if (!std::ranges::binary_search(log.sessionDates, date)) {
            log.sessionDates.push_back(date);
            std::ranges::sort(log.sessionDates);
        }
        auto& exposures = log.lines[line].exposures;
        const auto at = std::ranges::upper_bound(exposures, date, {}, &Exposure::date);
        return *exposures.insert(at, std::move(exposure));
    }

    void plan(QDate date, const std::vector<std::size_t>& lines, std::optional<Load> load = std::nullopt,
              WeekKind kind = WeekKind::Normal)
    {
        PlannedDay day{date, QStringLiteral("Day A"), {}};
        for (const std::size_t line : lines) {
            const LiftLine& key = log.lines[line].line;
            Slot slot{key.variant, key.grip, key.standard};
            slot.plannedRir = Decimal::parse(u"1");
            slot.load = load;
            day.slotList.push_back(slot);
        }
        Block block{log.athlete.id, QStringLiteral("Spring"), {}, date, {{kind, {day}}}};
        log.blocks.push_back({Id<Block>(1), QUuid(), block});
    }
};

}  // namespace steelyard::testing_support
