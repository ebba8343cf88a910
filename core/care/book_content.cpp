#include "core/care/book_content.h"

#include "core/storage/statement.h"

namespace steelyard {
namespace {

constexpr std::string_view kLostAthletes =
    "SELECT count(*) FROM main.athlete a WHERE NOT EXISTS (SELECT 1 FROM other.athlete o WHERE o.uuid = a.uuid)";
constexpr std::string_view kLostSessions =
    "SELECT count(*) FROM main.session s JOIN main.athlete a ON a.id = s.athlete_id WHERE NOT EXISTS "
    "(SELECT 1 FROM other.athlete oa JOIN other.session os ON os.athlete_id = oa.id AND os.date = s.date "
    "WHERE oa.uuid = a.uuid)";
// The other's set in the same place, if there is one.
#define STEELYARD_BOTH_SETS                                                                                            \
    "FROM main.set_entry e JOIN main.session s ON s.id = e.session_id JOIN main.athlete a ON a.id = s.athlete_id "     \
    "JOIN main.lift_line l ON l.id = e.line_id LEFT JOIN other.athlete oa ON oa.uuid = a.uuid "                        \
    "LEFT JOIN other.session os ON os.athlete_id = oa.id AND os.date = s.date "                                        \
    "LEFT JOIN other.lift_line ol ON ol.uuid = l.uuid "                                                                \
    "LEFT JOIN other.set_entry oe ON oe.session_id = os.id AND oe.line_id = ol.id AND oe.number = e.number "
constexpr std::string_view kLostSets = "SELECT count(*) " STEELYARD_BOTH_SETS "WHERE oe.id IS NULL";
constexpr std::string_view kChangedSets =
    "SELECT count(*) " STEELYARD_BOTH_SETS
    "WHERE oe.id IS NOT NULL AND (oe.load, oe.unit, oe.reps, oe.off, oe.failed, oe.rir, oe.rpe, oe.marks, "
    "oe.lowering_s, oe.lean_deg, oe.kind, oe.note) IS NOT (e.load, e.unit, e.reps, e.off, e.failed, e.rir, e.rpe, "
    "e.marks, e.lowering_s, e.lean_deg, e.kind, e.note)";
#undef STEELYARD_BOTH_SETS

}  // namespace

Result<BookContent> contentOf(Database& book)
{
    BookContent content;
    STEELYARD_TRY(content.athletes, book.integer("SELECT count(*) FROM athlete"));
    STEELYARD_TRY(content.sessions, book.integer("SELECT count(*) FROM session"));
    STEELYARD_TRY(content.sets, book.integer("SELECT count(*) FROM set_entry"));
    STEELYARD_TRY(auto last, book.prepare("SELECT max(date) FROM session"));
    STEELYARD_TRY(const bool row, last.step());
    if (row && !last.isNull(0)) content.lastSession = QDate::fromString(last.text(0), Qt::ISODate);
    return content;
}

Result<BookLoss> lossAgainst(const QString& book, const QString& other)
{
    STEELYARD_TRY(const auto reader, Database::openReader(book));
    {
        STEELYARD_TRY(auto attach, reader->prepare("ATTACH DATABASE ?1 AS other"));
        attach.bind(1, other);
        STEELYARD_CHECK(attach.run());
    }
    BookLoss loss;
    STEELYARD_TRY(loss.athletes, reader->integer(kLostAthletes));
    STEELYARD_TRY(loss.sessions, reader->integer(kLostSessions));
    STEELYARD_TRY(loss.sets, reader->integer(kLostSets));
    STEELYARD_TRY(loss.setsChanged, reader->integer(kChangedSets));
    return loss;
}

}  // namespace steelyard
