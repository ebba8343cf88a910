#include "ui/shell/caution_choice.h"

#include "core/edits/edits.h"
#include "core/flags/reading_thresholds.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct CautionText {
    Q_DECLARE_TR_FUNCTIONS(CautionText)
};

QString sentenceOf(Caution caution)
{
    switch (caution) {
    case Caution::Sooner:
        return CautionText::tr("Stalls are said sooner, with up to twice as many false alarms.");
    case Caution::Usual:
        return CautionText::tr("Stalls are said as usual.");
    case Caution::Surer:
        return CautionText::tr(
            "Stalls are said when surer: a week or more later, with half to two thirds of the false alarms.");
    }
    return {};
}

}  // namespace

Caution chosenCaution(const Book& book)
{
    return readingThresholds(book.ruleSettings().all().value_or(RuleSettings())).caution;
}

Result<QString> chooseCaution(Book& book, Caution caution)
{
    STEELYARD_CHECK(book.history().perform(
        setRuleThreshold(QStringLiteral("stalled"), QStringLiteral("caution"), static_cast<double>(caution))));
    return sentenceOf(caution);
}

}  // namespace steelyard
