#include "ui/pages/lifter/trial_draft.h"

#include "core/planning/propose_trial.h"
#include "core/trials/arm_differences.h"
#include "core/trials/trial_outcomes.h"
#include "ui/format/format.h"
#include "ui/format/plan_words.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct TrialDraftText {
    Q_DECLARE_TR_FUNCTIONS(TrialDraftText)
};

constexpr int kUsualBlocks = 6;
constexpr RepBand kHeavierBand{5, 8};
constexpr RepBand kLighterBand{12, 15};
constexpr int kHeavyFrom = 8;  // bands that begin below it are held against a lighter one
constexpr int kSlowSeconds = 4;
constexpr int kUsualSeconds = 2;

bool isLiftOf(const Slot& slot, const LiftLine& lift)
{
    return slot.variant == lift.variant && slot.grip == lift.grip && slot.standard == lift.standard;
}

// In the plan from today on, else the last one there was.
const Slot* plannedSlot(const AthleteLog& log, const LiftLine& lift, QDate today)
{
    const Slot* found = nullptr;
    for (const Row<Block>& row : log.blocks)
        for (const PlannedWeek& week : row.value.weeks)
            for (const PlannedDay& day : week.days)
                for (const Slot& slot : day.slotList) {
                    if (week.kind != WeekKind::Normal || !isLiftOf(slot, lift)) continue;
                    if (day.date >= today) return &slot;
                    found = &slot;
                }
    return found;
}

std::optional<Id<RepStandard>> standardFor(const Library& library, Id<Variant> variant, const LifterTrials& record,
                                           const QString& name)
{
    const RepStandard* found = nullptr;
    std::optional<Id<RepStandard>> id;
    const auto worth = [&](const RepStandard& standard) {
        return (standard.name == name ? 2 : 0) + (standard.isDefault ? 1 : 0);
    };
    for (const Row<RepStandard>& row : library.standards) {
        if (row.value.variant != variant || (row.value.athlete && *row.value.athlete != record.log.athlete.id))
            continue;
        if (found && worth(*found) >= worth(row.value)) continue;
        found = &row.value;
        id = row.id;
    }
    return id;
}

std::vector<TrialArm> otherGrips(const Library& library, const TrialArm& base)
{
    std::vector<TrialArm> arms;
    for (const Row<Grip>& row : library.grips) {
        if (row.id == base.grip || row.value.name == asUsualName()) continue;  // nobody knows what that was
        arms.push_back(base);
        arms.back().grip = row.id;
    }
    return arms;
}

std::vector<TrialArm> otherVariants(const LifterTrials& record, const TrialArm& base)
{
    const Library& library = record.library;
    const auto* variant = library.find(base.variant);
    const auto* standard = library.find(base.standard);
    std::vector<TrialArm> arms;
    if (!variant) return arms;
    for (const Row<Variant>& row : library.variants) {
        if (row.id == base.variant || row.value.hidden || row.value.exercise != variant->value.exercise) continue;
        const auto own = standardFor(library, row.id, record, standard ? standard->value.name : QString());
        if (!own) continue;
        arms.push_back(base);
        arms.back().variant = row.id;
        arms.back().standard = *own;
    }
    return arms;
}

qint64 lastTrained(const AthleteLog& log, const TrialArm& arm)
{
    const LineRecord* line = lineOf(arm, log);
    return line && !line->exposures.empty() ? line->exposures.back().date.toJulianDay() : 0;
}

TrialArm secondTyped(TrialArm arm, TrialFactor factor)
{
    if (factor == TrialFactor::RepBand)
        arm.band = arm.band.low < kHeavyFrom ? kLighterBand : kHeavierBand;
    else
        arm.loweringSeconds = Decimal(kSlowSeconds);
    return arm;
}

}  // namespace

bool isTyped(TrialFactor factor)
{
    return factor == TrialFactor::RepBand || factor == TrialFactor::Lowering;
}

std::vector<TrialArm> armsToChoose(const LifterTrials& record, const TrialArm& base, TrialFactor factor)
{
    if (isTyped(factor)) return {};
    auto others = factor == TrialFactor::Grip ? otherGrips(record.library, base) : otherVariants(record, base);
    const auto isFair = [&](const TrialArm& arm) {
        const auto differences = armDifferences(base, arm, record.library);
        return std::ranges::all_of(differences, [&](ArmDifference one) { return one == differenceOf(factor); });
    };
    // One that differs in more needs a reason, so it is offered only where nothing else is.
    if (std::ranges::any_of(others, isFair)) std::erase_if(others, [&](const TrialArm& arm) { return !isFair(arm); });
    std::ranges::stable_sort(others, std::ranges::greater(),
                             [&](const TrialArm& arm) { return lastTrained(record.log, arm); });
    others.insert(others.begin(), base);
    return others;
}

