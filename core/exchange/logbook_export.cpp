#include "core/exchange/logbook_export.h"

#include "core/exchange/logbook_columns.h"
#include "core/storage/logbook_repository.h"

#include <QtCore/QCoreApplication>

#include <map>

namespace steelyard {
namespace {

struct LogbookExportText {
    Q_DECLARE_TR_FUNCTIONS(LogbookExportText)
};

constexpr std::int64_t kRowsBetweenLooks = 2000;  // at the stop token

struct LineNames {
    QString exercise;
    QString variant;
    QString grip;
    QString standard;
};

// By session and line.
using RatingMap = std::map<std::pair<std::int64_t, std::int64_t>, ExerciseRating>;
using LineNameMap = std::map<std::int64_t, LineNames>;

Result<LineNameMap> readLineNames(Database& db, Id<Athlete> athlete)
{
    STEELYARD_TRY(auto st, db.prepare("SELECT l.id, x.name, v.name, g.name, r.name FROM lift_line l "
                                      "JOIN variant v ON v.id = l.variant_id JOIN exercise x ON x.id = v.exercise_id "
                                      "JOIN grip g ON g.id = l.grip_id JOIN rep_standard r ON r.id = l.standard_id "
                                      "WHERE l.athlete_id = ?1"));
    st.bind(1, athlete);
    LineNameMap names;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return names;
        names[st.int64(0)] = {st.text(1), st.text(2), st.text(3), st.text(4)};
    }
}

Result<RatingMap> readRatingMap(Database& db, Id<Athlete> athlete)
{
    STEELYARD_TRY(auto st, db.prepare("SELECT r.session_id, r.line_id, " + std::string(kRatingColumns)
                                      + " FROM exercise_rating r JOIN session s ON s.id = r.session_id "
                                        "WHERE s.athlete_id = ?1"));
    st.bind(1, athlete);
    RatingMap ratings;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return ratings;
        ratings[{st.int64(0), st.int64(1)}] = readRating(st, 2);
    }
}

void writeOptional(CsvWriter& csv, std::optional<int> value)
{
    if (value)
        csv.number(*value);
    else
        csv.blank();
}

// In the order of kLogbookColumns; the same for an exercise that was not rated, as blanks.
void writeRating(CsvWriter& csv, const ExerciseRating& rating)
{
    writeOptional(csv, rating.tension);
    writeOptional(csv, rating.burn);
    writeOptional(csv, rating.pump);
    csv.text(rating.gaveOut);
    for (const auto& joint : rating.discomfort) writeOptional(csv, joint);
    writeOptional(csv, rating.nextSoreness);
    writeOptional(csv, rating.nextWeakness);
}

// From `load` to `lean_deg`; the statement's columns are kSetColumns from `first`. Text that stands in the book goes out byte
// for byte.
void writeSet(CsvWriter& csv, const Statement& st, int first)
{
    csv.plain(st.bytes(first + 1));  // load
    csv.plain(st.bytes(first + 2));  // unit
    csv.plain(st.bytes(first));      // set
    for (const int column : {3, 4, 5, 6, 7, 8, 9, 10, 12}) {
        // Absent in the book is blank in the file; not failed is blank too, which means 0.
        const bool notFailed = column == 5 && !st.flag(first + column);
        if (st.isNull(first + column) || notFailed)
            csv.blank();
        else
            csv.plain(st.bytes(first + column));
    }
}

}  // namespace

Result<void> LogbookExport::writeHeader()
{
    for (const LogbookColumn& column : kLogbookColumns) m_csv.plain(column.name);
    return m_csv.endRow();
}

Result<void> LogbookExport::write(const Row<Athlete>& athlete, const Progress& progress)
{
    STEELYARD_TRY(const LineNameMap lines, readLineNames(m_database, athlete.id));
    STEELYARD_TRY(RatingMap ratings, readRatingMap(m_database, athlete.id));
    STEELYARD_TRY(auto st, m_database.prepare("SELECT s.id, e.line_id, s.date, " + std::string(kSetColumns)
                                              + " FROM session s JOIN set_entry e ON e.session_id = s.id "
                                                "WHERE s.athlete_id = ?1 ORDER BY s.date, e.position, e.id"));
    st.bind(1, athlete.id);
    constexpr int kFirstOfSet = 3;
    constexpr int kNote = kFirstOfSet + 11;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return {};
        if (m_sets % kRowsBetweenLooks == 0 && progress.cancelled())
            return fail(ErrorCode::Cancelled, LogbookExportText::tr("The export was stopped."));
        const auto names = lines.find(st.int64(1));
        if (names == lines.end())
            return fail(
                ErrorCode::Storage,
                LogbookExportText::tr("A set of “%1” on %2 belongs to somebody else's lift line. Nothing was written; "
                                      "verify the book.")
                    .arg(athlete.value.name, st.text(2)));
        m_csv.plain(st.bytes(2));
        for (const QString& name : {athlete.value.name, names->second.exercise, names->second.variant,
                                    names->second.grip, names->second.standard})
            m_csv.text(name);
        writeSet(m_csv, st, kFirstOfSet);
        const auto rating = ratings.extract({st.int64(0), st.int64(1)});  // written once
        writeRating(m_csv, rating.empty() ? ExerciseRating{} : rating.mapped());
        m_csv.text(st.isNull(kNote) ? QString() : st.text(kNote));
        STEELYARD_CHECK(m_csv.endRow());
        ++m_sets;
    }
}

}  // namespace steelyard
