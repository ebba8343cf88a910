#include "ui/pages/block/done_words.h"

#include "ui/format/format.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct DoneText {
    Q_DECLARE_TR_FUNCTIONS(DoneText)
};

QString sharesWords(const Adherence& done)
{
    QStringList parts;
    if (const auto share = done.sessionShare())
        parts << DoneText::tr("%1 of the sessions").arg(format::percent(*share));
    if (const auto share = done.setShare()) parts << DoneText::tr("%1 of the sets").arg(format::percent(*share));
    if (const auto share = done.targetShare())
        parts << DoneText::tr("%1 of those on target").arg(format::percent(*share));
    return parts.join(QStringLiteral(", "));
}

}  // namespace

QString sessionsDoneWords(const Adherence& done)
{
    if (done.expectedSessions == 0) return {};
    return DoneText::tr("%1 of %n session(s)", nullptr, done.expectedSessions).arg(done.doneSessions);
}

QString setsDoneWords(const Adherence& done)
{
    if (done.expectedSets == 0) return {};
    return DoneText::tr("%1 of %n set(s)", nullptr, done.expectedSets).arg(done.doneSets);
}

QString besideWords(const Adherence& week, const Adherence& block)
{
    QStringList sentences;
    QStringList parts{sessionsDoneWords(week), setsDoneWords(week)};
    if (week.doneSets > 0) parts << DoneText::tr("%n of them on target", nullptr, week.targetSets);
    parts.removeAll(QString());
    if (!parts.isEmpty())
        sentences << DoneText::tr("Done of this week's plan: %1.").arg(parts.join(QStringLiteral(", ")));
    const QString shares = sharesWords(block);
    if (!shares.isEmpty()) sentences << DoneText::tr("Of the block so far: %1.").arg(shares);
    return sentences.join(u' ');
}

QString onTargetWords()
{
    return DoneText::tr("On target: with the planned load or more, for at least the low end of the rep band.");
}

}  // namespace steelyard