QString armChoiceName(const TrialArm& arm, TrialFactor factor, const Library& library)
{
    if (factor == TrialFactor::Grip) {
        const auto* grip = library.find(arm.grip);
        return grip ? grip->value.name : QString();
    }
    const auto* variant = library.find(arm.variant);
    return variant ? variant->value.name : QString();
}

Trial draftTrial(const LifterTrials& record, const LiftLine& lift, TrialFactor factor, QDate today, std::uint64_t seed)
{
    Trial trial{.athlete = record.log.athlete.id};
    trial.designedOn = today;
    trial.factor = factor;
    trial.blocks = kUsualBlocks;
    trial.seed = seed;
    trial.outcomes = defaultOutcomes();
    TrialArm arm{.variant = lift.variant, .grip = lift.grip, .standard = lift.standard};
    arm.runIn = 1;
    const auto* variant = record.library.find(lift.variant);
    if (variant) arm.band = variant->value.band;
    if (const Slot* slot = plannedSlot(record.log, lift, today)) {
        arm.band = slot->band;
        trial.sets = slot->sets;
        trial.plannedRir = slot->plannedRir;
    }
    if (factor == TrialFactor::Lowering) arm.loweringSeconds = Decimal(kUsualSeconds);
    const auto choices = armsToChoose(record, arm, factor);
    trial.arms = {arm, isTyped(factor) ? secondTyped(arm, factor) : choices.size() > 1 ? choices[1] : arm};
    trial.question = draftQuestion(trial, record.library);
    return trial;
}

QString pinnedWords(const Trial& trial, const Library& library)
{
    const TrialArm& first = trial.arms.front();
    const auto alike = [&](auto part) {
        return std::ranges::all_of(
            trial.arms, [&](const TrialArm& arm) { return std::invoke(part, arm) == std::invoke(part, first); });
    };
    QStringList parts;
    const auto* variant = library.find(first.variant);
    if (variant && alike(&TrialArm::variant)) parts += library.fullName(variant->value);
    if (const auto* grip = library.find(first.grip); grip && alike(&TrialArm::grip)) parts += grip->value.name;
    if (const auto* standard = library.find(first.standard); standard && alike(&TrialArm::standard))
        parts += standard->value.name;
    if (alike(&TrialArm::band)) parts += TrialDraftText::tr("%1 repetitions").arg(format::band(first.band));
    parts += TrialDraftText::tr("%n set(s)", nullptr, trial.sets);
    if (trial.plannedRir) parts += TrialDraftText::tr("%1 in reserve").arg(format::decimal(*trial.plannedRir));
    return parts.join(QStringLiteral(" · "));
}

QString draftQuestion(const Trial& trial, const Library& library)
{
    const auto names = armNames(trial, library);
    const QString ways = QStringList(names.begin(), names.end()).join(TrialDraftText::tr(" or "));
    const auto* variant = library.find(trial.arms.front().variant);
    const auto* exercise = variant ? library.find(variant->value.exercise) : nullptr;
    return exercise ? TrialDraftText::tr("%1: %2?").arg(exercise->value.name, ways)
                    : TrialDraftText::tr("%1?").arg(ways);
}

std::vector<int> draftWeekdays(const LifterTrials& record, const Trial& trial, QDate today)
{
    auto days = trialWeekdays(record.log, record.library, trial, today);
    const LineRecord* line = lineOf(trial.arms.front(), record.log);
    if (!days.empty() || !line) return days;
    constexpr std::size_t kSessionsAsked = 6;
    const auto& sessions = line->exposures;
    for (std::size_t i = sessions.size() - std::min(kSessionsAsked, sessions.size()); i < sessions.size(); ++i)
        days.push_back(sessions[i].date.dayOfWeek());
    std::ranges::sort(days);
    const auto [first, last] = std::ranges::unique(days);
    days.erase(first, last);
    return days;
}

TrialFactor factorOfRule(QStringView rule)
{
    return rule == u"rep_band_misfit" ? TrialFactor::RepBand : TrialFactor::Grip;
}

}  // namespace steelyard
