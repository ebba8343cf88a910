#include "ui/pages/care/erase_panel.h"

#include "core/base/text.h"
#include "core/care/erasure_words.h"

#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QPlainTextEdit>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QVBoxLayout>

#include <algorithm>

namespace steelyard {
namespace {

QString planWords(const ErasurePlan& plan, const std::vector<CopyFinding>& copies)
{
    QStringList lines{
        ErasePanel::tr("This would go from the book: %1.").arg(erasureLines(plan.counts).join(QStringLiteral(" · ")))};
    lines += ErasePanel::tr("Undo is emptied for everybody, else a step could bring them back: %1 steps.")
                 .arg(plan.stepsForgotten);
    if (!plan.mentions.empty()) {
        lines += ErasePanel::tr("Their name stays where it isn't theirs. Change it there first if it should go:");
        for (const NameMention& mention : plan.mentions) lines += QStringLiteral("  ") + mentionLine(mention);
    }
    const auto count = [&](CopyState state) { return std::ranges::count(copies, state, &CopyFinding::state); };
    if (count(CopyState::Holds) + count(CopyState::CantTell) == 0)
        lines += ErasePanel::tr("No backup that the program knows of holds them.");
    for (const CopyFinding& copy : copies) {
        if (copy.state == CopyState::Holds) lines += ErasePanel::tr("Still in this copy: %1").arg(copy.path);
        if (copy.state == CopyState::CantTell)
            lines += ErasePanel::tr("Perhaps in this copy, which can't be looked into: %1").arg(copy.path);
    }
    lines += ErasePanel::tr("A backup is made first, for the others' sake; it has them, too, until you delete it.");
    lines += ErasePanel::tr(
        "A backup that is restored later loses them again by itself. Copies and papers that left "
        "this computer are yours to find. A disk may keep what was overwritten; the record is "
        "removed from this book, not destroyed everywhere.");
    return lines.join(u'\n');
}

}  // namespace

ErasePanel::ErasePanel(QWidget* parent)
    : QGroupBox(tr("Erase"), parent),
      m_what(new QPlainTextEdit(this)),
      m_ask(new QLabel(this)),
      m_name(new QLineEdit(this)),
      m_erase(new QPushButton(tr("&Erase for good"), this))
{
    m_what->setReadOnly(true);
    m_what->setFrameShape(QFrame::NoFrame);
    m_what->setTabChangesFocus(true);
    m_what->setAccessibleName(tr("What erasing would take away"));
    m_ask->setTextFormat(Qt::PlainText);
    m_ask->setText(tr("&Type the whole name to erase:"));
    m_ask->setBuddy(m_name);
    m_name->setAccessibleName(tr("Name of the lifter to erase"));
    m_erase->setAutoDefault(false);
    connect(m_name, &QLineEdit::textChanged, this, [this] {
        m_erase->setEnabled(!m_plan.traces.name.isEmpty() && cleanName(m_name->text()) == m_plan.traces.name);
    });
    connect(m_erase, &QPushButton::clicked, this, &ErasePanel::confirmed);
    auto* row = new QHBoxLayout;
    row->addWidget(m_ask);
    row->addWidget(m_name, 1);
    row->addWidget(m_erase);
    auto* all = new QVBoxLayout(this);
    all->addWidget(m_what, 1);
    all->addLayout(row);
    setNobody();
}

void ErasePanel::show(const ErasurePlan& plan, const std::vector<CopyFinding>& copies)
{
    m_plan = plan;
    m_what->setPlainText(planWords(plan, copies));
    m_name->clear();
    m_name->setPlaceholderText(plan.traces.name);
    m_name->setEnabled(true);
    m_erase->setEnabled(false);
}

void ErasePanel::setNobody()
{
    m_plan = {};
    m_what->setPlainText(tr("What erasing takes away stands here before anything happens."));
    m_name->clear();
    m_name->setPlaceholderText({});
    m_name->setEnabled(false);
    m_erase->setEnabled(false);
}

}  // namespace steelyard
