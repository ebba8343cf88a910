// A prepared statement: bind, step, read columns. Forward only; prepared once and cached by its Database.
//
//   STEELYARD_TRY(auto st, db.prepare("SELECT id, name FROM athlete WHERE archived = ?1"));
//   st.bind(1, false);
//   while (true) {
//       STEELYARD_TRY(const bool row, st.step());
//       if (!row) break;
//       names.push_back(st.text(1));
//   }
//
// Parameters count from 1, columns from 0. Unknown (std::nullopt) is NULL in both directions. Dates are ISO 8601
// text, decimals and loads are their text form, choices are their EnumText keys.
#pragma once

#include "core/base/enum_text.h"
#include "core/base/id.h"
#include "core/base/quantity.h"
#include "core/storage/database.h"

#include <QtCore/QByteArray>
#include <QtCore/QDate>
#include <QtCore/QUuid>

#include <concepts>

namespace steelyard {

class Statement {
public:
    Statement(Statement&& other) noexcept;
    Statement& operator=(Statement&&) = delete;
    Statement(const Statement&) = delete;
    ~Statement();

    void bind(int index, std::nullopt_t);
    void bind(int index, std::int64_t value);
    void bind(int index, double value);
    void bind(int index, std::string_view value);
    void bind(int index, const QString& value);
    void bind(int index, QDate value);
    void bind(int index, const QUuid& value);
    void bind(int index, Decimal value);
    void bind(int index, Load value);  // "42.5 kg"
    void bind(int index, Length value) { bind(index, toMillimetres(value)); }
    void bindBlob(int index, const QByteArray& value);
    template <std::same_as<bool> Flag>
    void bind(int index, Flag value)
    {
        bind(index, std::int64_t{value});
    }
    template <std::same_as<int> Integer>
    void bind(int index, Integer value)
    {
        bind(index, std::int64_t{value});
    }
    template <class Entity>
    void bind(int index, Id<Entity> id)
    {
        bind(index, id.value());
    }
    template <class Enum>
    requires std::is_enum_v<Enum>
    void bind(int index, Enum value) { bindForever(index, key(value)); }
    template <class T>
    void bind(int index, const std::optional<T>& value)
    {
        if (value)
            bind(index, *value);
        else
            bind(index, std::nullopt);
    }
    template <class... Values>
    void bindAll(const Values&... values)
    {
        int index = 0;
        (bind(++index, values), ...);
    }

    // True: a row can be read. False: done (the statement is then reset and can be bound again). Fails, and does nothing, when a value
    // could not be bound: it would run with unknown in its place.
    [[nodiscard]] Result<bool> step();
    // Runs a statement that gives no rows.
    [[nodiscard]] Result<void> run();
    // Runs an insert and gives the new row's id.
    [[nodiscard]] Result<std::int64_t> insert();
    void reset();

    [[nodiscard]] bool isNull(int column) const;
    [[nodiscard]] std::int64_t int64(int column) const;
    [[nodiscard]] int integer(int column) const { return static_cast<int>(int64(column)); }
    [[nodiscard]] bool flag(int column) const { return int64(column) != 0; }
    [[nodiscard]] double real(int column) const;
    [[nodiscard]] std::string_view bytes(int column) const;  // valid until the next step
    [[nodiscard]] QString text(int column) const;
    [[nodiscard]] QByteArray blob(int column) const;
    [[nodiscard]] QDate date(int column) const;
    [[nodiscard]] QUuid uuid(int column) const;
    [[nodiscard]] std::optional<int> maybeInteger(int column) const;
    [[nodiscard]] std::optional<double> maybeReal(int column) const;
    [[nodiscard]] std::optional<QDate> maybeDate(int column) const;
    [[nodiscard]] std::optional<Decimal> maybeDecimal(int column) const;
    [[nodiscard]] std::optional<Load> maybeLoad(int column) const;
    [[nodiscard]] std::optional<Length> maybeLength(int column) const;
    template <class Entity>
    [[nodiscard]] Id<Entity> id(int column) const
    {
        return Id<Entity>(int64(column));
    }
    template <class Entity>
    [[nodiscard]] std::optional<Id<Entity>> maybeId(int column) const
    {
        return isNull(column) ? std::nullopt : std::optional(Id<Entity>(int64(column)));
    }
    // An unknown key reads as the fallback; verify() reports it.
    template <class Enum>
    [[nodiscard]] Enum choice(int column, Enum fallback) const
    {
        return fromKey<Enum>(bytes(column)).value_or(fallback);
    }
    template <class Enum>
    [[nodiscard]] std::optional<Enum> maybeChoice(int column) const
    {
        return isNull(column) ? std::nullopt : fromKey<Enum>(bytes(column));
    }

private:
    friend class Database;
    // Text that lives as long as the program (a choice's key): SQLite need not copy it.
    void bindForever(int index, std::string_view value);
    void keep(int bound);
    Statement(Database& database, std::vector<sqlite3_stmt*>& idle, sqlite3_stmt* statement);
    Database* m_database;
    std::vector<sqlite3_stmt*>* m_idle;  // where it goes when it dies
    sqlite3_stmt* m_statement;
    int m_bindFailure = 0;  // SQLite's code of the first value that could not be bound since the last step
};

}  // namespace steelyard
