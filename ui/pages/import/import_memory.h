// What the import remembers between files, in the program's settings: mappings that the coach gave a name, mappings by the
// columns of the files they were used for, and which files came in when. Nothing about lifters.
//
//   ImportMemory memory(context.settings, book.path());
//   memory.remember(signature, writeMapping(kept));          // comes back for the next file with these columns
//
// Names are unique whatever their case; keeping one again replaces it. A file is known by its content and the book it went
// into. Without settings all this lives as long as the object.
#pragma once

#include <QtCore/QByteArray>
#include <QtCore/QDate>
#include <QtCore/QString>

#include <optional>
#include <vector>

class QSettings;

namespace steelyard {

class ImportMemory {
public:
    ImportMemory(QSettings* settings, QString bookPath);

    [[nodiscard]] QStringList names() const;
    [[nodiscard]] QByteArray kept(const QString& name) const;  // empty: none of that name
    void keep(const QString& name, const QByteArray& mapping);
    void forget(const QString& name);

    [[nodiscard]] QByteArray of(const QString& signature) const;
    void remember(const QString& signature, const QByteArray& mapping);

    [[nodiscard]] std::optional<QDate> cameIn(const QString& fingerprint) const;
    void bringsIn(const QString& fingerprint, QDate day);

private:
    struct Entry {
        QString key;
        QByteArray value;
    };
    using Entries = std::vector<Entry>;
    [[nodiscard]] static QByteArray find(const Entries& entries, const QString& key);
    void put(Entries& entries, const char* place, const QString& key, const QByteArray& value);
    [[nodiscard]] Entries read(const char* place) const;
    void store(const char* place, const Entries& entries) const;
    [[nodiscard]] QString fileKey(const QString& fingerprint) const;

    QSettings* m_settings;
    QString m_bookPath;
    Entries m_kept;
    Entries m_seen;
    Entries m_files;
};

}  // namespace steelyard
