#include "core/care/passphrase.h"

#include <QtCore/QCoreApplication>

#include <sodium.h>

#include <algorithm>
#include <cstring>

namespace steelyard {
namespace {

struct PassphraseText {
    Q_DECLARE_TR_FUNCTIONS(PassphraseText)
};

}  // namespace

void Passphrase::Wiped::operator()(std::byte* bytes) const
{
    sodium_free(bytes);  // wipes
}

Result<Passphrase> Passphrase::make(const QString& text)
{
    if (sodium_init() < 0)
        return fail(ErrorCode::Storage, PassphraseText::tr("Nothing can be sealed on this machine."));
    if (!text.isValidUtf16())
        return fail(ErrorCode::Invalid, PassphraseText::tr("The passphrase holds half a letter. Type it again."));
    QString letters = text.normalized(QString::NormalizationForm_C);
    const auto length = letters.toUcs4().size();
    QByteArray utf8 = letters.toUtf8();
    wipe(letters);
    const auto wiped = [&] { sodium_memzero(utf8.data(), static_cast<std::size_t>(utf8.size())); };
    if (length < kFewestLetters || utf8.size() > kMostBytes) {
        wiped();
        return fail(ErrorCode::Invalid, length < kFewestLetters
                                            ? PassphraseText::tr("A passphrase has at least %1 letters. A few words "
                                                                 "that don't belong together make a good one.")
                                                  .arg(kFewestLetters)
                                            : PassphraseText::tr("The passphrase is too long."));
    }
    Passphrase made;
    made.m_size = static_cast<std::size_t>(utf8.size());
    made.m_bytes.reset(static_cast<std::byte*>(sodium_malloc(made.m_size)));
    if (!made.m_bytes) {
        wiped();
        return fail(ErrorCode::Storage, PassphraseText::tr("There is no memory left for the passphrase."));
    }
    std::memcpy(made.m_bytes.get(), utf8.constData(), made.m_size);
    wiped();
    return made;
}

void wipe(QString& text)
{
    // Not through sodium alone: a shared text would be copied first, and the copy wiped.
    if (!text.isEmpty()) sodium_memzero(text.data(), static_cast<std::size_t>(text.size()) * sizeof(QChar));
    text.clear();
}

}  // namespace steelyard
