// The console run as a program, on a book in a temporary folder.
//
//   makeClub();
//   const Said said = run("review", {u"--json"_qs});   // said.status, said.out, said.err
#pragma once

#include "tests/support/temp_book.h"

#include <QtCore/QProcess>

#include <gtest/gtest.h>

namespace steelyard {

struct Said {
    int status = -1;
    QByteArray out;
    QString err;
};

// Backups land in `data`, not among those of whoever runs the tests. `input` is what comes through a pipe.
inline Said console(const QStringList& words, const QString& data = {}, const QByteArray& input = {})
{
    QProcess process;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    const QTemporaryDir thrownAway;
    environment.insert(QStringLiteral("XDG_DATA_HOME"), data.isEmpty() ? thrownAway.path() : data);
    process.setProcessEnvironment(environment);
    process.start(QStringLiteral(STEELYARD_CONSOLE_PROGRAM), words);
    process.write(input);
    process.closeWriteChannel();
    if (!process.waitForFinished(60'000)) return {};
    if (process.exitStatus() != QProcess::NormalExit) return {};
    return {process.exitCode(), process.readAllStandardOutput(), QString::fromUtf8(process.readAllStandardError())};
}

class Club : public testing::Test {
protected:
    QTemporaryDir m_dir;
    QString m_book = file("club.steelyard");

    [[nodiscard]] QString file(const char* name) const { return m_dir.filePath(QString::fromLatin1(name)); }
    [[nodiscard]] Said run(const char* command, const QStringList& more = {}, const QByteArray& input = {}) const
    {
        return console(QStringList{QString::fromLatin1(command), QStringLiteral("--as-of"),
                                   QStringLiteral("2026-11-25"), QStringLiteral("--book"), m_book}
                           + more,
                       file("data"), input);
    }
    void write(const QString& path, const QByteArray& bytes) const
    {
        QFile out(path);
        ASSERT_TRUE(out.open(QIODevice::WriteOnly));
        ASSERT_EQ(out.write(bytes), bytes.size());
    }
    void makeClub() const
    {
        const Said said = run("demo", {QStringLiteral("--athletes"), QStringLiteral("3"), QStringLiteral("--years"),
                                       QStringLiteral("1"), QStringLiteral("--seed"), QStringLiteral("4")});
        ASSERT_EQ(said.status, 0) << said.err.toStdString();
    }
};

}  // namespace steelyard
