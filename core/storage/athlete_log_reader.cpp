#include "core/storage/athlete_log_reader.h"

#include "core/base/text.h"
#include "core/storage/athlete_repository.h"
#include "core/storage/block_repository.h"
#include "core/storage/decision_repository.h"
#include "core/storage/logbook_repository.h"
#include "core/storage/statement.h"
#include "core/storage/trial_repository.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <unordered_map>

namespace steelyard {
namespace {

struct AthleteLogText {
    Q_DECLARE_TR_FUNCTIONS(AthleteLogText)
};

constexpr std::size_t kUsualSets = 4;  // of one exercise in a session

using LinePlaces = std::unordered_map<std::int64_t, std::size_t>;

Result<void> readLines(Database& db, const Library& library, AthleteLog& log)
{
    STEELYARD_TRY(const auto rows, LogbookRepository(db).lines(log.athlete.id));
    for (const Row<LiftLine>& row : rows) {
        const auto* variant = library.find(row.value.variant);
        const auto* grip = library.find(row.value.grip);
        const auto* standard = library.find(row.value.standard);
        const auto* exercise = variant ? library.find(variant->value.exercise) : nullptr;
        if (!exercise || !grip || !standard)
            return fail(ErrorCode::Storage,
                        AthleteLogText::tr("A lift line points at something that is not in the library."));
        const QString key = slug(exercise->value.name) + u'/' + slug(variant->value.name) + u'/'
                            + slug(grip->value.name) + u'/' + slug(standard->value.name);
        log.lines.push_back({row.id, row.value, key, *exercise, *variant, *grip, *standard, {}});
    }
    std::ranges::sort(log.lines, [](const LineRecord& a, const LineRecord& b) {
        return std::tie(a.key, a.id) < std::tie(b.key, b.id);
    });
    for (std::size_t i = 1, same = 1; i < log.lines.size(); ++i) {
        // Different names may give the same slugs; the later one is numbered.
        const bool repeats = log.lines[i].key == log.lines[i - same].key;
        same = repeats ? same + 1 : 1;
        if (repeats) log.lines[i].key += QStringLiteral("~%1").arg(same);
    }
    return {};
}

// Sets stand in the order of their numbers, whatever the order of the rows that they came from.
void addInOrder(std::vector<LoggedSet>& sets, LoggedSet set)
{
    auto place = sets.end();
    while (place != sets.begin() && std::prev(place)->set.number > set.set.number) --place;
    sets.insert(place, std::move(set));
}

Result<void> readSets(Database& db, AthleteLog& log, const LinePlaces& places, const QString& until)
{
    STEELYARD_TRY(auto st, db.prepare("SELECT s.date, e.line_id, e.id, e.position, " + std::string(kSetColumns)
                                      + " FROM session s JOIN set_entry e ON e.session_id = s.id "
                                        "WHERE s.athlete_id = ?1 AND s.date <= ?2 ORDER BY s.date"));
    st.bindAll(log.athlete.id, until);
    std::string lastDate;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return {};
        if (const std::string_view date = st.bytes(0); date != lastDate) {
            lastDate = date;
            log.sessionDates.push_back(st.date(0));
        }
        const auto place = places.find(st.int64(1));
        if (place == places.end()) continue;  // a line of somebody else: verify() reports it
        auto& exposures = log.lines[place->second].exposures;
        if (exposures.empty() || exposures.back().date != log.sessionDates.back()) {
            exposures.push_back({log.sessionDates.back(), {}, {}});
            exposures.back().sets.reserve(kUsualSets);
        }
        addInOrder(exposures.back().sets, {st.id<SetEntry>(2), st.integer(3), readSet(st, 4)});
    }
}

Result<void> readRatings(Database& db, AthleteLog& log, const LinePlaces& places, const QString& until)
{
    STEELYARD_TRY(auto st, db.prepare("SELECT s.date, r.line_id, " + std::string(kRatingColumns)
                                      + " FROM session s JOIN exercise_rating r ON r.session_id = s.id "
                                        "WHERE s.athlete_id = ?1 AND s.date <= ?2"));
    st.bindAll(log.athlete.id, until);
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return {};
        const auto place = places.find(st.int64(1));
        if (place == places.end()) continue;
        auto& exposures = log.lines[place->second].exposures;
        const auto exposure = std::ranges::lower_bound(exposures, st.date(0), {}, &Exposure::date);
        if (exposure != exposures.end() && exposure->date == st.date(0)) exposure->rating = readRating(st, 2);
    }
}

// A trial as it stood on a day: what was planned ahead stays, what became of later days is not known yet.
void leaveOutLater(std::vector<Row<Trial>>& trials, QDate until)
{
    std::erase_if(trials, [&](const Row<Trial>& row) { return row.value.designedOn > until; });
    for (Row<Trial>& row : trials) {
        std::erase_if(row.value.looks, [&](const TrialLook& look) { return look.date > until; });
        if (row.value.ending && row.value.ending->date > until) row.value.ending.reset();
        for (TrialDay& day : row.value.days)
            if (day.date > until) day = {day.date, day.block, day.arm};
    }
}

Result<AthleteLog> readInSnapshot(Database& db, const Library& library, Id<Athlete> athlete, std::optional<QDate> until)
{
    STEELYARD_TRY(auto row, AthleteRepository(db).find(athlete));
    AthleteLog log{std::move(row), {}, {}, {}, {}, {}, library.muscles};
    STEELYARD_TRY(log.bodyMass, AthleteRepository(db).bodyMass(athlete));
    STEELYARD_TRY(log.blocks, BlockRepository(db).of(athlete));
    STEELYARD_TRY(log.decisions, DecisionRepository(db).of(athlete));
    STEELYARD_TRY(log.trials, TrialRepository(db).of(athlete));
    STEELYARD_CHECK(readLines(db, library, log));
    LinePlaces places;
    for (std::size_t i = 0; i < log.lines.size(); ++i) places[log.lines[i].id.value()] = i;
    const QString last = until ? until->toString(Qt::ISODate) : QStringLiteral("9999-12-31");
    STEELYARD_CHECK(readSets(db, log, places, last));
    STEELYARD_CHECK(readRatings(db, log, places, last));
    if (until) {
        std::erase_if(log.bodyMass, [&](const BodyMassEntry& entry) { return entry.date > *until; });
        std::erase_if(log.decisions, [&](const Row<Decision>& decision) { return decision.value.madeOn > *until; });
        leaveOutLater(log.trials, *until);
    }
    return log;
}

}  // namespace

Result<AthleteLog> readAthleteLog(Database& db, const Library& library, Id<Athlete> athlete, std::optional<QDate> until)
{
    STEELYARD_CHECK(db.execute("SAVEPOINT whole_record"));
    auto log = readInSnapshot(db, library, athlete, until);
    STEELYARD_CHECK(db.execute("RELEASE whole_record"));
    return log;
}

}  // namespace steelyard
