#include "core/book/verify.h"

#include "core/analysis/parameter_names.h"
#include "core/domain/decision.h"
#include "core/domain/measurement.h"
#include "core/storage/book_schema.h"
#include "core/storage/logbook_repository.h"
#include "core/storage/migrations.h"
#include "core/storage/reading_parameter_repository.h"
#include "core/storage/repetition_repository.h"
#include "core/storage/statement.h"
#include "core/storage/trial_repository.h"

#include <QtCore/QCoreApplication>

#include <map>

namespace steelyard {
namespace {

struct VerifyText {
    Q_DECLARE_TR_FUNCTIONS(VerifyText)
};

constexpr qsizetype kMostFindings = 200;

void note(VerifyReport& report, const QString& finding)
{
    if (report.findings.size() < kMostFindings) report.findings.append(finding);
}

// Every row of a query becomes one finding, made from its first two columns.
template <class Tell>
Result<void> findRows(Database& db, VerifyReport& report, std::string_view sql, Tell tell)
{
    STEELYARD_TRY(auto st, db.prepare(sql));
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return {};
        note(report, tell(st));
    }
}

Result<void> checkFile(Database& db, VerifyReport& report)
{
    STEELYARD_CHECK(findRows(db, report,
                             "SELECT integrity_check FROM pragma_integrity_check WHERE integrity_check <> 'ok'",
                             [](const Statement& st) { return VerifyText::tr("File: %1").arg(st.text(0)); }));
    return findRows(db, report, "SELECT \"table\", rowid FROM pragma_foreign_key_check", [](const Statement& st) {
        return VerifyText::tr("Table %1, row %2: points at something that is not there.").arg(st.text(0), st.text(1));
    });
}

// Opening refuses what is not as it should be; a book that is open already may have come to it since.
Result<void> checkOwnSchema(Database& db, VerifyReport& report)
{
    STEELYARD_TRY(const Schema found, readSchema(db));
    STEELYARD_TRY(const int version, schemaVersion(db));
    STEELYARD_TRY(const Schema expected, schemaOfVersion(version));
    for (const QString& difference : compareSchemas(found, expected)) note(report, difference);
    return {};
}

// SQLite takes 31 February for a date until it has to reckon with it: hence the '+0 days' of the queries.
Result<void> checkLinks(Database& db, VerifyReport& report)
{
    STEELYARD_CHECK(
        findRows(db, report,
                 "SELECT e.id FROM set_entry e JOIN session s ON s.id = e.session_id "
                 "JOIN lift_line l ON l.id = e.line_id WHERE l.athlete_id <> s.athlete_id",
                 [](const Statement& st) {
                     return VerifyText::tr("Set %1: its lift line belongs to another athlete.").arg(st.text(0));
                 }));
    STEELYARD_CHECK(findRows(
        db, report,
        "SELECT l.id FROM lift_line l JOIN rep_standard r ON r.id = l.standard_id "
        "WHERE r.variant_id <> l.variant_id OR (r.athlete_id IS NOT NULL AND r.athlete_id <> l.athlete_id)",
        [](const Statement& st) {
            return VerifyText::tr("Lift line %1: its rep standard is of another variant or athlete.").arg(st.text(0));
        }));
    return findRows(
        db, report, "SELECT id, date FROM session WHERE date(date, '+0 days') IS NOT date",
        [](const Statement& st) { return VerifyText::tr("Session %1: “%2” is no date.").arg(st.text(0), st.text(1)); });
}

Result<void> checkSets(Database& db, VerifyReport& report, const Progress& progress)
{
    STEELYARD_TRY(auto st, db.prepare("SELECT e.id, e.load, e.rir, e.rpe, e.marks, e.lowering_s, e.kind, e.lean_deg, "
                                      + std::string(kSetColumns) + " FROM set_entry e"));
    std::int64_t done = 0;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return {};
        if (++done % 20'000 == 0) {
            progress.report(static_cast<double>(done) / static_cast<double>(std::max<qint64>(report.sets, 1)));
            if (progress.cancelled()) return fail(ErrorCode::Cancelled, VerifyText::tr("Stopped."));
        }
        const bool numbers = Decimal::parse(st.bytes(1)) && (st.isNull(2) || Decimal::parse(st.bytes(2)))
                             && (st.isNull(3) || Decimal::parse(st.bytes(3)))
                             && (st.isNull(5) || Decimal::parse(st.bytes(5)))
                             && (st.isNull(7) || Decimal::parse(st.bytes(7)));
        if (!numbers) note(report, VerifyText::tr("Set %1: a number in it can't be read.").arg(st.text(0)));
        if ((!st.isNull(4) && !MarkCounts::parse(st.bytes(4))) || !fromKey<SetKind>(st.bytes(6)))
            note(report, VerifyText::tr("Set %1: its marks or its kind can't be read.").arg(st.text(0)));
        for (const Problem& problem : validate(readSet(st, 8)))
            note(report, VerifyText::tr("Set %1, %2: %3").arg(st.text(0), problem.field, problem.text));
    }
}

