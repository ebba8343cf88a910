#include "ui/print/text_measure.h"

#include "ui/print/fonts.h"

#include <QtGui/QFontMetricsF>

#include <cmath>

namespace steelyard {
namespace {

// How many characters of a word fit; at least one, so that breaking always ends.
qsizetype fittingLength(const QString& word, double widthMm, double points, bool bold)
{
    qsizetype low = 1;
    qsizetype high = word.size();
    while (low < high) {
        const qsizetype middle = (low + high + 1) / 2;
        if (textWidthMm(word.left(middle), points, bold) <= widthMm)
            low = middle;
        else
            high = middle - 1;
    }
    return low;
}

}  // namespace

QFont sheetFont(double points, bool bold)
{
    QFont font(sheetFontFamily());
    font.setPixelSize(static_cast<int>(std::lround(points / 72.0 * kTypeUnitsPerInch)));
    font.setBold(bold);
    font.setHintingPreference(QFont::PreferNoHinting);
    return font;
}

double textWidthMm(const QString& text, double points, bool bold)
{
    return QFontMetricsF(sheetFont(points, bold)).horizontalAdvance(text) / kTypeUnitsPerMm;
}

double lineHeightMm(double points)
{
    return points / 72.0 * 25.4 * 1.18;
}

QString shortenText(const QString& text, double widthMm, double points, bool bold)
{
    if (textWidthMm(text, points, bold) <= widthMm) return text;
    const QString dots = QStringLiteral("…");
    const double room = widthMm - textWidthMm(dots, points, bold);
    return text.left(fittingLength(text, room, points, bold)).trimmed() + dots;
}

QStringList wrapText(const QString& text, double widthMm, double points, bool bold, int most)
{
    QStringList lines;
    QString line;
    QStringList words = text.split(QLatin1Char(' '), Qt::SkipEmptyParts);
    while (!words.isEmpty()) {
        const QString longer = line.isEmpty() ? words.front() : line + QLatin1Char(' ') + words.front();
        if (textWidthMm(longer, points, bold) <= widthMm) {
            line = longer;
            words.removeFirst();
            continue;
        }
        if (!line.isEmpty() && lines.size() + 1 == most) {
            lines += shortenText(line + QLatin1Char(' ') + words.join(QLatin1Char(' ')), widthMm, points, bold);
            return lines;
        }
        if (line.isEmpty()) {
            const qsizetype fits = fittingLength(words.front(), widthMm, points, bold);
            line = words.front().left(fits);
            words.front().remove(0, fits);
            if (words.front().isEmpty()) words.removeFirst();
        }
        lines += line;
        line.clear();
        if (lines.size() == most && !words.isEmpty()) {
            lines.back() = shortenText(lines.back() + words.join(QLatin1Char(' ')), widthMm, points, bold);
            return lines;
        }
    }
    if (!line.isEmpty()) lines += line;
    return lines;
}

}  // namespace steelyard
