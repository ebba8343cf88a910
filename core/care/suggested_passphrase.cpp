#include "core/care/suggested_passphrase.h"

#include "core/care/passphrase_word_list.h"

#include <QtCore/QStringList>

#include <sodium.h>

namespace steelyard {

QString suggestedPassphrase(int words)
{
    if (sodium_init() < 0) return {};
    QStringList drawn;
    for (int i = 0; i < words; ++i)
        drawn << QString::fromLatin1(kPassphraseWords[randombytes_uniform(kPassphraseWords.size())]);
    return drawn.join(QLatin1Char(' '));
}

}  // namespace steelyard
