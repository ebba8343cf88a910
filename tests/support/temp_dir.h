// A folder for one test, gone after it.
//
//   TempDir dir;
//   const QString book = dir.path(u"club.steelyard");
//   dir.write(u"log.csv", "date,athlete\n");
//
// Failures to create, write or read end the test program: they are faults of the machine, not findings.
#pragma once

#include <QtCore/QByteArray>
#include <QtCore/QDir>
#include <QtCore/QFile>
#include <QtCore/QFileInfo>
#include <QtCore/QTemporaryDir>

namespace steelyard::testing_support {

class TempDir {
public:
    TempDir()
    {
        if (!m_dir.isValid()) qFatal("No temporary folder: %s", qPrintable(m_dir.errorString()));
    }

    [[nodiscard]] QString path() const { return m_dir.path(); }
    [[nodiscard]] QString path(QStringView name) const { return m_dir.filePath(name.toString()); }

    // Makes the folders on the way; returns the file's path.
    QString write(QStringView name, const QByteArray& content) const
    {
        const QString where = path(name);
        if (!QDir().mkpath(QFileInfo(where).path())) qFatal("Cannot make the folder of %s", qPrintable(where));
        QFile file(where);
        if (!file.open(QIODevice::WriteOnly) || file.write(content) != content.size())
            qFatal("Cannot write %s", qPrintable(where));
        return where;
    }

    [[nodiscard]] QByteArray read(QStringView name) const
    {
        QFile file(path(name));
        if (!file.open(QIODevice::ReadOnly)) qFatal("Cannot read %s", qPrintable(file.fileName()));
        return file.readAll();
    }

private:
    QTemporaryDir m_dir;
};

}  // namespace steelyard::testing_support
