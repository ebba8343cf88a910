#include "core/care/event_log.h"

#include <QtCore/QDir>
#include <QtCore/QRegularExpression>

namespace steelyard {
namespace {

constexpr qsizetype kLongestLine = 400;
constexpr auto kOwnersFile = QFileDevice::ReadOwner | QFileDevice::WriteOwner;
constexpr auto kOwnersFolder = kOwnersFile | QFileDevice::ExeOwner;

}  // namespace

QString withoutPersonalWords(QStringView text)
{
    static const QRegularExpression quoted(
        QStringLiteral("“[^”]*”?|‘[^’]*’?|«[^»]*»?|\"[^\"]*\"?|`[^`']*['`]?|(?<![\\p{L}\\d])'[^']*'?"));
    static const QRegularExpression path(QStringLiteral("(file:)?(~|[A-Za-z]:|\\.{1,2})?[/\\\\][^,;:)\\n]*"));
    QString words = text.toString();
    for (QChar& letter : words)
        if (letter.category() == QChar::Other_Control || letter == QChar::LineSeparator
            || letter == QChar::ParagraphSeparator)
            letter = u' ';
    words.replace(quoted, QStringLiteral("…"));
    words.replace(path, QStringLiteral("…"));
    return words.left(kLongestLine).simplified();
}

QString EventLog::usualFolder()
{
    const QString state = qEnvironmentVariable("XDG_STATE_HOME");
    const QString base = state.startsWith(u'/') ? state : QDir::homePath() + QStringLiteral("/.local/state");
    return base + QStringLiteral("/steelyard");
}

EventLog::EventLog(const QString& folder, const Clock& clock, qint64 bytesOfFile)
    : m_folder(folder), m_clock(clock), m_most(bytesOfFile)
{
    if (QDir().mkpath(folder)) QFile::setPermissions(folder, kOwnersFolder);
    m_file.setFileName(nameOf(0));
    open();
}

QString EventLog::nameOf(int file) const
{
    return m_folder
           + (file == 0 ? QStringLiteral("/steelyard.log")
                        : QStringLiteral("/steelyard.%1.log").arg(QString::number(file)));
}

void EventLog::open()
{
    if (m_file.open(QIODevice::WriteOnly | QIODevice::Append | QIODevice::Unbuffered))
        m_file.setPermissions(kOwnersFile);
}

void EventLog::turnOver()
{
    m_file.close();
    QFile::remove(nameOf(kFiles - 1));
    for (int file = kFiles - 1; file > 0; --file) QFile::rename(nameOf(file - 1), nameOf(file));
    open();
}

void EventLog::write(QStringView kind, QStringView text)
{
    const QString line =
        QStringLiteral("%1 %2 %3\n").arg(m_clock.nowUtc().toString(Qt::ISODate), kind, withoutPersonalWords(text));
    const QMutexLocker locked(&m_mutex);
    if (!m_file.isOpen()) return;
    if (m_file.size() >= m_most) turnOver();
    m_file.write(line.toUtf8());
}

QStringList EventLog::lastLines(int most)
{
    const QMutexLocker locked(&m_mutex);
    QStringList lines;
    for (int file = kFiles - 1; file >= 0; --file) {
        QFile reading(nameOf(file));
        if (reading.open(QIODevice::ReadOnly))
            lines += QString::fromUtf8(reading.readAll()).split(u'\n', Qt::SkipEmptyParts);
    }
    return lines.mid(std::max(qsizetype{0}, lines.size() - most));
}

}  // namespace steelyard
