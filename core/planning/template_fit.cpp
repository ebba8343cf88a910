#include "core/planning/template_fit.h"

#include "core/analysis/discomfort_zones.h"
#include "core/domain/joint_words.h"
#include "core/planning/block_ops.h"
#include "core/planning/block_templates.h"
#include "core/planning/gym_offers.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <set>
#include <tuple>

namespace steelyard {
namespace {

struct TemplateFitText {
    Q_DECLARE_TR_FUNCTIONS(TemplateFitText)
};

constexpr double kTarget = 0.999;

class TemplateFitter {
public:
    TemplateFitter(const BlockTemplate& shape, const TemplateFitInput& input)
        : m_input(input), m_complaints(complaintsOf(input.log, input.today))
    {
        for (const PlannedWeek& week : shape.weeks)
            for (const PlannedDay& day : week.days)
                for (const Slot& slot : day.slotList) m_used.insert(slot.variant);
    }

    Block fit(Block block)
    {
        for (PlannedWeek& week : block.weeks)
            for (PlannedDay& day : week.days) {
                std::vector<Slot> kept;
                for (Slot& slot : day.slotList)
                    if (const auto lift = liftFor(slot)) {
                        std::tie(slot.variant, slot.grip, slot.standard) =
                            std::tie(lift->variant, lift->grip, lift->standard);
                        kept.push_back(std::move(slot));
                    }
                day.slotList = std::move(kept);
                endLoneSupersets(day);
            }
        return block;
    }

    std::vector<FitDifference> differences;

private:
    // Decided once for all weeks.
    struct Decided {
        LiftLine from;
        std::optional<LiftLine> to;
    };

    std::optional<LiftLine> liftFor(const Slot& slot)
    {
        const LiftLine from{m_input.log.athlete.id, slot.variant, slot.grip, slot.standard};
        const auto known = std::ranges::find(m_decided, from, &Decided::from);
        if (known != m_decided.end()) return known->to;
        m_decided.push_back({from, decide(from)});
        return m_decided.back().to;
    }

    std::optional<LiftLine> decide(const LiftLine& from)
    {
        const Row<Variant>* variant = m_input.library.find(from.variant);
        if (!variant) {
            tell(FitKind::LeftOut, from, {}, TemplateFitText::tr("Left out: the library no longer has it."));
            return std::nullopt;
        }
        const JointComplaint* complaint = complaintAbout(variant->value.exercise);
        const bool hurts = complaint && discomfortZone(complaint->rating) == DiscomfortZone::High;
        const bool hidden = variant->value.hidden || isHidden(variant->value.exercise);
        if (const bool offered = gymOffers(m_input.gym, variant->value); hurts || hidden || !offered)
            return replace(from, *variant,
                           hurts    ? complaintWords(*complaint)
                           : hidden ? TemplateFitText::tr("it is hidden in the library")
                                    : TemplateFitText::tr("the gym has nothing to do it with"));
        if (complaint)
            tell(FitKind::Reminder, from, {},
                 TemplateFitText::tr("%1: stays, though %2.").arg(nameOf(*variant), complaintWords(*complaint)));
        return withOwnStandard(from, *variant);
    }

    std::optional<LiftLine> withOwnStandard(const LiftLine& from, const Row<Variant>& variant)
    {
        const Row<RepStandard>* standard = m_input.library.find(from.standard);
        if (standard && (!standard->value.athlete || *standard->value.athlete == m_input.log.athlete.id)) return from;
        const auto to = liftWith(variant, from.grip);
        if (!to) {
            tell(FitKind::LeftOut, from, {},
                 TemplateFitText::tr("%1: left out, because it has no rep standard.").arg(nameOf(variant)));
            return std::nullopt;
        }
        tell(FitKind::OtherStandard, from, LiftLine{from.athlete, from.variant, from.grip, to->standard},
             TemplateFitText::tr("%1: by this lifter's rep standard; the template's was agreed with somebody else.")
                 .arg(nameOf(variant)));
        return LiftLine{from.athlete, from.variant, from.grip, to->standard};
    }

    std::optional<LiftLine> replace(const LiftLine& from, const Row<Variant>& variant, const QString& why)
    {
        const Row<Variant>* best = nullptr;
        for (const Row<Variant>& other : m_input.library.variants)
            if (canStandFor(other, variant) && (!best || likeness(other, variant) < likeness(*best, variant)))
                best = &other;
        const auto to = best ? liftWith(*best, std::nullopt) : std::nullopt;
        if (!to) {
            tell(FitKind::LeftOut, from, {},
                 TemplateFitText::tr("%1: left out, because %2, and nothing else trains the same muscle here.")
                     .arg(nameOf(variant), why));
            return std::nullopt;
        }
        m_used.insert(best->id);
        tell(FitKind::OtherLift, from, to,
             TemplateFitText::tr("%1 → %2: %3.").arg(nameOf(variant), nameOf(*best), why));
        return to;
    }

    [[nodiscard]] bool canStandFor(const Row<Variant>& other, const Row<Variant>& variant) const
    {
        if (other.id == variant.id || other.value.hidden || isHidden(other.value.exercise) || m_used.contains(other.id)
            || !gymOffers(m_input.gym, other.value) || targetsOf(other.value) != targetsOf(variant.value)
            || targetsOf(other.value).empty() || !liftWith(other, std::nullopt))
            return false;
        const JointComplaint* complaint = complaintAbout(other.value.exercise);
        return !complaint || discomfortZone(complaint->rating) != DiscomfortZone::High;
    }

