#include "core/keying/slot_notation.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QRegularExpression>

namespace steelyard {
namespace {

struct SlotNotationText {
    Q_DECLARE_TR_FUNCTIONS(SlotNotationText)
};

constexpr int kSecondsOfAMinute = 60;
constexpr QChar kNoteBegins = u'"';

QRegularExpressionMatch matchWhole(const char* pattern, QStringView text)
{
    const QRegularExpression expression(QRegularExpression::anchoredPattern(QString::fromUtf8(pattern)),
                                        QRegularExpression::CaseInsensitiveOption);
    return expression.match(text.toString());
}

QString noteFrom(QStringView written)
{
    QString note;
    for (qsizetype i = 0; i < written.size(); ++i) {
        const bool escaped = written[i] == u'\\' && i + 1 < written.size();
        if (escaped) ++i;
        note += escaped && written[i] == u'n' ? QChar(u'\n') : written[i];
    }
    return note;
}

QString noteWritten(QString note)
{
    note.replace(u'\\', QStringLiteral("\\\\"));
    return note.replace(u'\n', QStringLiteral("\\n"));
}

enum class DosePart { Sets, Reserve, Load, Rest };

class DoseReader {
public:
    DoseReader(QStringView line, const Slot& slot, MassUnit unit) : m_line(line), m_slot(slot), m_unit(unit) {}

    [[nodiscard]] DoseReading read()
    {
        m_slot.plannedRir.reset();
        m_slot.load.reset();
        m_slot.restSeconds.reset();
        m_slot.note.clear();
        qsizetype at = 0;
        while (at < m_line.size() && !m_problem) {
            if (m_line[at].isSpace()) {
                ++at;
                continue;
            }
            if (m_line[at] == kNoteBegins) {
                m_slot.note = noteFrom(m_line.mid(at + 1));
                break;
            }
            qsizetype end = at;
            while (end < m_line.size() && !m_line[end].isSpace() && m_line[end] != kNoteBegins) ++end;
            readWord(at, m_line.mid(at, end - at));
            at = end;
        }
        if (m_problem) return tl::unexpected(*m_problem);
        return m_slot;
    }

private:
    void stop(qsizetype at, QStringView word, const QString& text)
    {
        m_problem = NotationProblem{at, word.size(), text};
    }
    void readWord(qsizetype at, QStringView word)
    {
        const auto part = take(word);
        if (!part) return stop(at, word, SlotNotationText::tr("Type a dose such as 3x8-12 rir2 42.5 120s."));
        if (m_seen[static_cast<std::size_t>(*part)]) return stop(at, word, SlotNotationText::tr("This stands twice."));
        m_seen[static_cast<std::size_t>(*part)] = true;
    }
    std::optional<DosePart> take(QStringView word)
    {
        if (takeSets(word)) return DosePart::Sets;
        if (const auto rest = readRest(word)) {
            m_slot.restSeconds = rest;
            return DosePart::Rest;
        }
        if (const auto reserve = matchWhole("rir(\\d{1,2}(?:[.,]\\d)?)", word); reserve.hasMatch()) {
            m_slot.plannedRir = Decimal::parse(QStringView(reserve.captured(1).replace(u',', u'.')));
            return DosePart::Reserve;
        }
        if (takeLoad(word)) return DosePart::Load;
        return std::nullopt;
    }
    bool takeSets(QStringView word)
    {
        const auto found = matchWhole("(?:(\\d{1,2})[x×*])?(\\d{1,3}(?:[-–]\\d{1,3})?)?", word);
        const bool hasSets = found.hasMatch() && !found.captured(1).isEmpty();
        const bool isRange = found.captured(2).contains(u'-') || found.captured(2).contains(u'–');
        if (!hasSets && !isRange) return false;  // a number alone is a load
        if (hasSets) m_slot.sets = found.captured(1).toInt();
        if (const auto band = readBand(found.captured(2))) m_slot.band = *band;
        return true;
    }
    bool takeLoad(QStringView word)
    {
        const auto found = matchWhole("(\\d{1,4}(?:[.,]\\d{1,3})?)(kg|lbs?)?", word);
        if (!found.hasMatch()) return false;
        const MassUnit said = found.captured(2).isEmpty()                               ? m_unit
                              : found.captured(2).startsWith(u'k', Qt::CaseInsensitive) ? MassUnit::kg
                                                                                        : MassUnit::lb;
        m_slot.load = Load::parse(QStringView(found.captured(1).replace(u',', u'.')), said);
        return m_slot.load.has_value();
    }

    QStringView m_line;
    Slot m_slot;
    MassUnit m_unit;
    std::array<bool, 4> m_seen{};
    std::optional<NotationProblem> m_problem;
};

}  // namespace

std::optional<RepBand> readBand(QStringView text)
{
    const auto found = matchWhole("(\\d{1,3})(?:[-–](\\d{1,3}))?", text.trimmed());
    if (!found.hasMatch()) return std::nullopt;
    const int low = found.captured(1).toInt();
    return RepBand{low, found.captured(2).isEmpty() ? low : found.captured(2).toInt()};
}

std::optional<int> readRest(QStringView text)
{
    const auto found = matchWhole("(\\d{1,4})(s|min)", text.trimmed());
    if (!found.hasMatch()) return std::nullopt;
    return found.captured(1).toInt()
           * (found.captured(2).startsWith(u's', Qt::CaseInsensitive) ? 1 : kSecondsOfAMinute);
}

QString writeBand(const RepBand& band)
{
    if (band.low == band.high) return QString::number(band.low);
    return QStringLiteral("%1-%2").arg(QString::number(band.low), QString::number(band.high));
}

QString writePlainLoad(const Load& load, MassUnit usual)
{
    QString amount = load.amount().toString();
    if (load.unit() == usual) return amount;
    return amount + (load.unit() == MassUnit::kg ? QStringLiteral("kg") : QStringLiteral("lb"));
}

DoseReading readDose(QStringView line, const Slot& slot, MassUnit unit)
{
    return DoseReader(line, slot, unit).read();
}

QString writeDose(const Slot& slot, MassUnit usual)
{
    QStringList words{QString::number(slot.sets) + u'x' + writeBand(slot.band)};
    if (slot.plannedRir) words << QStringLiteral("rir") + slot.plannedRir->toString();
    if (slot.load) words << writePlainLoad(*slot.load, usual);
    if (slot.restSeconds) words << QString::number(*slot.restSeconds) + u's';
    if (!slot.note.isEmpty()) words << kNoteBegins + noteWritten(slot.note);
    return words.join(u' ');
}

}  // namespace steelyard
