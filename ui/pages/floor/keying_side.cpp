#include "ui/pages/floor/keying_side.h"

#include "ui/print/sheet_trial_words.h"
#include "ui/print/sheet_words.h"
#include "ui/shell/theme.h"

#include <QtGui/QPainter>
#include <QtWidgets/QLabel>
#include <QtWidgets/QVBoxLayout>

namespace steelyard {
namespace {

QLabel* addLabel(QVBoxLayout* column, QWidget* parent)
{
    auto* label = new QLabel(parent);
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    label->setTextInteractionFlags(Qt::NoTextInteraction);
    column->addWidget(label);
    return label;
}

QString standardWords(const SheetExercise& exercise)
{
    SheetExercise one = exercise;
    QStringList lines;
    for (const RepCue& cue : exercise.cues) {
        one.cues = {cue};
        lines += cueWords(one);
    }
    if (lines.isEmpty()) return KeyingSide::tr("The rep standard “%1” has no cues yet.").arg(exercise.standard);
    return KeyingSide::tr("A repetition counts when:") + u'\n' + lines.join(u'\n');
}

}  // namespace

KeyingSide::KeyingSide(QWidget* parent) : QWidget(parent)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(12, 8, 12, 8);
    column->setSpacing(10);
    m_name = addLabel(column, this);
    QFont bold = font();
    bold.setBold(true);
    m_name->setFont(bold);
    m_standard = addLabel(column, this);
    m_plan = addLabel(column, this);
    QPalette quiet = palette();
    quiet.setColor(QPalette::WindowText, themeColours(palette()).quiet);
    m_plan->setPalette(quiet);
    column->addStretch(1);
}

void KeyingSide::showExercise(const SheetExercise& exercise)
{
    m_name->setText(exercise.exercise);
    m_standard->setText(standardWords(exercise));
    QStringList plan{trialWords(exercise), trialAskWords(exercise), detailOf(exercise),       toBeatWords(exercise),
                     whyWords(exercise),   noteWords(exercise),     coachNotesWords(exercise)};
    plan.removeAll(QString());
    m_plan->setText(plan.join(QStringLiteral("\n\n")));
}

void KeyingSide::showHead(const std::optional<SessionSheet>& sheet)
{
    m_name->setText(sheet ? tr("The sheet") : tr("No sheet"));
    QStringList words;
    if (sheet) {
        for (const SheetCaution& caution : sheet->cautions) words += cautionWords(caution);
        for (const CoachNote& note : sheet->coachNotes) words += coachNoteWords(note);
    }
    m_standard->setText(words.join(QStringLiteral("\n\n")));
    m_plan->setText(sheet ? headOf(*sheet) : QString());
}

void KeyingSide::paintEvent(QPaintEvent* event)
{
    Q_UNUSED(event)
    QPainter(this).fillRect(0, 8, 1, height() - 8, themeColours(palette()).hairline);
}

}  // namespace steelyard
