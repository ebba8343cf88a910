#include "core/planning/lifter_outlook.h"

#include "core/planning/comparable.h"
#include "core/planning/lift_traits.h"

#include <algorithm>

namespace steelyard {
namespace {

double doubtOf(LoadBasis kind)
{
    switch (kind) {
    case LoadBasis::OtherGrip:
        return kOtherGripDoubt;
    case LoadBasis::SameExercise:
        return kOtherVariantDoubt;
    case LoadBasis::SameMuscle:
        return kOtherExerciseDoubt;
    case LoadBasis::OwnRecord:
    case LoadBasis::Nothing:
        break;
    }
    return 0;
}

}  // namespace

LifterOutlook::LifterOutlook(const AthleteLog& log, const Library& library, const LifterTracker& tracker, QDate today)
    : m_log(log), m_library(library), m_tracker(tracker), m_today(today)
{}

const LineBasis& LifterOutlook::of(const Slot& slot)
{
    const LiftLine lift{m_log.athlete.id, slot.variant, slot.grip, slot.standard};
    const auto known = std::ranges::find(m_known, lift, &Known::lift);
    if (known != m_known.end()) return known->basis;
    m_known.push_back({lift, basisOf(slot)});
    return m_known.back().basis;
}

LineBasis LifterOutlook::basisOf(const Slot& slot) const
{
    const LineRecord* own = lineOf(m_log, slot);
    if (!own) return relatedTo(slot);
    const bool done = m_tracker.line(own->id).started() || !comparableBefore(*own, m_today.addDays(1)).empty();
    return done ? basisOn(*own, LoadBasis::OwnRecord) : relatedTo(slot);
}

LineBasis LifterOutlook::basisOn(const LineRecord& record, LoadBasis kind) const
{
    const LineTracker& tracker = m_tracker.line(record.id);
    LineBasis basis{kind, &record};
    if (tracker.started())
        basis.outlook = std::make_shared<const LineOutlook>(tracker, tracker.contextAt(record, m_log, m_today), m_today,
                                                            doubtOf(kind));
    return basis;
}

LoadBasis LifterOutlook::relationTo(const LineRecord& other, const Slot& slot) const
{
    const auto* variant = m_library.find(slot.variant);
    const auto* exercise = variant ? m_library.find(variant->value.exercise) : nullptr;
    if (!exercise || other.exposures.empty()) return LoadBasis::Nothing;
    const bool late = other.exposures.back().date.daysTo(m_today) > kRelatedDays;
    const Variant& theirs = other.variant.value;
    if (late || theirs.loading != variant->value.loading || theirs.sides != variant->value.sides)
        return LoadBasis::Nothing;
    if (other.variant.id == slot.variant) return LoadBasis::OtherGrip;
    if (other.exercise.id == exercise->id) return LoadBasis::SameExercise;
    const auto target = targetMuscle(exercise->value);
    const bool alike =
        target && target == targetMuscle(other.exercise.value) && theirs.implement == variant->value.implement;
    return alike ? LoadBasis::SameMuscle : LoadBasis::Nothing;
}

LineBasis LifterOutlook::relatedTo(const Slot& slot) const
{
    const LineRecord* best = nullptr;
    LoadBasis closest = LoadBasis::Nothing;
    for (const LineRecord& other : m_log.lines) {
        const LoadBasis relation = m_tracker.line(other.id).started() ? relationTo(other, slot) : LoadBasis::Nothing;
        if (relation == LoadBasis::Nothing || relation > closest) continue;
        if (relation == closest && best && best->exposures.back().date >= other.exposures.back().date) continue;
        best = &other;
        closest = relation;
    }
    return best ? basisOn(*best, closest) : LineBasis{};
}

}  // namespace steelyard
