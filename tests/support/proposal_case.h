// A small library, a gym and a lifter's record for tests of proposed blocks.
//
//   ProposalCase c;
//   c.record(c.bench, day, 3);                     // three sets of the bench press on that day
//   const auto proposal = c.propose();
#pragma once

#include "core/planning/propose_block.h"
#include "tests/support/log_builder.h"

namespace steelyard::testing_support {

class ProposalCase {
public:
    struct Lift {
        Id<Exercise> exercise{1};
        Id<Variant> variant{1};
        Id<RepStandard> standard{1};
    };

    Library library;  // before the lifts, which fill it
    Id<Muscle> chest = muscle("chest", "Chest");
    Id<Muscle> lats = muscle("lats", "Lats");
    Id<Muscle> quadriceps = muscle("quadriceps", "Quadriceps");
    Id<Muscle> biceps = muscle("biceps", "Biceps");
    Id<Muscle> hamstrings = muscle("hamstrings", "Hamstrings");
    Lift bench = exercise("Bench press", {{chest, 1}}, Implement::StraightBar, Loading::BarTotal);
    Lift fly = exercise("Fly", {{chest, 1}}, Implement::Dumbbells, Loading::PerHand);
    Lift pull = exercise("Row", {{lats, 1}, {biceps, 0.5}}, Implement::Cable, Loading::Stack);
    Lift squat = exercise("Squat", {{quadriceps, 1}}, Implement::StraightBar, Loading::BarTotal, BackLoading::High);
    Lift press = exercise("Leg press", {{quadriceps, 1}}, Implement::PlateMachine, Loading::BarTotal);
    Lift curl = exercise("Arm curl", {{biceps, 1}}, Implement::Dumbbells, Loading::PerHand);
    Lift hinge = exercise("Hip hinge", {{hamstrings, 1}}, Implement::StraightBar, Loading::BarTotal, BackLoading::High);
    Lift legCurl = exercise("Leg curl", {{hamstrings, 1}}, Implement::Machine, Loading::Stack);
    Gym gym = fullGym();
    ProposalWishes wishes{.today = QDate(2026, 3, 1), .from = QDate(2026, 3, 2)};

    ProposalCase()
    {
        log.athlete.value.name = QStringLiteral("Made Up");
        log.athlete.value.daysPerWeek = 3;
        log.athlete.value.minutesPerDay = 75;
        for (const Row<Muscle>& row : library.muscles) log.athlete.value.aims.push_back({row.id, 6, 10});
        wishes.search = {.steps = 30'000, .stepsALimit = 5'000, .seed = 1};
    }

    // Another way to do an exercise.
    Lift variantOf(const Lift& lift, const char* name)
    {
        Variant made = library.find(lift.variant)->value;
        made.name = QString::fromLatin1(name);
        made.isDefault = false;
        const Lift added{lift.exercise, Id<Variant>(100 + std::ssize(library.variants)),
                         Id<RepStandard>(100 + std::ssize(library.standards))};
        library.variants.push_back({added.variant, {}, made});
        library.standards.push_back({added.standard, {}, {added.variant, {}, QStringLiteral("strict")}});
        return added;
    }
    [[nodiscard]] LineRecord& line(const Lift& lift)
    {
        const LiftLine made{log.athlete.id, lift.variant, Id<Grip>(1), lift.standard};
        const auto known = std::ranges::find(log.lines, made, &LineRecord::line);
        if (known != log.lines.end()) return *known;
        log.lines.push_back({Id<LiftLine>(std::ssize(log.lines) + 1),
                             made,
                             {},
                             *library.find(lift.exercise),
                             *library.find(lift.variant),
                             library.grips.front(),
                             *library.find(lift.standard),
                             {}});
        return log.lines.back();
    }
    ExerciseRating& record(const Lift& lift, QDate day, int sets)
    {
        Exposure exposure{day, {}, {}};
        for (int i = 1; i <= sets; ++i)
            exposure.sets.push_back({Id<SetEntry>(++m_sets), i, madeEntry({.load = 40, .reps = 10, .off = 0}, i)});
        const auto place = std::ranges::lower_bound(log.sessionDates, day);
        if (place == log.sessionDates.end() || *place != day) log.sessionDates.insert(place, day);
        auto& exposures = line(lift).exposures;
        const auto at = std::ranges::upper_bound(exposures, day, {}, &Exposure::date);
        return exposures.insert(at, std::move(exposure))->rating;
    }
    [[nodiscard]] Result<BlockProposal> tryToPropose(const Progress& progress = {}) const
    {
        return proposeBlock(log, library, &gym, wishes, progress);
    }
    [[nodiscard]] BlockProposal propose() const
    {
        auto made = tryToPropose();
        if (!made) qFatal("%s", qPrintable(made.error().what));
        return *std::move(made);
    }
    // Sets a week of a variant in the solved week.
    [[nodiscard]] static int setsOf(const BlockProposal& proposal, const Lift& lift)
    {
        int sets = 0;
        for (const ProposedSlot& slot : proposal.week) sets += slot.lift.variant == lift.variant ? slot.sets : 0;
        return sets;
    }

    AthleteLog log{{Id<Athlete>(1), {}, {}}, {}, {}, {}, {}, {}};

private:
    static Gym fullGym()
    {
        const Load load = madeEntry({.load = 20}).load;
        Gym made{QStringLiteral("Hall"),
                 {},
                 {},
                 {{load, 4}},
                 {{QStringLiteral("d"), load, load, load}},
                 {{QStringLiteral("s"), load, load, load}}};
        for (const Implement implement : {Implement::StraightBar, Implement::PlateMachine})
            made.bars.push_back({QStringLiteral("bar"), implement, load});
        return made;
    }
    Id<Muscle> muscle(const char* key, const char* name)
    {
        const Id<Muscle> id(std::ssize(library.muscles) + 1);
        library.muscles.push_back({id, {}, {QString::fromLatin1(key), QString::fromLatin1(name)}});
        return id;
    }
    Lift exercise(const char* name, std::vector<MuscleShare> shares, Implement implement, Loading loading,
                  BackLoading back = BackLoading::None)
    {
        const auto number = std::ssize(library.exercises) + 1;
        const Lift made{Id<Exercise>(number), Id<Variant>(number), Id<RepStandard>(number)};
        Variant variant{made.exercise, QStringLiteral("usual"), implement};
        variant.loading = loading;
        variant.backLoading = back;
        variant.isDefault = true;
        library.exercises.push_back({made.exercise, {}, {QString::fromLatin1(name), std::move(shares), false}});
        library.variants.push_back({made.variant, {}, variant});
        library.standards.push_back({made.standard, {}, {made.variant, {}, QStringLiteral("strict")}});
        if (library.grips.empty()) library.grips.push_back({Id<Grip>(1), {}, {QStringLiteral("as usual"), {}, {}, {}}});
        return made;
    }

    std::int64_t m_sets = 0;
};

}  // namespace steelyard::testing_support
