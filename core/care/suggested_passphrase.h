// A passphrase that nobody thought up: plain words drawn by libsodium's generator, with spaces between them.
//
//   m_offered->setText(suggestedPassphrase());       // "harbour quill lemon stage …"
//
// Unit: words, nine bits each. Six are 54 bits: with what one guess costs here (sealed_file.h) about two hundred million
// years of one processor. Failure: none; a machine without a source of chance ends the program, as libsodium does.
#pragma once

#include <QtCore/QString>

namespace steelyard {

inline constexpr int kSuggestedWords = 6;

[[nodiscard]] QString suggestedPassphrase(int words = kSuggestedWords);

}  // namespace steelyard
