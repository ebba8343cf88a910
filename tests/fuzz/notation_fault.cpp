#include "core/keying/repetition_notation.h"
#include "core/keying/set_notation.h"
#include "core/keying/slot_notation.h"
#include "tests/fuzz/faults_of_input.h"

#include <cstring>

namespace steelyard::test {
namespace {

std::string misplaced(const NotationProblem& problem, QStringView line)
{
    if (problem.text.isEmpty()) return "a problem without words";
    if (problem.at < 0 || problem.length < 0 || problem.at + problem.length > line.size())
        return "a problem beside the line: " + std::to_string(problem.at) + '+' + std::to_string(problem.length);
    return {};
}

std::string faultOfLine(QStringView line, const NotationContext& context)
{
    const auto reading = readSet(line, context);
    if (!reading) return misplaced(reading.error(), line);
    if (const Problems problems = validate(*reading); !problems.empty())
        return "a set that is none: " + problems.front().text.toStdString();
    const QString written = writeSet(*reading, context.unit, context.kind);
    const auto again = readSet(written, {std::nullopt, context.unit, context.kind});
    if (!again)
        return "written as “" + written.toStdString() + "”, which is refused: " + again.error().text.toStdString();
    if (*again != *reading) return "written as “" + written.toStdString() + "”, which is another set";
    const auto parts = splitSets(written);
    if (parts.size() != 1) return "written as more than one set: " + written.toStdString();
    const auto part = readSet(parts.front(), {std::nullopt, context.unit, context.kind});
    return part && *part == *reading ? std::string() : "cut off when lines are split: " + written.toStdString();
}

std::string faultOfParts(QStringView line)
{
    const QChar* end = line.data();
    for (const QStringView part : splitSets(line)) {
        if (part.isEmpty()) return "an empty part";
        if (part.data() < end || part.data() + part.size() > line.data() + line.size()) return "parts out of order";
        end = part.data() + part.size();
    }
    return {};
}

std::string faultOfRepetitions(QStringView line, const RepetitionLineContext& context)
{
    const auto reading = readRepetitionLine(line, context);
    if (!reading) return misplaced(reading.error(), line);
    if (const Problems problems = validate(*reading); !problems.empty())
        return "repetitions that are none: " + problems.front().text.toStdString();
    const QString written = writeRepetitionLine(*reading);
    const auto again = readRepetitionLine(written, context);
    if (!again) return "written as “" + written.toStdString() + "”, which is refused";
    return *again == *reading ? std::string() : "written as “" + written.toStdString() + "”, which is another";
}

std::string faultOfDose(QStringView line, MassUnit unit)
{
    const Slot plain{.variant = Id<Variant>(1), .grip = Id<Grip>(1), .standard = Id<RepStandard>(1)};
    const auto reading = readDose(line, plain, unit);
    if (!reading) return misplaced(reading.error(), line);
    const QString written = writeDose(*reading, unit);
    const auto again = readDose(written, plain, unit);
    if (!again) return "written as “" + written.toStdString() + "”, which is refused";
    return *again == *reading ? std::string() : "written as “" + written.toStdString() + "”, which is another dose";
}

}  // namespace

std::string notationFault(const QByteArray& input)
{
    if (input.isEmpty()) return {};
    const auto choice = static_cast<unsigned char>(input.front());
    NotationContext context;
    if (choice & 1U) context.load = Load::make(Decimal(40), MassUnit::kg);
    context.unit = choice & 2U ? MassUnit::lb : MassUnit::kg;
    context.kind = static_cast<SetKind>((choice >> 2U) & 3U);
    QString text;
    if (choice & 16U) {
        // As it comes, broken pairs of surrogates included: a clipboard may hold them.
        text.resize((input.size() - 1) / 2);
        std::memcpy(text.data(), input.constData() + 1, static_cast<std::size_t>(text.size()) * 2);
    } else {
        text = QString::fromUtf8(QByteArrayView(input).sliced(1));
    }
    RepetitionLineContext standard;
    if (choice & 32U) standard = {FullTravel{.mm = 500, .repetitions = 9}, 90};
    if (std::string fault = faultOfRepetitions(text, standard); !fault.empty()) return fault;
    if (std::string fault = faultOfDose(text, context.unit); !fault.empty()) return fault;
    if (std::string fault = faultOfLine(text, context); !fault.empty()) return fault;
    if (std::string fault = faultOfParts(text); !fault.empty()) return fault;
    for (const QStringView part : splitSets(text))
        if (std::string fault = faultOfLine(part, context); !fault.empty()) return fault;
    return {};
}

}  // namespace steelyard::test