Result<void> checkReadingParameters(Database& db, VerifyReport& report)
{
    STEELYARD_TRY(auto st, db.prepare("SELECT version, fitted_on, body FROM reading_parameters"));
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return {};
        const auto numbers = numbersFromJson(st.text(2));
        if (!st.date(1).isValid())
            note(report, VerifyText::tr("Learned numbers, version %1: “%2” is no date.").arg(st.text(0), st.text(1)));
        if (!numbers || !parametersFrom(*numbers, st.integer(0)))
            note(report, VerifyText::tr("Learned numbers, version %1: they can't be read.").arg(st.text(0)));
    }
}

// Health entries of somebody who has not agreed to them, or no longer does.
Result<void> checkConsents(Database& db, VerifyReport& report)
{
    return findRows(
        db, report,
        "SELECT a.name, count(*) FROM athlete a JOIN session s ON s.athlete_id = a.id "
        "JOIN exercise_rating r ON r.session_id = s.id "
        "WHERE coalesce(r.elbow, r.shoulder, r.wrist, r.lower_back, r.hip, r.knee, r.neck, r.ankle) IS NOT NULL "
        "AND NOT EXISTS (SELECT 1 FROM health_consent c WHERE c.athlete_id = a.id AND c.withdrawn_on IS NULL "
        "AND c.scope LIKE '%discomfort%') GROUP BY a.id ORDER BY a.id",
        [](const Statement& st) {
            return VerifyText::tr("%1: %2 ratings have discomfort without a consent.").arg(st.text(0), st.text(1));
        });
}

Result<void> checkMeasurements(Database& db, VerifyReport& report)
{
    STEELYARD_TRY(auto st, db.prepare("SELECT id, date, place, value, unit FROM measurement"));
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return {};
        const auto place = st.maybeChoice<BodyPlace>(2);
        const auto value = Decimal::parse(st.bytes(3));
        if (!place || !value) {
            note(report, VerifyText::tr("Measurement %1: its place or its value can't be read.").arg(st.text(0)));
            continue;
        }
        const QDate date = st.date(1);
        for (const Problem& problem : validate(Measurement{date, *place, *value, st.choice(4, TapeUnit::cm)}, date))
            note(report, VerifyText::tr("Measurement %1, %2: %3").arg(st.text(0), problem.field, problem.text));
    }
}

// What reading a trial would quietly replace: choices and numbers that can't be read, and dates that are none.
Result<void> checkTrialTexts(Database& db, VerifyReport& report)
{
    STEELYARD_TRY(auto trials, db.prepare("SELECT t.id, t.factor, t.end_kind, t.planned_rir FROM trial t"));
    while (true) {
        STEELYARD_TRY(const bool more, trials.step());
        if (!more) break;
        if (!fromKey<TrialFactor>(trials.bytes(1)) || (!trials.isNull(2) && !fromKey<TrialEnd>(trials.bytes(2)))
            || (!trials.isNull(3) && !Decimal::parse(trials.bytes(3))))
            note(report, VerifyText::tr("Trial %1: a choice or a number in it can't be read.").arg(trials.text(0)));
    }
    STEELYARD_TRY(auto arms, db.prepare("SELECT trial_id, lowering_s FROM trial_arm WHERE lowering_s IS NOT NULL"));
    while (true) {
        STEELYARD_TRY(const bool more, arms.step());
        if (!more) break;
        if (!Decimal::parse(arms.bytes(1)))
            note(report, VerifyText::tr("Trial %1: a choice or a number in it can't be read.").arg(arms.text(0)));
    }
    return findRows(
        db, report,
        "SELECT trial_id, date FROM trial_day WHERE date(date, '+0 days') IS NOT date UNION ALL "
        "SELECT trial_id, date FROM trial_look WHERE date(date, '+0 days') IS NOT date UNION ALL "
        "SELECT id, designed_on FROM trial WHERE date(designed_on, '+0 days') IS NOT designed_on UNION ALL "
        "SELECT id, ended_on FROM trial WHERE ended_on IS NOT NULL AND date(ended_on, '+0 days') IS NOT ended_on",
        [](const Statement& st) { return VerifyText::tr("Trial %1: “%2” is no date.").arg(st.text(0), st.text(1)); });
}

