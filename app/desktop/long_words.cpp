#include "app/desktop/long_words.h"

namespace steelyard {

QString withLongWords(const QString& text)
{
    QString longer;
    bool inTag = false;
    for (qsizetype i = 0; i < text.size(); ++i) {
        const QChar letter = text[i];
        longer += letter;
        if (letter == u'<') inTag = true;
        if (letter == u'>') inTag = false;
        const bool ofPlaceholder = i > 0 && text[i - 1] == u'%';
        if (!inTag && !ofPlaceholder && QStringView(u"aeiouAEIOU").contains(letter)) longer += letter.toLower();
    }
    return longer;
}

QString LongWords::translate(const char* context, const char* sourceText, const char* disambiguation, int n) const
{
    Q_UNUSED(context)
    Q_UNUSED(disambiguation)
    QString text = QString::fromUtf8(sourceText);
    if (n >= 0) text.replace(QStringLiteral("(s)"), n == 1 ? QString() : QStringLiteral("s"));
    return withLongWords(text);
}

}  // namespace steelyard
