// The parts of a progress chart's content that are built one by one; buildProgressSpec (progress_spec.h) calls them in
// order. Each reads what the earlier ones put into the spec and adds its own.
#pragma once

#include "ui/charts/progress_spec.h"

namespace steelyard {

inline constexpr double kLeastRepReach = 10;  // fewer repetitions away from the usual are training; our convention

// Numbers and dates as the chart writes them.
class ProgressWords {
public:
    explicit ProgressWords(const ProgressOptions& options) : m_options(options) {}
    [[nodiscard]] double shown(double kilograms) const;  // in the options' unit
    [[nodiscard]] QString number(double value, int decimals) const
    {
        return m_options.locale.toString(value, 'f', decimals);
    }
    [[nodiscard]] QString date(QDate day) const { return m_options.locale.toString(day, QLocale::ShortFormat); }
    [[nodiscard]] QString unit() const { return toText(m_options.unit); }
    [[nodiscard]] QString mass(double kilograms) const { return number(shown(kilograms), 1) + u' ' + unit(); }
    // The decimals that it was typed in; the unit only where it isn't the options'.
    [[nodiscard]] QString load(const Load& load) const;

private:
    const ProgressOptions& m_options;
};

// These need the points.
void addSetMarks(const ProgressSource& source, ProgressSpec& spec);
void addLoadSeries(const ProgressSource& source, const ProgressWords& words, ProgressSpec& spec);
void addFan(const ProgressSource& source, const ProgressWords& words, ProgressSpec& spec);
// Needs the joined points, the trend and the blocks.
void addRealChange(const ProgressWords& words, ProgressSpec& spec);
void addBlockSpans(const ProgressSource& source, const ProgressWords& words, ProgressSpec& spec);
void addLayoffs(const ProgressSource& source, const ProgressWords& words, int layoffDays, ProgressSpec& spec);
void addDecisionTicks(const ProgressSource& source, const ProgressWords& words, ProgressSpec& spec);
// Needs the time axis.
void addTrialTicks(const ProgressSource& source, const ProgressWords& words, ProgressSpec& spec);
void addNotes(const ProgressSource& source, const ProgressWords& words, ProgressSpec& spec);
void addReadouts(const ProgressSource& source, const ProgressWords& words, ProgressSpec& spec);
// The sessions as rows; `against` says on which side of the smallest change a session lies.
void addTable(const ProgressSource& source, const ProgressWords& words, ProgressSpec& spec);

}  // namespace steelyard