Result<void> checkTrials(Database& db, VerifyReport& report)
{
    STEELYARD_CHECK(checkTrialTexts(db, report));
    STEELYARD_CHECK(findRows(
        db, report,
        "SELECT a.trial_id FROM trial_arm a JOIN trial t ON t.id = a.trial_id JOIN rep_standard r ON r.id = "
        "a.standard_id WHERE r.variant_id <> a.variant_id OR (r.athlete_id IS NOT NULL AND r.athlete_id <> "
        "t.athlete_id)",
        [](const Statement& st) {
            return VerifyText::tr("Trial %1: a rep standard of it is of another variant or athlete.").arg(st.text(0));
        }));
    std::vector<Id<Athlete>> owners;
    STEELYARD_TRY(auto named, db.prepare("SELECT DISTINCT athlete_id FROM trial ORDER BY athlete_id"));
    while (true) {
        STEELYARD_TRY(const bool more, named.step());
        if (!more) break;
        owners.push_back(named.id<Athlete>(0));
    }
    for (const Id<Athlete> owner : owners) {
        STEELYARD_TRY(const auto trials, TrialRepository(db).of(owner));
        for (const Row<Trial>& row : trials)
            for (const Problem& problem : validate(row.value))
                note(report, VerifyText::tr("Trial %1, %2: %3")
                                 .arg(QString::number(row.id.value()), problem.field, problem.text));
    }
    return {};
}

void noteRepetitions(VerifyReport& report, const SetRepetitions& of)
{
    for (const Problem& problem : validate(of.repetitions))
        note(report, VerifyText::tr("Set %1, repetitions, %2: %3")
                         .arg(QString::number(of.set.value()), problem.field, problem.text));
}

Result<void> checkRepetitions(Database& db, VerifyReport& report)
{
    STEELYARD_TRY(auto st, db.prepare("SELECT p.id, p.set_id, " + std::string(kRepetitionColumns)
                                      + " FROM repetition p ORDER BY p.set_id, p.number"));
    std::optional<SetRepetitions> current;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) break;
        const auto set = st.id<SetEntry>(1);
        if (!current || current->set != set) {
            if (current) noteRepetitions(report, *current);
            current = SetRepetitions{set, {}};
        }
        bool readable = st.isNull(9) || RepetitionMarks::parse(st.bytes(9));
        for (const int column : {4, 5, 6, 7, 8}) readable = readable && (st.isNull(column) || st.maybeDecimal(column));
        if (!readable)
            note(report, VerifyText::tr("Repetition %1: a number or a mark in it can't be read.").arg(st.text(0)));
        current->repetitions.push_back(readRepetition(st, 2));
    }
    if (current) noteRepetitions(report, *current);
    return {};
}

}  // namespace

Result<void> checkPages(Database& db)
{
    STEELYARD_TRY(auto check, db.prepare("PRAGMA quick_check(1)"));
    STEELYARD_TRY(const bool row, check.step());
    if (row && check.bytes(0) == "ok") return {};
    return fail(
        ErrorCode::Storage,
        VerifyText::tr("The book's file is damaged in places. It was closed, so that nothing more is written into "
                       "it; what was saved before is not lost by that."),
        row ? check.text(0) : QString());
}

Result<VerifyReport> verifyBook(Database& db, const Progress& progress)
{
    VerifyReport report;
    STEELYARD_TRY(report.athletes, db.integer("SELECT count(*) FROM athlete"));
    STEELYARD_TRY(report.sessions, db.integer("SELECT count(*) FROM session"));
    STEELYARD_TRY(report.sets, db.integer("SELECT count(*) FROM set_entry"));
    STEELYARD_CHECK(checkFile(db, report));
    STEELYARD_CHECK(checkOwnSchema(db, report));
    STEELYARD_CHECK(checkLinks(db, report));
    STEELYARD_CHECK(checkConsents(db, report));
    STEELYARD_CHECK(checkMeasurements(db, report));
    STEELYARD_CHECK(checkRepetitions(db, report));
    STEELYARD_CHECK(checkTrials(db, report));
    STEELYARD_CHECK(checkReadingParameters(db, report));
    STEELYARD_CHECK(checkSets(db, report, progress));
    return report;
}

}  // namespace steelyard
