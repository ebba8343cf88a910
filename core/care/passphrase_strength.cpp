#include "core/care/passphrase_strength.h"

#include "core/care/passphrase.h"
#include "core/care/passphrase_word_list.h"

#include <QtCore/QSet>
#include <QtCore/QString>

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

constexpr double kBitsOfWord = 9;
constexpr double kFairBits = 36;
constexpr double kGoodBits = 50;

double alphabetOf(QStringView text)
{
    double letters = 0;
    const auto any = [&](auto is) { return std::ranges::any_of(text, is); };
    if (any([](QChar c) { return c.isLower(); })) letters += 26;
    if (any([](QChar c) { return c.isUpper(); })) letters += 26;
    if (any([](QChar c) { return c.isDigit(); })) letters += 10;
    if (any([](QChar c) { return !c.isLetterOrNumber(); })) letters += 20;
    return letters;
}

double bitsByLetters(QStringView text)
{
    const double bits = std::max(1.0, std::log2(alphabetOf(text) / 3));
    QSet<QChar> seen;
    double sum = 0;
    for (qsizetype i = 0; i < text.size(); ++i) {
        const bool follows = i > 0 && std::abs(text[i].unicode() - text[i - 1].unicode()) <= 1;
        sum += follows || seen.contains(text[i]) ? 1 : bits;
        seen.insert(text[i]);
    }
    return sum;
}

// Nothing when it holds another word than those of the list. A word that is there twice counts once.
double bitsByWords(QStringView text)
{
    QSet<QStringView> words;
    for (const QStringView word : text.split(u' ', Qt::SkipEmptyParts)) {
        if (!std::ranges::any_of(kPassphraseWords, [&](const char* each) { return word == QLatin1StringView(each); }))
            return 0;
        words.insert(word);
    }
    return static_cast<double>(words.size()) * kBitsOfWord;
}

}  // namespace

PassphraseStrength passphraseStrength(QStringView text)
{
    if (text.size() < Passphrase::kFewestLetters) return PassphraseStrength::TooShort;
    const double words = bitsByWords(text);
    const double bits = words > 0 ? words : bitsByLetters(text);
    if (bits < kFairBits) return PassphraseStrength::Weak;
    return bits < kGoodBits ? PassphraseStrength::Fair : PassphraseStrength::Good;
}

}  // namespace steelyard
