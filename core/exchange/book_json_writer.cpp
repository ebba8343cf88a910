#include "core/exchange/athlete_json.h"
#include "core/exchange/block_json.h"

#include "core/exchange/reading_fit_json.h"
#include "core/storage/athlete_repository.h"
#include "core/storage/block_repository.h"
#include "core/storage/erased_athlete_repository.h"
#include "core/storage/gym_repository.h"
#include "core/storage/library_repository.h"
#include "core/storage/logbook_repository.h"
#include "core/storage/reading_parameter_repository.h"
#include "core/storage/rule_setting_repository.h"
#include "core/storage/trial_repository.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QJsonArray>

#include <algorithm>
#include <set>

namespace steelyard {
namespace {

struct BookJsonWriterText {
    Q_DECLARE_TR_FUNCTIONS(BookJsonWriterText)
};

// What of the library one athlete's record needs.
struct UsedParts {
    std::set<Id<Muscle>> muscles;
    std::set<Id<Exercise>> exercises;
    std::set<Id<Variant>> variants;
    std::set<Id<Grip>> grips;
    std::set<Id<RepStandard>> standards;

    template <class Lift>
    void add(const Lift& lift)
    {
        variants.insert(lift.variant);
        grips.insert(lift.grip);
        standards.insert(lift.standard);
    }
};

Result<UsedParts> partsUsedBy(Database& db, const Row<Athlete>& athlete, const Library& library)
{
    UsedParts used;
    STEELYARD_TRY(const auto lines, LogbookRepository(db).lines(athlete.id));
    for (const Row<LiftLine>& line : lines) used.add(line.value);
    STEELYARD_TRY(const auto blocks, BlockRepository(db).of(athlete.id));
    for (const Row<Block>& block : blocks)
        for (const MuscleAim& aim : block.value.aims) used.muscles.insert(aim.muscle);
    for (const Row<Block>& block : blocks)
        for (const PlannedWeek& week : block.value.weeks)
            for (const PlannedDay& day : week.days)
                for (const Slot& slot : day.slotList) used.add(slot);
    STEELYARD_TRY(const auto trials, TrialRepository(db).of(athlete.id));
    for (const Row<Trial>& trial : trials)
        for (const TrialArm& arm : trial.value.arms) used.add(arm);
    for (const auto& row : library.standards)
        if (row.value.athlete == athlete.id) used.standards.insert(row.id);
    for (const Id<RepStandard> id : used.standards)
        if (const auto* standard = library.find(id)) used.variants.insert(standard->value.variant);
    for (const Id<Variant> id : used.variants) {
        const auto* variant = library.find(id);
        if (!variant) continue;
        used.exercises.insert(variant->value.exercise);
        if (variant->value.usualGrip) used.grips.insert(*variant->value.usualGrip);
    }
    for (const Id<Exercise> id : used.exercises)
        if (const auto* exercise = library.find(id))
            for (const MuscleShare& share : exercise->value.shares) used.muscles.insert(share.muscle);
    for (const MuscleAim& aim : athlete.value.aims) used.muscles.insert(aim.muscle);
    return used;
}

template <class Entity>
void keepUsed(std::vector<Row<Entity>>& rows, const std::set<Id<Entity>>& used)
{
    std::erase_if(rows, [&](const Row<Entity>& row) { return !used.contains(row.id); });
}

// Nobody else's standards may leave with this athlete's record, and without them the record would not hold together.
Result<Library> libraryOf(Database& db, const Row<Athlete>& athlete, const Library& whole)
{
    STEELYARD_TRY(const UsedParts used, partsUsedBy(db, athlete, whole));
    Library library = whole;
    keepUsed(library.muscles, used.muscles);
    keepUsed(library.exercises, used.exercises);
    keepUsed(library.variants, used.variants);
    keepUsed(library.grips, used.grips);
    keepUsed(library.standards, used.standards);
    for (const auto& row : library.standards)
        if (row.value.athlete && *row.value.athlete != athlete.id)
            return fail(
                ErrorCode::Storage,
                BookJsonWriterText::tr("“%1” has lifts by a rep standard that was agreed with somebody else. Give "
                                       "them a standard of their own first; nothing was written.")
                    .arg(athlete.value.name));
    return library;
}

QJsonObject settingsJson(const RuleSettings& settings)
{
    QJsonObject json;
    for (const auto& [place, value] : settings) {
        QJsonObject rule = json[place.first].toObject();
        rule[place.second] = value;
        json[place.first] = rule;
    }
    return json;
}

QJsonArray erasedJson(const std::vector<ErasedAthlete>& erased)
{
    QJsonArray list;
    for (const ErasedAthlete& one : erased)
        list.append(QJsonObject{{QStringLiteral("mark"), uuidText(one.mark)},
                                {QStringLiteral("erased_at"), one.at.toString(Qt::ISODate)}});
    return list;
}

Result<QJsonArray> templatesJson(Database& db, const Library& library)
{
    STEELYARD_TRY(const auto templates, BlockRepository(db).templates());
    QJsonArray list;
    for (const Row<BlockTemplate>& row : templates) list.append(toJson(row, library));
    return list;
}

Result<QJsonArray> gymsJson(Database& db, const Row<Athlete>* only)
{
    STEELYARD_TRY(const auto gyms, GymRepository(db).all());
    QJsonArray list;
    for (const Row<Gym>& gym : gyms)
        if (!only || only->value.gym == gym.id) list.append(toJson(gym));
    return list;
}

}  // namespace

Result<QJsonObject> bookToJson(Database& db, std::optional<Id<Athlete>> only)
{
    STEELYARD_TRY(auto athletes, AthleteRepository(db).all());
    if (only) {
        std::erase_if(athletes, [&](const Row<Athlete>& row) { return row.id != *only; });
        if (athletes.empty()) return fail(AthleteRepository(db).find(*only).error());
    }
    STEELYARD_TRY(Library library, LibraryRepository(db).read());
    if (only) {
        STEELYARD_TRY(library, libraryOf(db, athletes.front(), library));
    }
    QJsonObject json{{QStringLiteral("format"), kBookJsonFormat}, {QStringLiteral("library"), libraryToJson(library)}};
    STEELYARD_TRY(json[QStringLiteral("gyms")], gymsJson(db, only ? &athletes.front() : nullptr));
    if (!only) {
        STEELYARD_TRY(const RuleSettings settings, RuleSettingRepository(db).all());
        json[QStringLiteral("rule_settings")] = settingsJson(settings);
        STEELYARD_TRY(const QJsonArray templates, templatesJson(db, library));
        if (!templates.isEmpty()) json[QStringLiteral("block_templates")] = templates;
        STEELYARD_TRY(const auto fits, ReadingParameterRepository(db).all());
        if (!fits.empty()) json[QStringLiteral("reading_parameters")] = readingFitsJson(fits);
        STEELYARD_TRY(const auto erased, ErasedAthleteRepository(db).all());
        if (!erased.empty()) json[QStringLiteral("erased_athletes")] = erasedJson(erased);
    }
    QJsonArray list;
    for (const Row<Athlete>& athlete : athletes) {
        STEELYARD_TRY(const QJsonObject one, athleteToJson(db, athlete, library));
        list.append(one);
    }
    json[QStringLiteral("athletes")] = list;
    return json;
}

}  // namespace steelyard
