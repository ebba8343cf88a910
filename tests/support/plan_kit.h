// A small library and blocks made of it, for tests of planning.
//
//   PlanKit kit;                                   // chest, triceps, back, biceps; press, row, curl, extension, pull
//   Block block = kit.block(QDate(2027, 3, 1), 2, {1, 3, 5});          // two weeks; Monday, Wednesday, Friday, without lifts
//   block.weeks[0].days[0].slotList = {kit.slot(PlanKit::Press, 3)};
#pragma once

#include "core/analysis/athlete_log.h"

#include <array>

namespace steelyard::testing_support {

class PlanKit {
public:
    enum Lift : std::int64_t { Press = 1, Row, Curl, Extension, Pull };
    static constexpr Id<Muscle> chest{1};
    static constexpr Id<Muscle> triceps{2};
    static constexpr Id<Muscle> back{3};
    static constexpr Id<Muscle> biceps{4};

    PlanKit()
    {
        for (const auto& [id, name] :
             {std::pair(chest, "Chest"), {triceps, "Triceps"}, {back, "Back"}, {biceps, "Biceps"}})
            library.muscles.push_back({id, {}, {QString::fromLatin1(name).toLower(), QString::fromLatin1(name)}});
        add(Press, "Press", {{chest, 1}, {triceps, 0.5}}, BackLoading::None);
        add(Row, "Row", {{back, 1}, {biceps, 0.5}}, BackLoading::Some);
        add(Curl, "Curl", {{biceps, 1}}, BackLoading::None);
        add(Extension, "Extension", {{triceps, 1}}, BackLoading::None);
        add(Pull, "Pull", {{back, 1}}, BackLoading::High);
        log.athlete.value.name = QStringLiteral("Made Up");
        log.muscles = library.muscles;
    }

    [[nodiscard]] static Slot slot(Lift lift, int sets)
    {
        Slot made{.variant = Id<Variant>(lift), .grip = Id<Grip>(lift), .standard = Id<RepStandard>(lift)};
        made.sets = sets;
        return made;
    }
    [[nodiscard]] static LiftLine line(Lift lift)
    {
        return {Id<Athlete>(1), Id<Variant>(lift), Id<Grip>(lift), Id<RepStandard>(lift)};
    }
    [[nodiscard]] static Block block(QDate start, std::size_t weeks, const std::vector<int>& daysIn)
    {
        Block made{.athlete = Id<Athlete>(1)};
        made.name = QStringLiteral("Spring");
        made.start = start;
        made.weeks.resize(weeks);
        for (std::size_t week = 0; week < weeks; ++week)
            for (const int day : daysIn)
                made.weeks[week].days.push_back({start.addDays(7 * static_cast<qint64>(week) + day - 1), {}, {}});
        return made;
    }
    [[nodiscard]] Variant& variant(Lift lift) { return library.variants[static_cast<std::size_t>(lift) - 1].value; }

    Library library;
    AthleteLog log{{Id<Athlete>(1), {}, {}}, {}, {}, {}, {}, {}};

private:
    void add(Lift lift, const char* name, std::vector<MuscleShare> shares, BackLoading loading)
    {
        const QString words = QString::fromLatin1(name);
        library.exercises.push_back({Id<Exercise>(lift), {}, {words, std::move(shares), false}});
        Variant variant{.exercise = Id<Exercise>(lift), .name = QStringLiteral("usual")};
        variant.backLoading = loading;
        library.variants.push_back({Id<Variant>(lift), {}, variant});
        library.grips.push_back({Id<Grip>(lift), {}, {words + QStringLiteral(" grip"), {}, {}, {}}});
        library.standards.push_back({Id<RepStandard>(lift), {}, {Id<Variant>(lift), {}, QStringLiteral("strict")}});
    }
};

}  // namespace steelyard::testing_support
