#include "core/flags/actions.h"
#include "ui/format/format.h"

#include "core/domain/joint_words.h"

#include <QtCore/QCoreApplication>

namespace steelyard::format {
namespace {

struct WordText {
    Q_DECLARE_TR_FUNCTIONS(WordText)
};

}  // namespace

QString verdictWord(Verdict verdict)
{
    switch (verdict) {
    case Verdict::Progressing:
        return WordText::tr("progressing");
    case Verdict::Holding:
        return WordText::tr("holding");
    case Verdict::Stalled:
        return WordText::tr("stalled");
    case Verdict::Slipping:
        return WordText::tr("slipping");
    case Verdict::CantTell:
        return WordText::tr("can't tell");
    }
    return {};
}

QString verdictShape(Verdict verdict)
{
    switch (verdict) {
    case Verdict::Progressing:
        return QStringLiteral("▲");
    case Verdict::Holding:
        return QStringLiteral("■");
    case Verdict::Stalled:
        return QStringLiteral("◆");
    case Verdict::Slipping:
        return QStringLiteral("▼");
    case Verdict::CantTell:
        return QStringLiteral("○");
    }
    return {};
}

QString severityWord(Severity severity)
{
    switch (severity) {
    case Severity::Low:
        return WordText::tr("later");
    case Severity::Medium:
        return WordText::tr("this week");
    case Severity::High:
        return WordText::tr("first");
    }
    return {};
}

QString decisionWord(DecisionKind kind)
{
    switch (kind) {
    case DecisionKind::Act:
        return WordText::tr("acted");
    case DecisionKind::Watch:
        return WordText::tr("watching");
    case DecisionKind::Dismiss:
        return WordText::tr("dismissed");
    }
    return {};
}

QString decisionAnswer(const Decision& decision)
{
    QString text = decisionWord(decision.kind);
    if (decision.until) text = WordText::tr("%1 until %2").arg(text, date(*decision.until));
    if (!decision.action.isEmpty()) text = WordText::tr("%1: %2").arg(text, actionLabel(decision.action));
    if (!decision.reason.isEmpty()) text = WordText::tr("%1 (%2)").arg(text, decision.reason);
    return text;
}

QString markWord(Mark mark)
{
    switch (mark) {
    case Mark::ShortBottom:
        return WordText::tr("short at the bottom");
    case Mark::ShortTop:
        return WordText::tr("short at the top");
    case Mark::Swing:
        return WordText::tr("body swing");
    case Mark::Dropped:
        return WordText::tr("dropped lowering");
    case Mark::Lean:
        return WordText::tr("lean changed");
    case Mark::Assisted:
        return WordText::tr("assisted");
    }
    return {};
}

QString jointWord(Joint joint)
{
    return jointName(joint);
}

QString setKindWord(SetKind kind)
{
    switch (kind) {
    case SetKind::Work:
        return WordText::tr("working set");
    case SetKind::WarmUp:
        return WordText::tr("warm-up");
    case SetKind::Deload:
        return WordText::tr("deload");
    case SetKind::Test:
        return WordText::tr("test");
    }
    return {};
}

QString severityShape(std::optional<Severity> severity)
{
    if (!severity) return QStringLiteral("·");
    switch (*severity) {
    case Severity::Low:
        return QStringLiteral("○");
    case Severity::Medium:
        return QStringLiteral("◐");
    case Severity::High:
        return QStringLiteral("●");
    }
    return {};
}

QString plainToolTip(const QString& text)
{
    if (text.isEmpty()) return {};
    return QStringLiteral("<p style=\"white-space: pre-wrap\">") + text.toHtmlEscaped() + QStringLiteral("</p>");
}

}  // namespace steelyard::format
