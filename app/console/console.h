// What every console command works with: its options, where results and warnings go, and how failure becomes an exit status.
//
// Exit status: 0 done; 1 the input was refused; 2 the words of the call are off; 3 the storage failed or the file is no
// sound book; 4 the book needs a newer program.
#pragma once

#include "core/base/clock.h"
#include "core/base/progress.h"
#include "core/base/result.h"

#include <QtCore/QCommandLineOption>
#include <QtCore/QCommandLineParser>
#include <QtCore/QJsonDocument>

#include <memory>
#include <vector>

namespace steelyard {

class Console {
public:
    Console(const QCommandLineParser& words, const Clock& clock) : m_words(words), m_clock(clock) {}

    [[nodiscard]] const Clock& clock() const { return m_clock; }
    [[nodiscard]] bool json() const { return m_words.isSet(QStringLiteral("json")); }
    [[nodiscard]] bool has(const QString& option) const { return m_words.isSet(option); }
    [[nodiscard]] QString value(const QString& option) const { return m_words.value(option); }
    [[nodiscard]] QStringList values(const QString& option) const { return m_words.values(option); }
    [[nodiscard]] QStringList files() const { return m_words.positionalArguments().mid(1); }
    // Unsupported when the option is missing or not in range.
    [[nodiscard]] Result<QString> required(const QString& option) const;
    [[nodiscard]] Result<int> integer(const QString& option, int fallback, int low, int high) const;

    void print(const QString& text) const;  // results, to standard output
    void print(const QJsonDocument& document) const;
    void say(const QString& text) const;      // warnings and progress, to standard error
    [[nodiscard]] Progress progress() const;  // to standard error, when that is a terminal

private:
    const QCommandLineParser& m_words;
    const Clock& m_clock;
};

struct ConsoleCommand {
    QString name;
    QString does;  // one line of help
    std::vector<QCommandLineOption> options;
    Result<void> (*run)(const Console&);
};

[[nodiscard]] int exitStatus(ErrorCode code);
[[nodiscard]] QCommandLineOption bookOption();
[[nodiscard]] QCommandLineOption athleteOption();

}  // namespace steelyard
