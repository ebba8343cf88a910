#include "ui/pages/block/beside_week.h"

#include "core/book/book.h"
#include "ui/shell/theme.h"
#include "ui/widgets/words.h"

#include <QtGui/QKeyEvent>
#include <QtWidgets/QHeaderView>
#include <QtWidgets/QLabel>
#include <QtWidgets/QTreeWidget>

#include <algorithm>

namespace steelyard {

namespace {

constexpr int kWholeLines = 3;

}  // namespace

BesideWeek::BesideWeek(const UiContext& context, QWidget* parent)
    : QWidget(parent), m_context(context), m_words(plainWords(this))
{
    connect(this, &BesideWeek::left, this, &BesideWeek::dropAnswer);
}

BesideWeek::~BesideWeek()
{
    m_job.cancel();
}

QString BesideWeek::words() const
{
    return m_words->text();
}

void BesideWeek::say(const QString& text, bool isProblem)
{
    QPalette colours = m_words->palette();
    colours.setColor(QPalette::WindowText,
                     isProblem ? themeColours(palette()).alarm : palette().color(QPalette::WindowText));
    m_words->setPalette(colours);
    m_words->setText(text);
}

void BesideWeek::dropAnswer()
{
    m_job.cancel();
    ++m_asked;
}

bool BesideWeek::isAsInBook(Id<Athlete> athlete, const Row<Block>& block)
{
    const auto now = m_context.book.blocks().of(athlete);
    if (now && std::ranges::find(*now, block) != now->end()) return true;
    say(now ? tr("The plan has changed meanwhile, nothing was written. Escape leaves; ask again then.")
            : now.error().what,
        true);
    return false;
}

QLabel* BesideWeek::wholeText(QTreeWidget* tree, int column)
{
    QLabel* label = plainWords(this);
    label->setObjectName(QStringLiteral("wholeText"));
    label->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    label->setMinimumHeight(kWholeLines * fontMetrics().lineSpacing());
    connect(tree, &QTreeWidget::currentItemChanged, label, [label, column](const QTreeWidgetItem* now) {
        label->setText(!now ? QString() : now->isFirstColumnSpanned() ? now->text(0) : now->text(column));
    });
    return label;
}

void BesideWeek::shareWidth(QTreeWidget* tree)
{
    const int most = tree->viewport()->width() / 2;
    tree->header()->setSectionResizeMode(0, QHeaderView::Interactive);
    tree->resizeColumnToContents(0);
    tree->setColumnWidth(0, std::min(most, tree->columnWidth(0)));
}

bool BesideWeek::event(QEvent* event)
{
    // Escape leaves this, not the page.
    if (event->type() == QEvent::ShortcutOverride && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        event->accept();
        return true;
    }
    return QWidget::event(event);
}

void BesideWeek::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
        return goOn(event->modifiers().testFlag(Qt::ControlModifier));
    if (event->key() == Qt::Key_Escape) return Q_EMIT left({});
    QWidget::keyPressEvent(event);
}

}  // namespace steelyard
