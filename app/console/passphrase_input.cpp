#include "app/console/passphrase_input.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QFile>

#include <termios.h>
#include <unistd.h>

#include <cstdio>

namespace steelyard {
namespace {

struct PassphraseInputText {
    Q_DECLARE_TR_FUNCTIONS(PassphraseInputText)
};

// While it lives, a terminal doesn't show what is typed.
class Unseen {
public:
    Unseen()
    {
        if (tcgetattr(STDIN_FILENO, &m_before) != 0) return;
        termios unseen = m_before;
        unseen.c_lflag &= ~static_cast<tcflag_t>(ECHO);
        m_changed = tcsetattr(STDIN_FILENO, TCSAFLUSH, &unseen) == 0;
    }
    ~Unseen()
    {
        if (m_changed) tcsetattr(STDIN_FILENO, TCSAFLUSH, &m_before);
    }
    Unseen(const Unseen&) = delete;
    Unseen& operator=(const Unseen&) = delete;

private:
    termios m_before{};
    bool m_changed = false;
};

Result<QString> readLine(QFile& input)
{
    QByteArray line = input.readLine(static_cast<qint64>(Passphrase::kMostBytes) + 2);
    if (line.isEmpty())
        return fail(ErrorCode::Unsupported,
                    PassphraseInputText::tr("A passphrase is needed on standard input, on a line of its own."));
    while (line.endsWith('\n') || line.endsWith('\r')) line.chop(1);
    QString text = QString::fromUtf8(line);
    line.fill('\0');
    return text;
}

}  // namespace

Result<std::shared_ptr<const Passphrase>> readPassphrase(const Console& console, Asked asked)
{
    QFile input;
    if (!input.open(stdin, QIODevice::ReadOnly))
        return fail(ErrorCode::Unsupported, PassphraseInputText::tr("Standard input can't be read."));
    const bool terminal = isatty(STDIN_FILENO) != 0;
    const Unseen unseen;
    if (terminal) console.say(PassphraseInputText::tr("Passphrase:"));
    STEELYARD_TRY(QString text, readLine(input));
    if (terminal && asked == Asked::Twice) {
        console.say(PassphraseInputText::tr("The same once more:"));
        STEELYARD_TRY(QString again, readLine(input));
        const bool same = again == text;
        wipe(again);
        if (!same) {
            wipe(text);
            return fail(ErrorCode::Invalid, PassphraseInputText::tr("The two differ. Nothing was done."));
        }
    }
    auto made = Passphrase::make(text);
    wipe(text);
    if (!made) return fail(made.error());
    return std::make_shared<const Passphrase>(std::move(*made));
}

}  // namespace steelyard
