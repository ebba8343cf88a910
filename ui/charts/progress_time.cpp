#include "ui/charts/progress_parts.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct TimeText {
    Q_DECLARE_TR_FUNCTIONS(TimeText)
};

// Within the time axis; nothing when it lies outside.
void addSpan(std::vector<BlockSpan>& spans, const ProgressSpec& spec, BlockSpan span)
{
    span.from = std::max(span.from, spec.from);
    span.to = std::min(span.to, spec.to);
    if (span.from <= span.to) spans.push_back(std::move(span));
}

QString decisionLabel(const Decision& decision, const ProgressWords& words)
{
    QString label;
    switch (decision.kind) {
    case DecisionKind::Act:
        label = TimeText::tr("acted");
        break;
    case DecisionKind::Watch:
        label =
            decision.until ? TimeText::tr("watch until %1").arg(words.date(*decision.until)) : TimeText::tr("watch");
        break;
    case DecisionKind::Dismiss:
        label = TimeText::tr("dismissed");
        break;
    }
    return decision.reason.isEmpty() ? label : TimeText::tr("%1: %2").arg(label, decision.reason);
}

}  // namespace

void addBlockSpans(const ProgressSource& source, const ProgressWords& words, ProgressSpec& spec)
{
    for (const Row<Block>& row : source.blocks) {
        const Block& block = row.value;
        const auto weeks = static_cast<qint64>(block.weeks.size());
        if (weeks == 0) continue;
        const QDate last = block.start.addDays(7 * weeks - 1);
        QString tip = TimeText::tr("%1: %2 to %3, %n week(s)", nullptr, static_cast<int>(weeks))
                          .arg(block.name, words.date(block.start), words.date(last));
        if (!block.aim.isEmpty()) tip += u'\n' + block.aim;
        addSpan(spec.blocks, spec, {block.start, last, block.name, false, tip});
        for (qint64 week = 0; week < weeks; ++week) {
            if (block.weeks[static_cast<std::size_t>(week)].kind != WeekKind::Deload) continue;
            const QDate monday = block.start.addDays(7 * week);
            addSpan(spec.blocks, spec,
                    {monday, monday.addDays(6), TimeText::tr("deload"), true,
                     TimeText::tr("Deload week of %1, in %2").arg(words.date(monday), block.name)});
        }
    }
}

void addLayoffs(const ProgressSource& source, const ProgressWords& words, int layoffDays, ProgressSpec& spec)
{
    QDate last;
    for (const ReadingPoint& point : source.reading.points) {
        const qint64 days = last.isValid() ? last.daysTo(point.date) : 0;
        if (days > layoffDays)
            addSpan(spec.layoffs, spec,
                    {last.addDays(1), point.date.addDays(-1),
                     TimeText::tr("%n day(s) off", nullptr, static_cast<int>(days) - 1), false,
                     TimeText::tr("No session of this line between %1 and %2: %n day(s)", nullptr,
                                  static_cast<int>(days) - 1)
                         .arg(words.date(last), words.date(point.date))});
        last = point.date;
    }
}

void addDecisionTicks(const ProgressSource& source, const ProgressWords& words, ProgressSpec& spec)
{
    for (const Row<Decision>& row : source.decisions) {
        const Decision& decision = row.value;
        if (decision.madeOn < spec.from || decision.madeOn > spec.to) continue;
        if (decision.line && decision.line != source.line) continue;
        const QString label = decisionLabel(decision, words);
        QString tip = TimeText::tr("%1: %2").arg(words.date(decision.madeOn), label);
        if (!decision.said.isEmpty()) tip += u'\n' + decision.said;
        spec.decisions.push_back({decision.madeOn, decision.kind, label, tip});
    }
}

void addTrialTicks(const ProgressSource& source, const ProgressWords& words, ProgressSpec& spec)
{
    if (!source.trials || !source.record) return;
    const LiftLine& line = source.record->line;
    const auto isOfLine = [&](const TrialArm& arm) {
        return arm.variant == line.variant && arm.grip == line.grip && arm.standard == line.standard;
    };
    for (const Row<Trial>& row : *source.trials)
        for (const TrialDay& day : row.value.days) {
            if (day.missed || day.date < spec.from || day.date > spec.to) continue;
            const std::size_t arm = day.armDone.value_or(day.arm);
            const bool wasHeld = std::ranges::find(source.record->exposures, day.date, &Exposure::date)
                                 != source.record->exposures.end();
            if (arm >= row.value.arms.size() || !isOfLine(row.value.arms[arm]) || !wasHeld) continue;
            QString tip = TimeText::tr("%1: arm %2 of the trial “%3”")
                              .arg(words.date(day.date), armLetter(arm), row.value.question);
            if (day.block == 0) tip += TimeText::tr(", getting used to it");
            spec.trials.push_back({day.date, armLetter(arm), day.block > 0, tip});
        }
    std::ranges::stable_sort(spec.trials, {}, &TrialTick::date);
}

}  // namespace steelyard
