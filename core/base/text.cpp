#include "core/base/text.h"

namespace steelyard {
namespace {

bool isHidden(QChar c)
{
    switch (c.category()) {
    case QChar::Other_Control:
    case QChar::Other_Format:
    case QChar::Other_Surrogate:
        return true;
    default:
        return c.unicode() == 0xFEFF;
    }
}

}  // namespace

QString cleanName(QStringView text)
{
    const QString normal = text.toString().normalized(QString::NormalizationForm_C);
    QString out;
    out.reserve(normal.size());
    for (qsizetype i = 0; i < normal.size(); ++i) {
        const QChar c = normal.at(i);
        if (c.isHighSurrogate() && i + 1 < normal.size() && normal.at(i + 1).isLowSurrogate()) {
            out += c;
            out += normal.at(++i);
        } else if (c.isSpace()) {
            if (!out.isEmpty() && !out.endsWith(u' ')) out += u' ';
        } else if (!isHidden(c)) {
            out += c;
        }
    }
    return out.endsWith(u' ') ? out.chopped(1) : out;
}

QString cleanNote(QStringView text)
{
    const QString normal = text.toString().normalized(QString::NormalizationForm_C);
    QString out;
    out.reserve(normal.size());
    for (qsizetype i = 0; i < normal.size(); ++i) {
        const QChar c = normal.at(i);
        if (c.isHighSurrogate() && i + 1 < normal.size() && normal.at(i + 1).isLowSurrogate()) {
            out += c;
            out += normal.at(++i);
        } else if (c == u'\n' || c == u'\t' || !isHidden(c)) {
            out += c;
        }
    }
    while (!out.isEmpty() && out.back().isSpace()) out.chop(1);
    return out;
}

QString searchKey(QStringView text)
{
    const QString apart = text.toString().normalized(QString::NormalizationForm_KD).toCaseFolded();
    QString out;
    out.reserve(apart.size());
    for (const QChar c : apart) {
        if (c.category() == QChar::Mark_NonSpacing) continue;
        out += c == QChar(0x0142) ? QChar(u'l') : c;  // the stroke of ł is not a combining mark
    }
    return out;
}

QString slug(QStringView text)
{
    QString out;
    for (const QChar c : searchKey(text)) {
        if (c.isLetterOrNumber()) {
            out += c;
        } else if (!out.isEmpty() && !out.endsWith(u'-')) {
            out += u'-';
        }
    }
    return out.endsWith(u'-') ? out.chopped(1) : out;
}

}  // namespace steelyard
