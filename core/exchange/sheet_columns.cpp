#include "core/exchange/sheet_columns.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct SheetColumnText {
    Q_DECLARE_TR_FUNCTIONS(SheetColumnText)
};

// What the row says of these can't be meant for each of its sets.
constexpr auto kOfOneSet = std::to_array<ColumnPlace>(
    {"set"_column, "off"_column, "failed"_column, "marks"_column, "rir"_column, "rpe"_column, "note"_column});
// Effort and note find their set; for these there is none to choose.
constexpr std::size_t kNeverOfTheRow = 4;

// Which of two columns of one name is meant can't be guessed.
Result<void> refuseTwice(const LogbookMapping& mapping, const QStringList& header, const QString& name)
{
    if (header.count(name) < 2) return {};
    return fail(ErrorCode::Invalid,
                SheetColumnText::tr(
                    "Line %1: the column “%2” stands twice. Rename one of them, or choose by number in a mapping.")
                    .arg(QString::number(mapping.skip + 1), name));
}

Result<qsizetype> placeOf(const LogbookMapping& mapping, const QStringList& header, const QString& ours,
                          const ColumnName& theirs)
{
    const auto* name = std::get_if<QString>(&theirs);
    if (name) STEELYARD_CHECK(refuseTwice(mapping, header, *name));
    const qsizetype place = name ? header.indexOf(*name) : std::get<int>(theirs) - 1;
    if (place >= 0 && place < header.size()) return place;
    return fail(ErrorCode::Invalid,
                SheetColumnText::tr("The mapping puts “%1” in a column that the file has not. Its columns are: %2.")
                    .arg(ours, header.join(QStringLiteral(", "))));
}

Result<SheetColumns::Places> placeRow(const LogbookMapping& mapping, const QStringList& header)
{
    SheetColumns::Places places{};
    for (std::size_t i = 0; i < places.size(); ++i) {
        const QString& column = logbookColumns()[static_cast<qsizetype>(i)];
        places[i] = -1;
        if (mapping.columns.empty()) {
            places[i] = header.indexOf(column);
            if (places[i] >= 0) STEELYARD_CHECK(refuseTwice(mapping, header, column));
        } else if (const auto named = mapping.columns.find(column); named != mapping.columns.end()) {
            STEELYARD_TRY(places[i], placeOf(mapping, header, column, named->second));
        }
    }
    return places;
}

Result<SheetColumns::Set> placeSet(const LogbookMapping& mapping, const QStringList& header, const ColumnNames& names,
                                   const SheetColumns::Places& row)
{
    SheetColumns::Set set{row, -1, {}};
    for (const ColumnPlace column : kOfOneSet) set.places[static_cast<std::size_t>(column)] = -1;
    for (const auto& [ours, theirs] : names) {
        STEELYARD_TRY(const qsizetype place, placeOf(mapping, header, ours, theirs));
        set.own.push_back(place);
        if (ours == kNotationColumn)
            set.notation = place;
        else
            set.places[static_cast<std::size_t>(logbookColumns().indexOf(ours))] = place;
    }
    return set;
}

Result<void> refuseUndivided(const SheetColumns& columns)
{
    for (std::size_t i = 0; i < kNeverOfTheRow; ++i) {
        const auto column = static_cast<std::size_t>(kOfOneSet[i]);
        if (columns.row[column] >= 0)
            return fail(ErrorCode::Invalid,
                        SheetColumnText::tr("With several sets in a row, the column “%1” must belong to one of them. "
                                            "Leave it out, and it is kept as a note.")
                            .arg(logbookColumns()[static_cast<qsizetype>(column)]));
    }
    return {};
}

Result<void> refuseMissing(const LogbookMapping& mapping, const QStringList& header, const SheetColumns& columns)
{
    const auto inEverySet = [&](std::size_t column) {
        return !columns.sets.empty() && std::ranges::all_of(columns.sets, [&](const SheetColumns::Set& set) {
            return set.notation >= 0 || set.places[column] >= 0;
        });
    };
    for (const ColumnPlace needed : {"date"_column, "athlete"_column, "exercise"_column, "reps"_column}) {
        const auto i = static_cast<std::size_t>(needed);
        const QString& column = logbookColumns()[static_cast<qsizetype>(i)];
        if (columns.row[i] >= 0 || mapping.fixed.contains(column)) continue;
        if (needed == "reps"_column && inEverySet(i)) continue;
        return fail(ErrorCode::Invalid,
                    SheetColumnText::tr("Line %1: the column “%2” is missing. Add it, or say in a mapping which column "
                                        "it is. The file's columns are: %3.")
                        .arg(QString::number(mapping.skip + 1), column, header.join(QStringLiteral(", "))));
    }
    return {};
}

}  // namespace

bool SheetColumns::uses(qsizetype column) const
{
    return column == count || std::ranges::find(row, column) != row.end()
           || std::ranges::any_of(sets, [column](const Set& set) { return std::ranges::count(set.own, column) > 0; });
}

Result<SheetColumns> placeColumns(const LogbookMapping& mapping, const QStringList& header)
{
    SheetColumns columns;
    STEELYARD_TRY(columns.row, placeRow(mapping, header));
    if (const auto count = mapping.columns.find(kCountColumn); count != mapping.columns.end()) {
        STEELYARD_TRY(columns.count, placeOf(mapping, header, count->first, count->second));
    }
    for (const ColumnNames& names : mapping.sets) {
        STEELYARD_TRY(auto set, placeSet(mapping, header, names, columns.row));
        columns.sets.push_back(std::move(set));
    }
    if (!columns.sets.empty()) STEELYARD_CHECK(refuseUndivided(columns));
    STEELYARD_CHECK(refuseMissing(mapping, header, columns));
    return columns;
}

}  // namespace steelyard
