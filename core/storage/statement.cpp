#include "core/storage/statement.h"

#include <QtCore/QCoreApplication>

#include <sqlite3.h>

#include <array>

namespace steelyard {
namespace {

struct StatementText {
    Q_DECLARE_TR_FUNCTIONS(StatementText)
};

int twoDigits(std::string_view text, std::size_t at)
{
    return (text[at] - '0') * 10 + (text[at + 1] - '0');
}

}  // namespace

Statement::Statement(Database& database, std::vector<sqlite3_stmt*>& idle, sqlite3_stmt* statement)
    : m_database(&database), m_idle(&idle), m_statement(statement)
{}

Statement::Statement(Statement&& other) noexcept
    : m_database(other.m_database),
      m_idle(other.m_idle),
      m_statement(std::exchange(other.m_statement, nullptr)),
      m_bindFailure(other.m_bindFailure)
{}

Statement::~Statement()
{
    if (!m_statement) return;
    sqlite3_reset(m_statement);
    sqlite3_clear_bindings(m_statement);
    m_idle->push_back(m_statement);
}

void Statement::bindForever(int index, std::string_view value)
{
    keep(sqlite3_bind_text(m_statement, index, value.data(), static_cast<int>(value.size()), SQLITE_STATIC));
}

void Statement::bind(int index, std::nullopt_t)
{
    keep(sqlite3_bind_null(m_statement, index));
}

void Statement::bind(int index, std::int64_t value)
{
    keep(sqlite3_bind_int64(m_statement, index, value));
}

void Statement::bind(int index, double value)
{
    keep(sqlite3_bind_double(m_statement, index, value));
}

void Statement::bind(int index, std::string_view value)
{
    // An empty view may have no address, which SQLite would take for NULL.
    const char* data = value.data() ? value.data() : "";
    keep(sqlite3_bind_text(m_statement, index, data, static_cast<int>(value.size()), SQLITE_TRANSIENT));
}

void Statement::bind(int index, const QString& value)
{
    const QByteArray utf8 = value.toUtf8();
    bind(index, std::string_view(utf8.constData(), static_cast<std::size_t>(utf8.size())));
}

void Statement::bindBlob(int index, const QByteArray& value)
{
    keep(sqlite3_bind_blob64(m_statement, index, value.constData(), static_cast<sqlite3_uint64>(value.size()),
                             SQLITE_TRANSIENT));
}

void Statement::bind(int index, QDate value)
{
    if (!value.isValid()) return bind(index, std::nullopt);
    int year = 0;
    int month = 0;
    int day = 0;
    value.getDate(&year, &month, &day);
    const std::array<int, 4> pairs{year / 100 % 100, year % 100, month, day};
    std::array<char, 10> text{'0', '0', '0', '0', '-', '0', '0', '-', '0', '0'};
    constexpr std::array<std::size_t, 4> places{0, 2, 5, 8};
    for (std::size_t i = 0; i < pairs.size(); ++i) {
        text[places[i]] = static_cast<char>('0' + pairs[i] / 10);
        text[places[i] + 1] = static_cast<char>('0' + pairs[i] % 10);
    }
    bind(index, std::string_view(text.data(), text.size()));
}

void Statement::bind(int index, const QUuid& value)
{
    bind(index, value.toString(QUuid::WithoutBraces));
}

void Statement::bind(int index, Decimal value)
{
    std::array<char, 32> buffer{};
    bind(index, std::string_view(buffer.data(), value.write(buffer.data())));
}

void Statement::bind(int index, Load value)
{
    bind(index, value.toString());
}

void Statement::keep(int bound)
{
    if (m_bindFailure == SQLITE_OK) m_bindFailure = bound;
}

Result<bool> Statement::step()
{
    if (m_bindFailure != SQLITE_OK) {
        const int failure = std::exchange(m_bindFailure, SQLITE_OK);
        sqlite3_reset(m_statement);
        return fail(
            Error{ErrorCode::Storage,
                  StatementText::tr("What was to be stored is too large, or the memory did not reach for it, so "
                                    "nothing was changed. Close other programs and try again."),
                  QStringLiteral("SQLite %1 while binding").arg(failure)});
    }
    const int code = sqlite3_step(m_statement);
    if (code == SQLITE_ROW) return true;
    if (code == SQLITE_DONE) {
        sqlite3_reset(m_statement);
        return false;
    }
    Error error = m_database->lastError(StatementText::tr("reading or writing the book"));
    sqlite3_reset(m_statement);
    return fail(std::move(error));
}

Result<void> Statement::run()
{
    STEELYARD_CHECK(step());
    return {};
}

Result<std::int64_t> Statement::insert()
{
    STEELYARD_CHECK(step());
    return sqlite3_last_insert_rowid(m_database->handle());
}

void Statement::reset()
{
    sqlite3_reset(m_statement);
}

bool Statement::isNull(int column) const
{
    return sqlite3_column_type(m_statement, column) == SQLITE_NULL;
}

std::int64_t Statement::int64(int column) const
{
    return sqlite3_column_int64(m_statement, column);
}

double Statement::real(int column) const
{
    return sqlite3_column_double(m_statement, column);
}

std::string_view Statement::bytes(int column) const
{
    const auto* text = reinterpret_cast<const char*>(sqlite3_column_text(m_statement, column));
    return text ? std::string_view(text, static_cast<std::size_t>(sqlite3_column_bytes(m_statement, column)))
                : std::string_view();
}

QString Statement::text(int column) const
{
    const std::string_view utf8 = bytes(column);
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
}

QByteArray Statement::blob(int column) const
{
    // The bytes first: SQLite may move them when it is asked for their number in another form.
    const auto* bytes = static_cast<const char*>(sqlite3_column_blob(m_statement, column));
    return {bytes, sqlite3_column_bytes(m_statement, column)};
}

QDate Statement::date(int column) const
{
    const std::string_view iso = bytes(column);
    if (iso.size() != 10) return {};
    return {twoDigits(iso, 0) * 100 + twoDigits(iso, 2), twoDigits(iso, 5), twoDigits(iso, 8)};
}

QUuid Statement::uuid(int column) const
{
    return QUuid::fromString(text(column));
}

std::optional<int> Statement::maybeInteger(int column) const
{
    return isNull(column) ? std::nullopt : std::optional(integer(column));
}

std::optional<double> Statement::maybeReal(int column) const
{
    return isNull(column) ? std::nullopt : std::optional(real(column));
}

std::optional<QDate> Statement::maybeDate(int column) const
{
    return isNull(column) ? std::nullopt : std::optional(date(column));
}

std::optional<Decimal> Statement::maybeDecimal(int column) const
{
    return Decimal::parse(bytes(column));
}

std::optional<Load> Statement::maybeLoad(int column) const
{
    return isNull(column) ? std::nullopt : Load::parseWithUnit(text(column));
}

std::optional<Length> Statement::maybeLength(int column) const
{
    return isNull(column) ? std::nullopt : std::optional(lengthFromMillimetres(int64(column)));
}

}  // namespace steelyard
