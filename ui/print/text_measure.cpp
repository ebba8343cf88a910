#include "ui/print/text_measure.h"

#include "ui/print/fonts.h"

#include <QtCore/QHash>
#include <QtGui/QFontMetricsF>

#include <cmath>
#include <map>
#include <utility>

namespace steelyard {
namespace {

constexpr double kNarrowUpToPoints = 10;
constexpr int kNarrowPercent = 90;

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

// Widths that were measured: sheets say the same words again and again, and setting them is what measuring costs. Plain numbers, so
// that nothing of Qt is taken down after the application.
class WidthMemory {
public:
    double of(const QString& text, double points, bool bold)
    {
        auto& widths = m_widths[{points, bold}];
        const auto known = widths.constFind(text);
        if (known != widths.constEnd()) return *known;
        if (widths.size() > kMostWidths) widths.clear();
        const double width = QFontMetricsF(sheetFont(points, bold)).horizontalAdvance(text) / kTypeUnitsPerMm;
        widths.insert(text, width);
        return width;
    }

private:
    static constexpr qsizetype kMostWidths = 20'000;
    std::map<std::pair<double, bool>, QHash<QString, double>> m_widths;
};

// Takes lines off a text. Words are measured once and summed, because measuring every longer line anew costs the square of its
// length; what was summed is measured whole at the end, as a space may be set a little wider between some letters.
class LineBreaker {
public:
    LineBreaker(const QString& text, double widthMm, double points, bool bold)
        : m_words(text.split(QLatin1Char(' '), Qt::SkipEmptyParts)),
          m_width(widthMm),
          m_points(points),
          m_bold(bold),
          m_space(widthOf(QStringLiteral(" ")))
    {}

    [[nodiscard]] bool atEnd() const { return m_next == m_words.size(); }
    [[nodiscard]] QString rest() const { return m_words.mid(m_next).join(QLatin1Char(' ')); }

    [[nodiscard]] QString nextLine()
    {
        qsizetype end = m_next;
        double width = 0;
        while (end < m_words.size()) {
            const double more = widthOf(m_words[end]) + (end == m_next ? 0 : m_space);
            if (width + more > m_width) break;
            width += more;
            ++end;
        }
        QString line = joined(end);
        while (end > m_next + 1 && widthOf(line) > m_width) line = joined(--end);
        if (end == m_next) return brokenWord();
        m_next = end;
        return line;
    }

private:
    [[nodiscard]] double widthOf(const QString& text) const { return textWidthMm(text, m_points, m_bold); }
    [[nodiscard]] QString joined(qsizetype end) const
    {
        return m_words.mid(m_next, end - m_next).join(QLatin1Char(' '));
    }
    // A word that is wider than a line.
    [[nodiscard]] QString brokenWord()
    {
        QString& word = m_words[m_next];
        qsizetype fits = 1;
        while (fits < word.size() && widthOf(word.left(fits + 1)) <= m_width) ++fits;
        const QString line = word.left(fits);
        word.remove(0, fits);
        if (word.isEmpty()) ++m_next;
        return line;
    }

    QStringList m_words;
    double m_width;
    double m_points;
    bool m_bold;
    double m_space;
    qsizetype m_next = 0;
};

}  // namespace

QFont sheetFont(double points, bool bold)
{
    QFont font(sheetFontFamily());
    font.setPixelSize(static_cast<int>(std::lround(points / 72.0 * kTypeUnitsPerInch)));
    font.setBold(bold);
    // Small print is set a tenth narrower: the height is what the eye needs, and a line holds more.
    if (!bold && points <= kNarrowUpToPoints) font.setStretch(kNarrowPercent);
    font.setHintingPreference(QFont::PreferNoHinting);
    return font;
}

double textWidthMm(const QString& text, double points, bool bold)
{
    thread_local WidthMemory memory;
    return memory.of(text, points, bold);
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
    LineBreaker breaker(text, widthMm, points, bold);
    QStringList lines;
    while (!breaker.atEnd()) {
        if (lines.size() + 1 == most) {
            lines += shortenText(breaker.rest(), widthMm, points, bold);
            break;
        }
        lines += breaker.nextLine();
    }
    return lines;
}

}  // namespace steelyard
