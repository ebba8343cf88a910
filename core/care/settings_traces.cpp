#include "core/care/settings_traces.h"

#include <QtCore/QSettings>
#include <QtCore/QStringList>
#include <QtCore/QVariant>

#include <algorithm>
#include <set>

namespace steelyard {
namespace {

// In a text, or anywhere in a list or a map.
bool namesPerson(const QVariant& value, const QString& name)
{
    switch (value.typeId()) {
    case QMetaType::QVariantList:
        return std::ranges::any_of(value.toList(), [&](const QVariant& item) { return namesPerson(item, name); });
    case QMetaType::QVariantMap: {
        const QVariantMap map = value.toMap();
        for (auto item = map.begin(); item != map.end(); ++item)
            if (item.key().contains(name, Qt::CaseInsensitive) || namesPerson(item.value(), name)) return true;
        return false;
    }
    case QMetaType::QStringList:
        return value.toStringList().join(u'\n').contains(name, Qt::CaseInsensitive);
    case QMetaType::QByteArray:
        return QString::fromUtf8(value.toByteArray()).contains(name, Qt::CaseInsensitive);
    default:
        return value.toString().contains(name, Qt::CaseInsensitive);
    }
}

// "week/filters/3/name" stands in the array "week/filters" at 3, as QSettings writes arrays; 0: in none.
struct ArrayPlace {
    QString array;
    int index = 0;
};

ArrayPlace arrayPlaceOf(const QSettings& settings, const QString& key)
{
    const QStringList parts = key.split(u'/');
    for (qsizetype i = parts.size() - 2; i > 0; --i) {
        bool isNumber = false;
        const int index = parts[i].toInt(&isNumber);
        const QString array = parts.first(i).join(u'/');
        if (isNumber && settings.contains(array + QStringLiteral("/size"))) return {array, index};
    }
    return {};
}

// The entries that follow move up, so that the array has no gap.
void removeEntry(QSettings& settings, const ArrayPlace& place)
{
    const QString size = place.array + QStringLiteral("/size");
    const int count = settings.value(size).toInt();
    for (int index = place.index; index <= count; ++index) {
        const QString entry = place.array + u'/' + QString::number(index);
        settings.remove(entry);
        const QString next = place.array + u'/' + QString::number(index + 1) + u'/';
        for (const QString& key : settings.allKeys())
            if (key.startsWith(next)) settings.setValue(entry + u'/' + key.mid(next.size()), settings.value(key));
    }
    settings.setValue(size, std::max(0, count - 1));
}

bool cleanOne(QSettings& settings, const QString& name)
{
    for (const QString& key : settings.allKeys()) {
        const QVariant value = settings.value(key);
        if (!namesPerson(value, name) && !key.contains(name, Qt::CaseInsensitive)) continue;
        const ArrayPlace place = arrayPlaceOf(settings, key);
        if (place.index > 0) {
            removeEntry(settings, place);
        } else if (value.typeId() == QMetaType::QStringList) {
            QStringList rest = value.toStringList();
            rest.removeIf([&](const QString& item) { return item.contains(name, Qt::CaseInsensitive); });
            settings.setValue(key, rest);
        } else {
            settings.remove(key);
        }
        return true;
    }
    return false;
}

}  // namespace

int removeTraces(QSettings& settings, const QString& name)
{
    int taken = 0;
    while (!name.isEmpty() && cleanOne(settings, name)) ++taken;
    settings.sync();
    return taken;
}

}  // namespace steelyard
