#include "ui/pages/lifter/line_header.h"

#include "ui/format/format.h"

#include <QtWidgets/QGridLayout>
#include <QtWidgets/QLabel>

namespace steelyard {
namespace {

// Of the width, by number: chances and capacity have the most to say.
constexpr std::array<int, kLineNumbers> kShares{6, 5, 5, 6, 5};

QLabel* headerLabel(QWidget* parent, double size, bool bold, bool quiet)
{
    auto* label = new QLabel(parent);
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    label->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    QFont font = label->font();
    font.setPointSizeF(font.pointSizeF() * size);
    font.setBold(bold);
    label->setFont(font);
    if (quiet) label->setForegroundRole(QPalette::PlaceholderText);
    return label;
}

}  // namespace

LineHeader::LineHeader(QWidget* parent)
    : QWidget(parent),
      m_name(headerLabel(this, 1.25, true, false)),
      m_verdict(headerLabel(this, 1.25, true, false)),
      m_why(headerLabel(this, 1.0, false, false))
{
    m_verdict->setWordWrap(false);
    auto* top = new QHBoxLayout;
    top->setSpacing(20);
    top->addWidget(m_name, 1);
    top->addWidget(m_verdict);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins({});
    all->setSpacing(4);
    all->addLayout(top);
    all->addWidget(m_why);
    all->addLayout(makeNumbers());
}

QLayout* LineHeader::makeNumbers()
{
    auto* grid = new QGridLayout;
    grid->setHorizontalSpacing(14);
    grid->setVerticalSpacing(0);
    for (std::size_t i = 0; i < kLineNumbers; ++i) {
        m_cells[i] = {headerLabel(this, 0.9, false, true), headerLabel(this, 1.1, true, false),
                      headerLabel(this, 0.9, false, true)};
        for (std::size_t row = 0; row < m_cells[i].size(); ++row)
            grid->addWidget(m_cells[i][row], static_cast<int>(row), static_cast<int>(i));
        m_cells[i][1]->setWordWrap(false);  // a value is never cut; its column gives way
        grid->setColumnStretch(static_cast<int>(i), kShares[i]);
    }
    return grid;
}

void LineHeader::showLine(const QString& name, const LineReading& reading, MassUnit unit)
{
    m_name->setText(name);
    m_verdict->setText(format::verdictShape(reading.verdict) + u' ' + format::verdictWord(reading.verdict));
    m_why->setText(reading.why);
    const auto numbers = lineNumbers(reading, unit);
    for (std::size_t i = 0; i < kLineNumbers; ++i) {
        m_cells[i][0]->setText(numbers[i].title);
        m_cells[i][1]->setText(numbers[i].value);
        const QString& note = numbers[i].note;
        m_cells[i][2]->setText(note.isEmpty() ? numbers[i].detail : numbers[i].detail + u'\n' + note);
    }
}

}  // namespace steelyard
