#include "app/console/commands/trial_arm_words.h"

#include "core/base/nearest_names.h"
#include "core/base/text.h"
#include "core/planning/usual_lift.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QStringList>

#include <algorithm>

namespace steelyard {
namespace {

struct TrialArmText {
    Q_DECLARE_TR_FUNCTIONS(TrialArmText)
};

constexpr qsizetype kMostNearest = 3;

template <class Entity>
QString nearestOf(const std::vector<const Row<Entity>*>& rows, const QString& typed)
{
    QStringList names;
    for (const Row<Entity>* row : rows) names += row->value.name;
    return nearestFirst(names, typed).mid(0, kMostNearest).join(QStringLiteral("; "));
}

// The row whose name is meant; `what` says what is looked for.
template <class Entity>
Result<const Row<Entity>*> called(const std::vector<const Row<Entity>*>& rows, const QString& typed,
                                  const QString& what)
{
    const QString wanted = slug(typed);
    const auto found =
        std::ranges::find_if(rows, [&](const Row<Entity>* row) { return slug(row->value.name) == wanted; });
    if (found != rows.end()) return *found;
    return fail(
        ErrorCode::Invalid,
        TrialArmText::tr("No %1 is called “%2”. The nearest: %3.").arg(what, typed.trimmed(), nearestOf(rows, typed)));
}

template <class Entity, class Suits>
std::vector<const Row<Entity>*> rowsThat(const std::vector<Row<Entity>>& rows, const Suits& suits)
{
    std::vector<const Row<Entity>*> some;
    for (const Row<Entity>& row : rows)
        if (suits(row.value)) some.push_back(&row);
    return some;
}

Result<const Row<Variant>*> variantOf(const QStringList& names, const Library& library)
{
    STEELYARD_TRY(const auto* exercise, called(rowsThat(library.exercises, [](const Exercise&) { return true; }),
                                               names.value(0), TrialArmText::tr("exercise")));
    const auto variants =
        rowsThat(library.variants, [&](const Variant& variant) { return variant.exercise == exercise->id; });
    if (!names.value(1).trimmed().isEmpty()) return called(variants, names.value(1), TrialArmText::tr("variant"));
    const auto usual = std::ranges::find_if(variants, [](const auto* row) { return row->value.isDefault; });
    if (usual != variants.end()) return *usual;
    if (!variants.empty()) return variants.front();
    return fail(ErrorCode::Invalid, TrialArmText::tr("“%1” has no variant yet.").arg(exercise->value.name));
}

Result<LiftLine> liftOf(const QString& words, const AthleteLog& log, const Library& library)
{
    const auto line = std::ranges::find(log.lines, words.trimmed(), &LineRecord::key);
    if (line != log.lines.end()) return line->line;
    const QStringList names = words.split(u'/');
    STEELYARD_TRY(const auto* variant, variantOf(names, library));
    auto lift = usualLift(library, *variant, log.athlete.id);
    if (!lift)
        return fail(ErrorCode::Invalid,
                    TrialArmText::tr("“%1” has no rep standard yet.").arg(library.fullName(variant->value)));
    if (!names.value(2).trimmed().isEmpty()) {
        STEELYARD_TRY(const auto* grip, called(rowsThat(library.grips, [](const Grip&) { return true; }),
                                               names.value(2), TrialArmText::tr("grip")));
        lift->grip = grip->id;
    }
    if (!names.value(3).trimmed().isEmpty()) {
        const auto standards = rowsThat(library.standards, [&](const RepStandard& standard) {
            return standard.variant == variant->id && standard.athlete.value_or(log.athlete.id) == log.athlete.id;
        });
        STEELYARD_TRY(const auto* standard, called(standards, names.value(3), TrialArmText::tr("rep standard")));
        lift->standard = standard->id;
    }
    return *lift;
}

Result<void> readSetting(const QString& words, TrialArm& arm)
{
    const QString name = words.section(u'=', 0, 0).trimmed();
    const QString value = words.section(u'=', 1).trimmed();
    bool lowFine = false;
    bool highFine = false;
    if (name == QStringLiteral("band")) {
        arm.band = {value.section(u'-', 0, 0).toInt(&lowFine), value.section(u'-', 1).toInt(&highFine)};
        if (lowFine && highFine) return {};
    } else if (name == QStringLiteral("lowering")) {
        arm.loweringSeconds = Decimal::parse(QStringView(value));
        if (arm.loweringSeconds) return {};
    }
    return fail(
        ErrorCode::Unsupported,
        TrialArmText::tr("After an arm's names stand band=8-12 or lowering=3; “%1” is neither.").arg(words.trimmed()));
}

}  // namespace

Result<TrialArm> readArm(QStringView words, const AthleteLog& log, const Library& library)
{
    const QStringList parts = words.toString().split(u';');
    STEELYARD_TRY(const LiftLine lift, liftOf(parts.front(), log, library));
    TrialArm arm{.variant = lift.variant, .grip = lift.grip, .standard = lift.standard};
    if (const auto* variant = library.find(lift.variant)) arm.band = variant->value.band;
    for (const QString& setting : parts.mid(1)) STEELYARD_CHECK(readSetting(setting, arm));
    return arm;
}

}  // namespace steelyard
