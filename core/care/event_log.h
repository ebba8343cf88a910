// What the program did, for who has to find out why something went wrong: words of the program and numbers, never what stands
// in a book. A few small files that are written in turn, readable by their owner only.
//
//   EventLog log(EventLog::usualFolder(), clock);
//   log.write(u"action", u"week.act");                 // 2027-03-01T10:00:00Z action week.act
//
// Every line goes through withoutPersonalWords(). Writing never fails anybody: a log that can't be written stays silent. May be
// called from any thread. Units: bytes a file.
#pragma once

#include "core/base/clock.h"

#include <QtCore/QFile>
#include <QtCore/QMutex>
#include <QtCore/QStringList>

namespace steelyard {

// The text without what may come from a book or tell who works here: what stands in quotation marks, and paths. On one line, at
// most 400 letters.
[[nodiscard]] QString withoutPersonalWords(QStringView text);

class EventLog {
public:
    static constexpr qint64 kUsualBytes = 256 << 10;
    static constexpr int kFiles = 3;

    // $XDG_STATE_HOME/steelyard, or ~/.local/state/steelyard.
    [[nodiscard]] static QString usualFolder();
    EventLog(const QString& folder, const Clock& clock, qint64 bytesOfFile = kUsualBytes);

    void write(QStringView kind, QStringView text);
    // Oldest first.
    [[nodiscard]] QStringList lastLines(int most);
    // Of the file that is written now, for a handler that can do nothing but write; -1: there is none.
    [[nodiscard]] int descriptor() const { return m_file.handle(); }
    [[nodiscard]] QString path() const { return m_file.fileName(); }

private:
    [[nodiscard]] QString nameOf(int file) const;
    void open();
    void turnOver();

    QString m_folder;
    const Clock& m_clock;
    qint64 m_most;
    QMutex m_mutex;
    QFile m_file;
};

}  // namespace steelyard
