#include "core/exchange/kept_mapping.h"

#include "core/base/text.h"

#include <QtCore/QCryptographicHash>

namespace steelyard {
namespace {

// Changes how every column is named; false when one can't be.
template <class Rename>
bool renameColumns(LogbookMapping& mapping, Rename rename)
{
    for (auto& [ours, theirs] : mapping.columns)
        if (!rename(theirs)) return false;
    for (ColumnNames& set : mapping.sets)
        for (auto& [ours, theirs] : set)
            if (!rename(theirs)) return false;
    return true;
}

}  // namespace

LogbookMapping toKeep(const LogbookMapping& mapping, const QStringList& header)
{
    LogbookMapping kept = mapping;
    kept.athletes.clear();
    kept.fixed.erase(QStringLiteral("athlete"));
    if (!mapping.hasHeader) return kept;
    renameColumns(kept, [&](ColumnName& column) {
        const int* number = std::get_if<int>(&column);
        const QString name = number ? header.value(*number - 1) : QString();
        if (!name.isEmpty() && header.count(name) == 1) column = name;
        return true;
    });
    return kept;
}

std::optional<LogbookMapping> fitMapping(const LogbookMapping& kept, const QStringList& header)
{
    LogbookMapping fitting = kept;
    const bool fits = renameColumns(fitting, [&](ColumnName& column) {
        if (const auto* name = std::get_if<QString>(&column)) column = static_cast<int>(header.indexOf(*name)) + 1;
        const int number = std::get<int>(column);
        return number >= 1 && number <= header.size();
    });
    return fits ? std::optional(fitting) : std::nullopt;
}

QString headerSignature(const LogbookMapping& mapping, const QStringList& header)
{
    if (!mapping.hasHeader || header.isEmpty()) return {};
    QStringList names;
    for (const QString& name : header) names.append(searchKey(name));
    names.sort();
    return QString::fromLatin1(
        QCryptographicHash::hash(names.join(u'\n').toUtf8(), QCryptographicHash::Sha256).toHex().left(32));
}

}  // namespace steelyard
