#include "core/book/set_outlook.h"

#include "core/analysis/regime_engine.h"
#include "core/base/nearest_names.h"
#include "core/base/text.h"
#include "core/book/reading_numbers.h"
#include "core/flags/reading_thresholds.h"
#include "core/planning/loadable.h"
#include "core/storage/athlete_log_reader.h"
#include "core/storage/athlete_repository.h"
#include "core/storage/gym_repository.h"
#include "core/storage/library_repository.h"
#include "core/storage/rule_setting_repository.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

struct SetOutlookText {
    Q_DECLARE_TR_FUNCTIONS(SetOutlookText)
};

constexpr qsizetype kMostNamed = 8;

// "“a”; “b”; and 3 more"
QString namedNearestFirst(const QStringList& names, const QString& typed)
{
    QStringList shown;
    for (const QString& name : nearestFirst(names, typed).first(std::min(kMostNamed, names.size())))
        shown << QStringLiteral("“%1”").arg(name);
    if (names.size() > kMostNamed)
        shown << SetOutlookText::tr("and %n more", nullptr, static_cast<int>(names.size() - kMostNamed));
    return shown.join(QStringLiteral("; "));
}

Result<Row<Athlete>> athleteNamed(Database& database, const QString& typed)
{
    const AthleteRepository athletes(database);
    const QString name = cleanName(typed);
    auto found = athletes.findByName(name);
    if (found || found.error().code != ErrorCode::NotFound) return found;
    STEELYARD_TRY(const auto everybody, athletes.all());
    if (everybody.empty())
        return fail(ErrorCode::NotFound,
                    SetOutlookText::tr("There is nobody in this book yet. Bring in a logbook first."));
    QStringList names;
    for (const Row<Athlete>& row : everybody) names << row.value.name;
    return fail(ErrorCode::NotFound,
                SetOutlookText::tr("There is no athlete named “%1” in this book. Nearest first, there is: %2.")
                    .arg(name, namedNearestFirst(names, name)));
}

Result<const LineRecord*> lineNamed(const AthleteLog& log, const QString& typed, QDate asOf)
{
    const QString key = cleanName(typed);
    const auto found = std::ranges::find(log.lines, key, &LineRecord::key);
    if (found != log.lines.end()) return &*found;
    const QString& name = log.athlete.value.name;
    if (log.lines.empty())
        return fail(ErrorCode::NotFound, SetOutlookText::tr("%1 has no lift line up to %2. Log a session first.")
                                             .arg(name, asOf.toString(Qt::ISODate)));
    QStringList keys;
    for (const LineRecord& record : log.lines) keys << record.key;
    return fail(ErrorCode::NotFound, SetOutlookText::tr("%1 has no lift line “%2”. Nearest first, there is: %3.")
                                         .arg(name, key, namedNearestFirst(keys, key)));
}

Result<void> checkRecent(const LineRecord& record, QDate asOf)
{
    if (record.exposures.empty() || record.exposures.back().date.daysTo(asOf) <= kMostDaysSince) return {};
    return fail(
        ErrorCode::Invalid,
        SetOutlookText::tr("The last session of “%1” was on %2, more than %3 days before %4. Log a newer one first.")
            .arg(record.key, record.exposures.back().date.toString(Qt::ISODate), QString::number(kMostDaysSince),
                 asOf.toString(Qt::ISODate)));
}

QString fullLineName(const LineRecord& record)
{
    QString name = record.exercise.value.name;
    for (const QString& part : {record.variant.value.name, record.grip.value.name, record.standard.value.name})
        if (!part.isEmpty() && part != asUsualName()) name += QStringLiteral(", ") + part;
    return name;
}

QStringList cautionsOf(const LineGates& gates, bool bodyKnown)
{
    QStringList words;
    if (gates.tooFew) words << QStringLiteral("too_few");
    if (gates.mixed) words << QStringLiteral("mixed_record");
    if (gates.effortUnknown) words << QStringLiteral("effort_unknown");
    if (!bodyKnown) words << QStringLiteral("body_mass_assumed");
    return words;
}

// The loads of a gym around a wanted one.
std::vector<double> loadsAround(double kg, const Variant& variant, const Gym& gym, MassUnit unit,
                                std::vector<Load>& written)
{
    const Mass wanted = Mass::fromSteps(std::llround(kg * static_cast<double>(kStepsPerKilogram)));
    const LoadChoice choice = LoadFinder(&gym, unit).nearest(wanted, variant);
    written = {choice.load};
    for (const auto& neighbour : {choice.below, choice.above})
        if (neighbour) written.push_back(*neighbour);
    std::vector<double> loads;
    loads.reserve(written.size());
    for (const Load& load : written) loads.push_back(load.kilograms());
    return loads;
}