    // The smaller, the more alike.
    [[nodiscard]] std::tuple<bool, bool, bool, double, QString> likeness(const Row<Variant>& other,
                                                                         const Row<Variant>& variant) const
    {
        return {lastDone(other.id) == nullptr, other.value.exercise != variant.value.exercise,
                other.value.implement != variant.value.implement, helpersApart(other.value, variant.value),
                m_input.library.fullName(other.value)};
    }

    [[nodiscard]] std::set<Id<Muscle>> targetsOf(const Variant& variant) const
    {
        std::set<Id<Muscle>> targets;
        if (const auto* exercise = m_input.library.find(variant.exercise))
            for (const MuscleShare& share : exercise->value.shares)
                if (share.share >= kTarget) targets.insert(share.muscle);
        return targets;
    }

    [[nodiscard]] double helpersApart(const Variant& a, const Variant& b) const
    {
        std::map<Id<Muscle>, double> apart;
        if (const auto* exercise = m_input.library.find(a.exercise))
            for (const MuscleShare& share : exercise->value.shares) apart[share.muscle] += share.share;
        if (const auto* exercise = m_input.library.find(b.exercise))
            for (const MuscleShare& share : exercise->value.shares) apart[share.muscle] -= share.share;
        double sum = 0;
        for (const auto& [muscle, difference] : apart) sum += std::abs(difference);
        return sum;
    }

    [[nodiscard]] const LineRecord* lastDone(Id<Variant> variant) const
    {
        const LineRecord* last = nullptr;
        for (const LineRecord& line : m_input.log.lines)
            if (line.line.variant == variant && !line.exposures.empty()
                && (!last || line.exposures.back().date > last->exposures.back().date))
                last = &line;
        return last;
    }

    // As the lifter last did it, else with its usual grip and standard.
    [[nodiscard]] std::optional<LiftLine> liftWith(const Row<Variant>& variant, std::optional<Id<Grip>> grip) const
    {
        if (const LineRecord* done = lastDone(variant.id)) return done->line;
        const Row<RepStandard>* standard = nullptr;
        for (const Row<RepStandard>& row : m_input.library.standards)
            if (row.value.variant == variant.id && !row.value.athlete
                && (!standard || (row.value.isDefault && !standard->value.isDefault)))
                standard = &row;
        if (!grip) grip = variant.value.usualGrip;
        if (!grip && !m_input.library.grips.empty()) grip = m_input.library.grips.front().id;
        if (!standard || !grip) return std::nullopt;
        return LiftLine{m_input.log.athlete.id, variant.id, *grip, standard->id};
    }

    [[nodiscard]] const JointComplaint* complaintAbout(Id<Exercise> exercise) const
    {
        const JointComplaint* worst = nullptr;
        for (const JointComplaint& one : m_complaints)
            if (one.exercise == exercise && (!worst || one.rating > worst->rating)) worst = &one;
        return worst;
    }

    [[nodiscard]] bool isHidden(Id<Exercise> exercise) const
    {
        const auto* row = m_input.library.find(exercise);
        return row && row->value.hidden;
    }

    [[nodiscard]] QString nameOf(const Row<Variant>& variant) const { return m_input.library.fullName(variant.value); }

    [[nodiscard]] QString complaintWords(const JointComplaint& complaint) const
    {
        return TemplateFitText::tr("%1 was rated %2 of 10 after it on %3")
            .arg(jointName(complaint.joint), QString::number(complaint.rating), m_input.wording.day(complaint.date));
    }

    // What is left of a superset alone is done by itself.
    static void endLoneSupersets(PlannedDay& day)
    {
        for (Slot& slot : day.slotList)
            if (slot.superset > 0 && std::ranges::count(day.slotList, slot.superset, &Slot::superset) < 2)
                slot.superset = 0;
    }

    void tell(FitKind kind, const LiftLine& before, std::optional<LiftLine> after, QString sentence)
    {
        differences.push_back({kind, before, after, std::move(sentence)});
    }

    const TemplateFitInput& m_input;
    std::vector<JointComplaint> m_complaints;
    std::set<Id<Variant>> m_used;
    std::vector<Decided> m_decided;
};

std::size_t mostSessionsAWeek(const Block& block)
{
    std::size_t most = 0;
    for (const PlannedWeek& week : block.weeks) most = std::max(most, week.days.size());
    return most;
}

}  // namespace

Result<TemplateFit> fitTemplate(const BlockTemplate& shape, const TemplateFitInput& input, const TemplateWishes& wishes)
{
    STEELYARD_TRY(const Block whole, blockOf(shape, input.log.athlete.id, wishes.name, wishes.start));
    TemplateFitter fitter(shape, input);
    Block block = fitter.fit(whole);
    std::vector<FitDifference> differences = std::move(fitter.differences);
    const std::size_t sessions = mostSessionsAWeek(block);
    if (!wishes.weekdays.empty() && wishes.weekdays.size() < sessions)
        differences.push_back(
            {FitKind::OtherDays,
             {},
             {},
             TemplateFitText::tr("This lifter trains on %1 days, the template on %2: the template's days were kept.")
                 .arg(wishes.weekdays.size())
                 .arg(sessions)});
    // In both, "it is so already" is no failure here.
    else if (auto moved = setWeekdays(block, wishes.weekdays, 0))
        block = *std::move(moved);
    if (auto clear = setDaysOff(block, wishes.daysOff, {})) block = *std::move(clear);
    auto broken = blockTotals({block, input.log, input.library, input.today, input.wording}).broken;
    return TemplateFit{std::move(block), std::move(differences), std::move(broken)};
}

}  // namespace steelyard
