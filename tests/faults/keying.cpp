#include "tests/faults/keying.h"

#include "core/book/verify.h"
#include "core/edits/edits.h"
#include "core/storage/logbook_repository.h"
#include "core/storage/statement.h"

namespace steelyard::test {

Result<LiftLine> onlyLine(Book& book)
{
    Database& db = book.database();
    STEELYARD_TRY(const auto athlete, db.integer("SELECT min(id) FROM athlete"));
    STEELYARD_TRY(const auto variant, db.integer("SELECT min(id) FROM variant"));
    STEELYARD_TRY(const auto grip, db.integer("SELECT min(id) FROM grip"));
    STEELYARD_TRY(const auto standard, db.integer("SELECT min(id) FROM rep_standard"));
    return LiftLine{Id<Athlete>(athlete), Id<Variant>(variant), Id<Grip>(grip), Id<RepStandard>(standard)};
}

SetEntry typedSet(int n)
{
    SetEntry set;
    set.number = (n - 1) % 20 + 1;
    set.load = Load::make(Decimal::parse(QString::number(20 + n % 80)).value(), MassUnit::kg).value();
    set.reps = 1 + n % 15;
    set.note = QStringLiteral("set %1").arg(n);
    return set;
}

QDate typedDay(int n)
{
    return QDate(2000, 1, 1).addDays((n - 1) / 20);
}

Result<bool> typeSet(Book& book, const LiftLine& line, int n)
{
    return book.history().perform(addSet(line, typedDay(n), typedSet(n)));
}

Result<int> countSets(Book& book)
{
    STEELYARD_TRY(const auto sets, book.database().integer("SELECT count(*) FROM set_entry"));
    return static_cast<int>(sets);
}

std::string differenceFromTyped(Book& book, int n)
{
    const auto report = verifyBook(book.database(), {});
    if (!report) return report.error().what.toStdString();
    if (!report->findings.isEmpty()) return report->findings.join(u'\n').toStdString();
    auto st = book.database().prepare("SELECT s.date, " + std::string(kSetColumns)
                                      + " FROM set_entry e JOIN session s ON s.id = e.session_id ORDER BY e.id");
    if (!st) return st.error().detail.toStdString();
    for (int i = 1;; ++i) {
        const auto more = st->step();
        if (!more) return more.error().detail.toStdString();
        if (!*more) return i == n + 1 ? std::string() : std::to_string(i - 1) + " sets instead of " + std::to_string(n);
        if (st->date(0) != typedDay(i) || readSet(*st, 1) != typedSet(i))
            return "set " + std::to_string(i) + " is not what was typed";
    }
}

QByteArray batchCsv(int n)
{
    QByteArray csv = "date,athlete,exercise,set,load,reps\n";
    for (int row = 1; row <= kRowsAnImport; ++row)
        csv += "2023-05-01,Lifter " + QByteArray::number(n) + ",Arm curl," + QByteArray::number(row) + ",30,8\n";
    return csv;
}

}  // namespace steelyard::test