Result<SetTarget> targetAtLoad(const SetTargets& targets, const SetContext& context, const Load& load)
{
    if (auto target = targets.at(load.kilograms())) return *std::move(target);
    if (context.loading == Loading::Assisted)
        return fail(ErrorCode::Invalid,
                    SetOutlookText::tr("With %1 of help nothing is left to move. Ask for less help than body mass.")
                        .arg(load.toString()));
    return fail(
        ErrorCode::Invalid,
        SetOutlookText::tr("With %1 nothing is moved on this line. Ask for a load above zero.").arg(load.toString()));
}

Result<void> chooseTarget(SetOutlook& outlook, const SetTargets& targets, const SetContext& context,
                          const OutlookRequest& request, const Variant& variant, const Gym* gym)
{
    if (request.load) {
        STEELYARD_TRY(outlook.target, targetAtLoad(targets, context, *request.load));
    } else {
        outlook.loadForRepsKg = targets.loadFor(*request.reps);
        std::optional<SetTarget> target;
        if (gym) {
            std::vector<Load> written;
            const auto loads = loadsAround(*outlook.loadForRepsKg, variant, *gym, outlook.unit, written);
            target = targets.nearest(loads, *request.reps);
            if (target)
                outlook.loadable =
                    *std::ranges::find(written, target->loadKg, [](const Load& load) { return load.kilograms(); });
        }
        if (!target) target = targets.at(*outlook.loadForRepsKg);
        if (target) outlook.target = *std::move(target);
    }
    if (outlook.target.repsMedian <= kMostPlannedReps) return {};
    return fail(
        ErrorCode::Invalid,
        SetOutlookText::tr("At %1 kg more than %2 repetitions are to be expected: too far from what was lifted on "
                           "this line to say anything. Ask for a heavier set.")
            .arg(QString::number(outlook.target.loadKg, 'f', 1), QString::number(kMostPlannedReps, 'f', 0)));
}

Result<void> checkRequest(const OutlookRequest& request)
{
    if (!(request.rir >= 0 && request.rir <= kMostReserveAsked))
        return fail(
            ErrorCode::Invalid,
            SetOutlookText::tr("A reserve is from 0 to %1 repetitions.").arg(QString::number(kMostReserveAsked)));
    if (request.reps && (*request.reps < 1 || *request.reps > kMostWantedReps))
        return fail(ErrorCode::Invalid,
                    SetOutlookText::tr("A load is looked for from 1 to %1 repetitions.").arg(kMostWantedReps));
    if (request.load.has_value() == request.reps.has_value())
        return fail(ErrorCode::Invalid,
                    SetOutlookText::tr("Ask either about a load or about a number of repetitions."));
    if (request.setNumber >= 1 && request.setNumber <= kMostSetNumber) return {};
    return fail(ErrorCode::Invalid, SetOutlookText::tr("A set's place is from 1 to %1.").arg(kMostSetNumber));
}

Result<std::optional<Gym>> gymOf(Database& database, const Athlete& athlete)
{
    if (!athlete.gym) return std::nullopt;
    STEELYARD_TRY(auto row, GymRepository(database).find(*athlete.gym));
    return std::move(row.value);
}

}  // namespace

Result<SetOutlook> readSetOutlook(Database& database, const OutlookRequest& request)
{
    STEELYARD_CHECK(checkRequest(request));
    STEELYARD_TRY(const auto athlete, athleteNamed(database, request.athlete));
    STEELYARD_TRY(const auto library, LibraryRepository(database).read());
    STEELYARD_TRY(const auto settings, RuleSettingRepository(database).all());
    STEELYARD_TRY(const auto gym, gymOf(database, athlete.value));
    STEELYARD_TRY(const auto log, readAthleteLog(database, library, athlete.id, request.asOf));
    STEELYARD_TRY(const LineRecord* record, lineNamed(log, request.line, request.asOf));
    STEELYARD_CHECK(checkRecent(*record, request.asOf));
    STEELYARD_TRY(const auto parameters, readReadingParameters(database, request.asOf));
    const RegimeEngine engine(parameters, readingThresholds(settings));
    const LineTracker tracker = engine.track(*record, log, request.asOf);
    if (!tracker.started())
        return fail(
            ErrorCode::Invalid,
            SetOutlookText::tr("No set of “%1” up to %2 says anything about strength. Log working sets with a load "
                               "above zero first.")
                .arg(record->key, request.asOf.toString(Qt::ISODate)));
    // A day that has its session already is over: the next one, then.
    const QDate day = std::max(request.asOf, record->exposures.back().date.addDays(1));
    const SetContext context = tracker.contextAt(*record, log, day);
    const auto counted = countExposures(*record, log.bodyMass, request.asOf);
    SetOutlook outlook{
        log.athlete.value.name, log.athlete.value.unit, record->key, fullLineName(*record), {}, {}, {}, {}};
    outlook.cautions = cautionsOf(gatesAt(counted, log.blocks, request.asOf, engine.thresholds()),
                                  bodyPartKg(context.loading, log.bodyMass, day).has_value());
    STEELYARD_CHECK(chooseTarget(outlook, SetTargets(tracker, context, {day, request.rir, request.setNumber}), context,
                                 request, record->variant.value, gym ? &*gym : nullptr));
    return outlook;
}

}  // namespace steelyard
