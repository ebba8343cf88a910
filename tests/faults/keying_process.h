// The keying program (fault_keying.cpp) as a process of its own.
#pragma once

#include <QtCore/QProcess>
#include <QtCore/QStringList>

#include <gtest/gtest.h>

namespace steelyard::test {

class KeyingProcess {
public:
    // Inside `around`, when given: a program and its arguments, which runs what follows them.
    void start(const QStringList& arguments, const QStringList& around = {})
    {
        QStringList words = around;
        words << QStringLiteral(FAULT_KEYING_PROGRAM) << arguments;
        const QString program = words.takeFirst();
        m_process.setProcessChannelMode(QProcess::MergedChannels);
        m_process.start(program, words);
        ASSERT_TRUE(m_process.waitForStarted()) << qPrintable(program);
    }
    void setTimeZone(const QString& zone)
    {
        QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
        environment.insert(QStringLiteral("TZ"), zone);
        m_process.setProcessEnvironment(environment);
    }
    // Waits for its first words.
    QString firstLine()
    {
        while (!m_process.canReadLine() && m_process.waitForReadyRead(kPatience)) continue;
        return QString::fromUtf8(m_process.readLine()).trimmed();
    }
    // Waits for its end.
    void finish()
    {
        m_process.closeWriteChannel();
        ASSERT_TRUE(m_process.waitForFinished(kPatience));
        m_output += m_process.readAll();
    }
    void kill()
    {
        m_process.kill();
        finish();
    }
    [[nodiscard]] bool wasKilled() const { return m_process.exitStatus() == QProcess::CrashExit; }
    [[nodiscard]] int exitCode() const { return m_process.exitCode(); }
    [[nodiscard]] qint64 id() const { return m_process.processId(); }
    [[nodiscard]] const QByteArray& output() const { return m_output; }
    // What stands after these words on the last line that begins with them; nothing when there is none.
    [[nodiscard]] std::optional<QString> said(const QByteArray& words) const
    {
        std::optional<QString> found;
        for (const QByteArray& line : m_output.split('\n'))
            if (line.startsWith(words)) found = QString::fromUtf8(line.mid(words.size())).trimmed();
        return found;
    }

private:
    static constexpr int kPatience = 60'000;
    QProcess m_process;
    QByteArray m_output;
};

}  // namespace steelyard::test
