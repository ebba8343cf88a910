#include "core/domain/measurement.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct MeasurementText {
    Q_DECLARE_TR_FUNCTIONS(MeasurementText)
};

constexpr double kLeastCentimetres = 5;
constexpr double kMostCentimetres = 300;

}  // namespace

double Measurement::centimetres() const
{
    return value.toDouble() * (unit == TapeUnit::in ? kCentimetresPerInch : 1.0);
}

Problems validate(const Measurement& measured, QDate today)
{
    Problems problems;
    if (!measured.date.isValid() || measured.date > today)
        problems.push_back({QStringLiteral("date"), MeasurementText::tr("The day must be a date up to today.")});
    if (measured.centimetres() < kLeastCentimetres || measured.centimetres() > kMostCentimetres)
        problems.push_back({QStringLiteral("value"),
                            MeasurementText::tr("A length between 5 and 300 cm is needed. Is the unit right?")});
    return problems;
}

}  // namespace steelyard
