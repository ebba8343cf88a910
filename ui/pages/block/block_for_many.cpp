#include "ui/pages/block/block_for_many.h"

#include "core/book/book.h"
#include "core/edits/edits.h"
#include "ui/format/format.h"
#include "ui/widgets/roomy_rows.h"
#include "ui/format/people.h"

#include <QtWidgets/QComboBox>
#include <QtWidgets/QDateEdit>
#include <QtWidgets/QFormLayout>
#include <QtWidgets/QHeaderView>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QListWidget>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QTreeWidget>
#include <QtWidgets/QVBoxLayout>

#include <algorithm>

namespace steelyard {
namespace {

constexpr int kFormWidth = 320;

enum AnswerColumn { LifterColumn, DaysColumn, LiftsColumn, LoadsColumn, DiffersColumn, AnswerColumns };

// "Mon Wed Fri" of the first week with sessions.
QString dayWords(const Block& block)
{
    QStringList days;
    for (const PlannedWeek& week : block.weeks) {
        for (const PlannedDay& day : week.days) days << QLocale().dayName(day.date.dayOfWeek(), QLocale::ShortFormat);
        if (!days.isEmpty()) break;
    }
    return days.join(u' ');
}

void addLine(QTreeWidgetItem* under, const QString& text)
{
    auto* line = new QTreeWidgetItem(under, {text});
    line->setFirstColumnSpanned(true);
    line->setToolTip(0, format::plainToolTip(text));
}

}  // namespace

BlockForMany::BlockForMany(const UiContext& context, QWidget* parent)
    : BesideWeek(context, parent),
      m_template(new QComboBox(this)),
      m_name(new QLineEdit(this)),
      m_start(new QDateEdit(this)),
      m_lifters(new QListWidget(this)),
      m_answer(new QTreeWidget(this)),
      m_look(new QPushButton(tr("L&ook"), this)),
      m_write(new QPushButton(tr("Wri&te the blocks"), this))
{
    build();
    connect(m_template, &QComboBox::currentIndexChanged, this, &BlockForMany::forgetAnswer);
    connect(m_name, &QLineEdit::textEdited, this, &BlockForMany::forgetAnswer);
    connect(m_start, &QDateEdit::dateChanged, this, &BlockForMany::forgetAnswer);
    connect(m_lifters, &QListWidget::itemChanged, this, &BlockForMany::forgetAnswer);
    connect(m_look, &QPushButton::clicked, this, &BlockForMany::look);
    connect(m_write, &QPushButton::clicked, this, &BlockForMany::write);
}

void BlockForMany::build()
{
    m_template->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_start->setCalendarPopup(true);
    m_start->setDisplayFormat(format::datePattern());
    m_lifters->setAccessibleName(tr("For whom"));
    m_lifters->setTextElideMode(Qt::ElideRight);
    m_answer->setAccessibleName(tr("What each would get"));
    m_answer->setColumnCount(AnswerColumns);
    m_answer->setHeaderLabels({tr("Lifter"), tr("Days"), tr("Lifts"), tr("With a load"), tr("Differs")});
    for (const int column : {LiftsColumn, LoadsColumn, DiffersColumn})
        m_answer->headerItem()->setTextAlignment(column, Qt::AlignRight | Qt::AlignVCenter);
    m_answer->header()->setSectionResizeMode(QHeaderView::ResizeToContents);
    m_answer->setFrameShape(QFrame::NoFrame);
    giveRowsRoom(m_answer);
    giveRowsRoom(m_lifters);
    auto* everybody = new QPushButton(tr("&All or none"), this);
    connect(everybody, &QPushButton::clicked, this, &BlockForMany::tickAll);
    auto* leave = new QPushButton(tr("Leave it"), this);
    connect(leave, &QPushButton::clicked, this, [this] { Q_EMIT left({}); });
    auto* form = new QFormLayout;
    form->addRow(tr("Te&mplate"),
                 m_template);  // a letter to press at the T parts it from its e, and the last one is cut
    form->addRow(tr("&Name"), m_name);
    form->addRow(tr("First &day"), m_start);
    auto* forWhom = new QLabel(tr("For whom (&Space ticks)"), this);
    forWhom->setBuddy(m_lifters);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(m_look);
    buttons->addWidget(everybody);
    buttons->addWidget(leave);
    auto* question = new QWidget(this);
    question->setFixedWidth(kFormWidth);
    auto* left = new QVBoxLayout(question);
    left->setContentsMargins({});
    left->addLayout(form);
    left->addWidget(forWhom);
    left->addWidget(m_lifters, 1);
    left->addLayout(buttons);
    auto* right = new QVBoxLayout;
    right->addWidget(wordsLabel());
    right->addWidget(m_answer, 1);
    right->addWidget(m_write, 0, Qt::AlignLeft);
    auto* whole = new QHBoxLayout(this);
    whole->setContentsMargins(24, 20, 24, 12);
    whole->setSpacing(24);
    whole->addWidget(question);
    whole->addLayout(right, 1);
}

void BlockForMany::open(QDate start)
{
    const QSignalBlocker quietTemplates(m_template);
    const QSignalBlocker quietLifters(m_lifters);
    const QSignalBlocker quietStart(m_start);
    auto templates = context().book.blocks().templates();
    auto athletes = context().book.athletes().all();
    m_template->clear();
    m_lifters->clear();
    m_ids.clear();
    m_templates = templates ? *std::move(templates) : std::vector<Row<BlockTemplate>>();
    for (const Row<BlockTemplate>& row : m_templates) m_template->addItem(row.value.name);
    m_name->setText(m_template->currentText());
    m_start->setDate(start);
    for (const Row<Athlete>& row : athletes ? *athletes : std::vector<Row<Athlete>>()) {
        if (row.value.archived) continue;
        const QString& group = row.value.group;
        const QString name = format::person(row.value.name);
        const QString words = group.isEmpty() ? name : name + QStringLiteral(" · ") + group;
        auto* item = new QListWidgetItem(words, m_lifters);
        item->setToolTip(format::plainToolTip(words));
        item->setCheckState(Qt::Unchecked);
        m_ids.push_back(row.id);
    }
    if (m_lifters->count() > 0) m_lifters->setCurrentRow(0);
    forgetAnswer();
    if (!athletes) say(athletes.error().what, true);
}

void BlockForMany::takeFocus()
{
    m_lifters->setFocus(Qt::ShortcutFocusReason);
}

void BlockForMany::forgetAnswer()
{
    m_fits.clear();
    m_answer->clear();
    m_write->setEnabled(false);
    dropAnswer();
    const bool possible = !m_templates.empty() && !m_ids.empty();
    m_look->setEnabled(possible);
    if (!possible)
        return say(
            tr("There is no template yet. Save the shape of a block as one first; then many lifters can have it, each "
               "with own gym, days and loads."));
    const auto chosen = static_cast<int>(ticked().size());
    say(chosen == 0
            ? tr("Tick who is to have the block. Enter shows what each would get; nothing is written before.")
            : tr("For %n lifter(s). Enter shows what each would get; nothing is written before.", nullptr, chosen));
}

std::vector<Id<Athlete>> BlockForMany::ticked() const
{
    std::vector<Id<Athlete>> athletes;
    for (int row = 0; row < m_lifters->count(); ++row)
        if (m_lifters->item(row)->checkState() == Qt::Checked) athletes.push_back(m_ids[static_cast<std::size_t>(row)]);
    return athletes;
}

void BlockForMany::tickAll()
{
    const bool all = ticked().size() == m_ids.size();
    {
        const QSignalBlocker quiet(m_lifters);
        for (int row = 0; row < m_lifters->count(); ++row)
            m_lifters->item(row)->setCheckState(all ? Qt::Unchecked : Qt::Checked);
    }
    forgetAnswer();
}

void BlockForMany::look()
{
    if (!m_look->isEnabled()) return;
    std::vector<Id<Athlete>> athletes = ticked();
    if (athletes.empty()) return say(tr("Tick who is to have the block: Space on a name."), true);
    forgetAnswer();
    say(tr("Fitting it to %n lifter(s)…", nullptr, static_cast<int>(athletes.size())));
    const TemplateFitsRequest request{
        context().book.path(), m_templates[static_cast<std::size_t>(m_template->currentIndex())].value,
        std::move(athletes),   m_name->text(),
        m_start->date(),       context().clock.today(),
        format::wording()};
    ask(
        tr("Fitting a template"), [request](const Progress& progress) { return readTemplateFits(request, progress); },
        [this](std::vector<LifterFit> fits) { show(std::move(fits)); });
}

void BlockForMany::show(std::vector<LifterFit> fits)
{
    m_fits = std::move(fits);
    m_answer->clear();
    int differing = 0;
    for (const LifterFit& one : m_fits) {
        QStringList lines;
        for (const FitDifference& difference : one.fit.differences) lines << difference.sentence;
        for (const BrokenLimit& limit : one.fit.broken) lines << limit.sentence;
        lines.removeDuplicates();
        differing += lines.isEmpty() ? 0 : 1;
        auto* row = new QTreeWidgetItem(m_answer,
                                        {format::person(one.name), dayWords(one.fit.block), QString::number(one.slots),
                                         QString::number(one.loads), QString::number(lines.size())});
        for (const int column : {LiftsColumn, LoadsColumn, DiffersColumn})
            row->setTextAlignment(column, Qt::AlignRight | Qt::AlignVCenter);
        for (const QString& line : lines) addLine(row, line);
        row->setExpanded(true);
    }
    m_write->setEnabled(!m_fits.empty());
    say(differing == 0 ? tr("Everybody gets it as it is. Ctrl+Enter writes the blocks, one step of the history.")
                       : tr("For %n lifter(s) something differs, as it says below. Ctrl+Enter writes the blocks, one "
                            "step of the history.",
                            nullptr, differing));
    m_answer->setFocus();
}

void BlockForMany::write()
{
    if (!m_write->isEnabled()) return;
    const auto count = static_cast<int>(m_fits.size());
    const auto done = context().book.history().perform(addBlocks(blocksOf(m_fits), m_name->text()));
    if (!done) return say(done.error().what, true);
    Q_EMIT left(tr("%n lifter(s) have the block. Ctrl+Z takes it back whole.", nullptr, count));
}

void BlockForMany::goOn(bool withControl)
{
    if (withControl)
        write();
    else
        look();
}

}  // namespace steelyard
