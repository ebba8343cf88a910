// How hard a passphrase is to guess, roughly, for a hint while it is typed. Never a reason to refuse one that is long enough.
//
//   passphraseStrength(u"aaaaaaaaaaaa") == PassphraseStrength::Weak
//
// Words of the program's own list count nine bits each. Anything else counts by its letters: a letter that repeats or goes on
// from its neighbours (aaa, abc, 321) counts one bit, another counts as if it were drawn from a third of the alphabet that the
// text uses, since people's words are not drawn. A guess at a guess: who knows the owner does better than this.
// Limits, in bits: below 36 weak, below 50 fair, else good.
#pragma once

#include <QtCore/QStringView>

namespace steelyard {

enum class PassphraseStrength { TooShort, Weak, Fair, Good };

[[nodiscard]] PassphraseStrength passphraseStrength(QStringView text);

}  // namespace steelyard
