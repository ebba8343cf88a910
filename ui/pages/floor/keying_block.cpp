#include "ui/pages/floor/keying_block.h"

#include "ui/pages/floor/keying_row.h"
#include "ui/pages/floor/rating_row.h"
#include "ui/print/sheet_trial_words.h"
#include "ui/print/sheet_words.h"
#include "ui/shell/theme.h"
#include "ui/widgets/elided_label.h"

#include <QtWidgets/QLabel>
#include <QtWidgets/QVBoxLayout>

namespace steelyard {
namespace {

QString targetWords(const SheetExercise& exercise)
{
    QStringList parts{loadWords(exercise), repsWords(exercise), reserveWords(exercise)};
    parts.removeAll(QString());
    return parts.join(QStringLiteral(" · "));
}

}  // namespace

KeyingBlock::KeyingBlock(const KeyingDesk& desk, std::size_t exercise, QWidget* parent)
    : QWidget(parent), m_desk(desk), m_exercise(exercise), m_lift(desk.exercise(exercise).lift)
{
    const KeyingExercise& shown = desk.exercise(exercise);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 8, 0, 2);
    column->setSpacing(0);
    auto* name = new ElidedLabel(this);
    name->setText(shown.words.exercise);
    QFont bold = font();
    bold.setBold(true);
    name->setFont(bold);
    auto* detail = new ElidedLabel(this);
    QStringList details{trialWordsShort(shown.words), detailOf(shown.words)};
    details.removeAll(QString());
    detail->setText(details.join(QStringLiteral(" · ")));
    auto* target = new QLabel(targetWords(shown.words), this);
    target->setTextFormat(Qt::PlainText);
    QPalette quiet = palette();
    quiet.setColor(QPalette::WindowText, themeColours(palette()).quiet);
    detail->setPalette(quiet);
    auto* head = new QHBoxLayout;
    head->setContentsMargins(10, 0, 8, 3);
    head->setSpacing(10);
    head->addWidget(name, 3);
    head->addWidget(detail, 3);
    head->addWidget(target);
    column->addLayout(head);
    for (std::size_t row = 0; row < shown.rows.size(); ++row) {
        m_rows.push_back(new KeyingRowWidget(this));
        column->addWidget(m_rows.back());
    }
    if (desk.sheet().ratesAfter(exercise)) {
        m_ratings = new RatingRow(afterExercise(shown.words.asksDiscomfort), {}, this);
        const auto* variant = desk.lifter().library.find(shown.lift.variant);
        const auto* trained = variant ? desk.lifter().library.find(variant->value.exercise) : nullptr;
        m_ratings->setMuscles(muscleChoices(desk.lifter().library, trained ? &trained->value : nullptr));
        m_ratings->setAccessibleName(tr("Ratings of %1").arg(shown.words.exercise));
        column->addSpacing(3);
        column->addWidget(m_ratings);
    }
    showDesk();
}

void KeyingBlock::showDesk()
{
    const KeyingExercise& shown = m_desk.exercise(m_exercise);
    for (std::size_t row = 0; row < m_rows.size(); ++row)
        m_rows[row]->show(shown.rows[row], m_desk.lineAt({m_exercise, row}), shown.words.exercise);
    if (m_ratings) m_ratings->setRating(shown.rating);
}

}  // namespace steelyard
