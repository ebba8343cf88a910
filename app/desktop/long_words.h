// Every text of the program about two fifths longer, as German or Finnish would make it, so that what gets cut or pushed out is
// seen before there is a translation. Texts that do not pass through tr() stay as short as they are, and show by it.
//
//   QCoreApplication::installTranslator(new LongWords(&app));   // on top of the real translation
//
// Vowels are written twice; placeholders (%1, %n), mnemonics and mark-up stay as they are.
#pragma once

#include <QtCore/QTranslator>

namespace steelyard {

class LongWords final : public QTranslator {
    Q_OBJECT

public:
    using QTranslator::QTranslator;
    [[nodiscard]] bool isEmpty() const override { return false; }
    [[nodiscard]] QString translate(const char* context, const char* sourceText, const char* disambiguation,
                                    int n) const override;
};

[[nodiscard]] QString withLongWords(const QString& text);

}  // namespace steelyard
