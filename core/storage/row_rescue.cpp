#include "core/storage/row_rescue.h"

#include "core/storage/statement.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QStringList>

#include <sqlite3.h>

#include <algorithm>
#include <deque>
#include <limits>
#include <memory>
#include <vector>

namespace steelyard {
namespace {

struct RowRescueText {
    Q_DECLARE_TR_FUNCTIONS(RowRescueText)
};

using RowId = std::int64_t;
constexpr RowId kLowest = std::numeric_limits<RowId>::min();
constexpr RowId kHighest = std::numeric_limits<RowId>::max();
// No book has numbered so many rows; what lies between the rows read and the end of all numbers isn't searched.
constexpr RowId kPlausible = 4'000'000;
// A table of which so many looks found nothing has lost its beginning, and with it everything.
constexpr int kMostInVain = 4000;

struct Finalize {
    void operator()(sqlite3_stmt* statement) const { sqlite3_finalize(statement); }
};
using RawStatement = std::unique_ptr<sqlite3_stmt, Finalize>;

RawStatement prepareRaw(sqlite3* handle, const QString& sql)
{
    sqlite3_stmt* statement = nullptr;
    sqlite3_prepare_v2(handle, sql.toUtf8().constData(), -1, &statement, nullptr);
    return RawStatement(statement);
}

struct Range {
    RowId from;
    RowId to;
    [[nodiscard]] bool isEmpty() const { return from > to; }
};

class Rescue {
public:
    Rescue(sqlite3* damaged, const QString& table, Database& into, const Progress& progress)
        : m_damaged(damaged), m_into(into), m_progress(progress)
    {
        m_result.table = table;
    }
    Result<RescuedTable> run()
    {
        STEELYARD_TRY(const QStringList columns, columnsOfTarget());
        const QString names = columns.join(QStringLiteral(", "));
        const QString range = QStringLiteral(" FROM %1 NOT INDEXED WHERE rowid BETWEEN ?1 AND ?2 ORDER BY rowid")
                                  .arg(quoted(m_result.table));
        m_up = prepareRaw(m_damaged, QStringLiteral("SELECT rowid, ") + names + range);
        m_down = prepareRaw(m_damaged, QStringLiteral("SELECT rowid, ") + names + range + QStringLiteral(" DESC"));
        QStringList marks;
        for (qsizetype i = 1; i <= columns.size(); ++i) marks << u'?' + QString::number(i);
        m_insert = prepareRaw(
            m_into.handle(),
            QStringLiteral("INSERT INTO %1 (%2) VALUES (%3)").arg(quoted(m_result.table), names, marks.join(u',')));
        if (!m_insert) return fail(m_into.lastError(RowRescueText::tr("saving what can be saved")));
        m_columns = static_cast<int>(columns.size());
        if (!m_up || !m_down)
            m_result.wasThere = false;
        else
            STEELYARD_CHECK(readAll());
        return m_result;
    }

private:
    static QString quoted(const QString& name)
    {
        return u'"' + QString(name).replace(u'"', QStringLiteral("\"\"")) + u'"';
    }

    Result<QStringList> columnsOfTarget()
    {
        STEELYARD_TRY(auto st, m_into.prepare("SELECT name FROM pragma_table_info(?1)"));
        st.bind(1, m_result.table);
        QStringList columns;
        while (true) {
            STEELYARD_TRY(const bool more, st.step());
            if (!more) return columns;
            columns << quoted(st.text(0));
        }
    }

    Result<void> readAll()
    {
        std::deque<Range> ranges{{kLowest, kHighest}};
        std::vector<Range> lost;
        for (int probes = 0; !ranges.empty(); ++probes) {
            if (m_progress.cancelled()) return fail(ErrorCode::Cancelled, RowRescueText::tr("Stopped."));
            Range range = ranges.front();
            ranges.pop_front();
            STEELYARD_CHECK(read(m_up.get(), true, range));
            if (!range.isEmpty()) STEELYARD_CHECK(read(m_down.get(), false, range));
            if (range.isEmpty()) continue;
            if (probes == 0) {
                lay(range, ranges);
            } else if (range.from == range.to || probes >= kMostProbes
                       || (probes >= kMostInVain && m_highest == kLowest)) {
                lost.push_back(range);
            } else {
                const RowId middle = range.from + (range.to - range.from) / 2;
                ranges.push_back({range.from, middle});
                ranges.push_back({middle + 1, range.to});
            }
        }
        for (const Range& range : lost) {
            m_result.unreadable += std::max<RowId>(0, std::min(range.to, m_highest) - range.from + 1);
            m_result.endUnknown = m_result.endUnknown || range.to > m_highest;
        }
        return {};
    }

    // What is left between the rows that were read from both ends: in pieces that double, for most tables have few rows, and no book
    // has numbered more than kPlausible of them.
    static void lay(const Range& gap, std::deque<Range>& ranges)
    {
        RowId from = std::max<RowId>(gap.from, 0);
        const RowId to = std::min(gap.to, from + kPlausible);
        for (RowId size = 64; from <= to; size *= 2) {
            ranges.push_back({from, std::min(to, from + size - 1)});
            from += size;
        }
    }

    // Leaves in `range` what could not be read from that side; nothing when it came to its end.
    Result<void> read(sqlite3_stmt* rows, bool upwards, Range& range)
    {
        bind(rows, range);
        bool done = false;
        while (!done) {
            if (const int code = sqlite3_step(rows); code != SQLITE_ROW) {
                done = code == SQLITE_DONE;
                break;
            }
            const RowId id = sqlite3_column_int64(rows, 0);
            if (id < range.from || id > range.to) break;  // pages that lead astray
            STEELYARD_CHECK(take(rows));
            m_highest = std::max(m_highest, id);
            done = id == (upwards ? range.to : range.from);
            if (!done && upwards) range.from = id + 1;
            if (!done && !upwards) range.to = id - 1;
        }
        sqlite3_reset(rows);
        if (done) range = {0, -1};
        return {};
    }
    static void bind(sqlite3_stmt* statement, const Range& range)
    {
        sqlite3_bind_int64(statement, 1, range.from);
        sqlite3_bind_int64(statement, 2, range.to);
    }

    Result<void> take(sqlite3_stmt* row)
    {
        for (int i = 1; i <= m_columns; ++i) sqlite3_bind_value(m_insert.get(), i, sqlite3_column_value(row, i));
        const int code = sqlite3_step(m_insert.get());
        if (code == SQLITE_DONE)
            ++m_result.rows;
        else if ((code & 0xff) == SQLITE_CONSTRAINT || (code & 0xff) == SQLITE_TOOBIG
                 || (code & 0xff) == SQLITE_MISMATCH)
            ++m_result.refused;
        else
            return fail(m_into.lastError(RowRescueText::tr("saving what can be saved")));
        sqlite3_reset(m_insert.get());
        return {};
    }

    sqlite3* m_damaged;
    Database& m_into;
    const Progress& m_progress;
    RescuedTable m_result;
    RawStatement m_up;
    RawStatement m_down;
    RawStatement m_insert;
    int m_columns = 0;
    RowId m_highest = kLowest;
};

}  // namespace

Result<RescuedTable> rescueRows(sqlite3* damaged, const QString& table, Database& into, const Progress& progress)
{
    return Rescue(damaged, table, into, progress).run();
}

}  // namespace steelyard
