#include "ui/pages/lifter/line_numbers.h"

#include "ui/format/format.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct NumberText {
    Q_DECLARE_TR_FUNCTIONS(NumberText)
};

}  // namespace

std::array<LineNumber, 3> lineNumbers(const LineReading& reading, MassUnit unit)
{
    const QString none = NumberText::tr("the record can’t say yet");
    LineNumber rate{NumberText::tr("Change a week"), format::absent(), none};
    if (reading.rate) {
        rate.value = format::signedPercent(reading.rate->perWeek, 2);
        rate.detail =
            NumberText::tr("90 %: %1 to %2")
                .arg(format::signedPercent(reading.rate->low90, 2), format::signedPercent(reading.rate->high90, 2));
    }
    LineNumber capacity{NumberText::tr("Capacity, as one repetition"), format::absent(), none};
    if (reading.capacity) {
        capacity.value = format::mass(reading.capacity->kg, unit);
        capacity.detail =
            NumberText::tr("90 %: %1 to %2")
                .arg(format::mass(reading.capacity->low90Kg, unit), format::mass(reading.capacity->high90Kg, unit));
    }
    LineNumber next{NumberText::tr("Next first set"), format::absent(), none};
    if (reading.next) {
        next.value = NumberText::tr("%1 × %2").arg(format::load(reading.next->load),
                                                   format::number(reading.next->repsMedian, 0));
        next.detail = NumberText::tr("with %1 in reserve; 80 %: %2 to %3 reps")
                          .arg(QString::number(reading.next->repsInReserve), format::number(reading.next->repsLow80, 0),
                               format::number(reading.next->repsHigh80, 0));
    }
    return {rate, capacity, next};
}

}  // namespace steelyard
