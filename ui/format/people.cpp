#include "ui/format/people.h"

#include <QtCore/QHash>
#include <QtCore/QReadWriteLock>

#include <algorithm>

namespace steelyard::format {
namespace {

constexpr qsizetype kMostInitials = 4;

struct PeopleInUse {
    QReadWriteLock lock;
    bool byInitials = false;
    QHash<QString, QString> initials;
    QStringList longestFirst;
};

PeopleInUse& peopleInUse()
{
    static PeopleInUse inUse;
    return inUse;
}

QString initialsOf(const QString& name)
{
    QStringList letters;
    bool begins = true;
    for (const char32_t letter : name.toUcs4()) {
        const bool isOfWord = QChar::isLetterOrNumber(letter);
        if (isOfWord && begins && letters.size() < kMostInitials) letters << QString::fromUcs4(&letter, 1);
        begins = !isOfWord && !QChar::isMark(letter) && letter != U'\'' && letter != U'’';
    }
    return letters.isEmpty() ? QStringLiteral("?") : letters.join(QStringLiteral(". ")) + u'.';
}

}  // namespace

void callPeople(bool byInitials, const QStringList& everybody)
{
    QHash<QString, QString> initials;
    QHash<QString, int> seen;
    for (const QString& name : everybody) {
        if (initials.contains(name)) continue;
        const QString letters = initialsOf(name);
        const int count = ++seen[letters];
        initials.insert(name, count == 1 ? letters : QStringLiteral("%1 %2").arg(letters, QString::number(count)));
    }
    QStringList longestFirst = initials.keys();
    std::ranges::sort(longestFirst, [](const QString& a, const QString& b) {
        return a.size() != b.size() ? a.size() > b.size() : a < b;
    });
    PeopleInUse& inUse = peopleInUse();
    const QWriteLocker writing(&inUse.lock);
    inUse.byInitials = byInitials;
    inUse.initials = std::move(initials);
    inUse.longestFirst = std::move(longestFirst);
}

bool arePeopleInitials()
{
    PeopleInUse& inUse = peopleInUse();
    const QReadLocker reading(&inUse.lock);
    return inUse.byInitials;
}

QString person(const QString& name)
{
    PeopleInUse& inUse = peopleInUse();
    const QReadLocker reading(&inUse.lock);
    if (!inUse.byInitials || name.isEmpty()) return name;
    const auto known = inUse.initials.constFind(name);
    return known == inUse.initials.cend() ? initialsOf(name) : *known;
}

QString people(const QString& text)
{
    PeopleInUse& inUse = peopleInUse();
    const QReadLocker reading(&inUse.lock);
    if (!inUse.byInitials) return text;
    QString without = text;
    for (const QString& name : inUse.longestFirst)
        if (!name.isEmpty()) without.replace(name, inUse.initials.value(name));
    return without;
}

}  // namespace steelyard::format
