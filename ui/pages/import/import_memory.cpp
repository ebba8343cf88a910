#include "ui/pages/import/import_memory.h"

#include <QtCore/QCryptographicHash>
#include <QtCore/QSettings>
#include <QtCore/QStringList>

#include <algorithm>

namespace steelyard {
namespace {

constexpr std::size_t kMostRemembered = 300;  // of each kind; the oldest go
constexpr const char* kKeptPlace = "import/kept";
constexpr const char* kSeenPlace = "import/seen";
constexpr const char* kFilesPlace = "import/files";

auto called(const QString& key)
{
    return [&key](const auto& entry) { return entry.key.compare(key, Qt::CaseInsensitive) == 0; };
}

}  // namespace

ImportMemory::ImportMemory(QSettings* settings, QString bookPath)
    : m_settings(settings),
      m_bookPath(std::move(bookPath)),
      m_kept(read(kKeptPlace)),
      m_seen(read(kSeenPlace)),
      m_files(read(kFilesPlace))
{}

ImportMemory::Entries ImportMemory::read(const char* place) const
{
    Entries entries;
    if (!m_settings) return entries;
    const int count = m_settings->beginReadArray(QString::fromLatin1(place));
    for (int i = 0; i < count; ++i) {
        m_settings->setArrayIndex(i);
        entries.push_back({m_settings->value(QStringLiteral("key")).toString(),
                           m_settings->value(QStringLiteral("value")).toByteArray()});
    }
    m_settings->endArray();
    return entries;
}

void ImportMemory::store(const char* place, const Entries& entries) const
{
    if (!m_settings) return;
    m_settings->remove(QString::fromLatin1(place));
    m_settings->beginWriteArray(QString::fromLatin1(place), static_cast<int>(entries.size()));
    for (int i = 0; i < static_cast<int>(entries.size()); ++i) {
        m_settings->setArrayIndex(i);
        m_settings->setValue(QStringLiteral("key"), entries[static_cast<std::size_t>(i)].key);
        m_settings->setValue(QStringLiteral("value"), entries[static_cast<std::size_t>(i)].value);
    }
    m_settings->endArray();
}

QByteArray ImportMemory::find(const Entries& entries, const QString& key)
{
    const auto at = std::ranges::find_if(entries, called(key));
    return at == entries.end() ? QByteArray() : at->value;
}

void ImportMemory::put(Entries& entries, const char* place, const QString& key, const QByteArray& value)
{
    std::erase_if(entries, called(key));
    entries.push_back({key, value});
    if (entries.size() > kMostRemembered) entries.erase(entries.begin());
    store(place, entries);
}

QStringList ImportMemory::names() const
{
    QStringList names;
    for (const Entry& entry : m_kept) names.append(entry.key);
    names.sort(Qt::CaseInsensitive);
    return names;
}

QByteArray ImportMemory::kept(const QString& name) const
{
    return find(m_kept, name);
}

void ImportMemory::keep(const QString& name, const QByteArray& mapping)
{
    put(m_kept, kKeptPlace, name, mapping);
}

void ImportMemory::forget(const QString& name)
{
    std::erase_if(m_kept, called(name));
    store(kKeptPlace, m_kept);
}

QByteArray ImportMemory::of(const QString& signature) const
{
    return signature.isEmpty() ? QByteArray() : find(m_seen, signature);
}

void ImportMemory::remember(const QString& signature, const QByteArray& mapping)
{
    if (!signature.isEmpty()) put(m_seen, kSeenPlace, signature, mapping);
}

QString ImportMemory::fileKey(const QString& fingerprint) const
{
    const QByteArray both = (fingerprint + u'\n' + m_bookPath).toUtf8();
    return QString::fromLatin1(QCryptographicHash::hash(both, QCryptographicHash::Sha256).toHex().left(40));
}

std::optional<QDate> ImportMemory::cameIn(const QString& fingerprint) const
{
    const QDate day = QDate::fromString(QString::fromLatin1(find(m_files, fileKey(fingerprint))), Qt::ISODate);
    return day.isValid() ? std::optional(day) : std::nullopt;
}

void ImportMemory::bringsIn(const QString& fingerprint, QDate day)
{
    put(m_files, kFilesPlace, fileKey(fingerprint), day.toString(Qt::ISODate).toLatin1());
}

}  // namespace steelyard
