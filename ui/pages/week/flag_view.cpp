#include "ui/pages/week/flag_view.h"

#include "core/flags/actions.h"
#include "core/flags/registry.h"
#include "ui/format/format.h"
#include "ui/shell/actions.h"
#include "ui/shell/theme.h"

#include <QtGui/QMouseEvent>
#include <QtGui/QPainter>
#include <QtWidgets/QGridLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QPushButton>

namespace steelyard {
namespace {

constexpr std::size_t kMostEvidenceRows = 8;

QLabel* flagLabel(const QString& text, QWidget* parent)
{
    auto* label = new QLabel(text, parent);
    label->setTextFormat(Qt::PlainText);
    return label;
}

void colourLabel(QLabel* label, const QColor& colour)
{
    QPalette palette = label->palette();
    palette.setColor(QPalette::WindowText, colour);
    label->setPalette(palette);
}

QString answerText(const Decision& decision)
{
    return FlagView::tr("%1: %2").arg(format::date(decision.madeOn), format::decisionAnswer(decision));
}

}  // namespace

FlagView::FlagView(const Flag& flag, const QString& about, QWidget* parent) : QWidget(parent)
{
    build(flag, about);
    m_buttons = makeAnswerButtons(flag.line.has_value());
    m_detail->layout()->addWidget(m_buttons);
    setUnfolded(false);
}

FlagView::FlagView(const AnsweredFlag& answered, const QString& about, QWidget* parent) : QWidget(parent)
{
    build(answered.flag, about);
    auto* answer = flagLabel(answerText(answered.decision), this);
    answer->setWordWrap(true);
    colourLabel(answer, themeColours(palette()).quiet);
    layout()->addWidget(answer);
    colourLabel(m_sentence, themeColours(palette()).quiet);
    setUnfolded(false);
}

void FlagView::build(const Flag& flag, const QString& about)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(14, 8, 8, 8);
    column->setSpacing(3);
    auto* head = flagLabel(QStringLiteral("%1 %2  ·  %3  ·  %4")
                               .arg(format::severityShape(flag.severity), format::severityWord(flag.severity),
                                    ruleTitle(flag.rule), about),
                           this);
    head->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
    head->setToolTip(format::plainToolTip(about));
    const ThemeColours& colours = themeColours(palette());
    colourLabel(head, flag.severity == Severity::High     ? colours.alarm
                      : flag.severity == Severity::Medium ? colours.warm
                                                          : colours.quiet);
    m_sentence = flagLabel(flag.sentence, this);
    m_sentence->setWordWrap(true);
    m_sentence->setMaximumWidth(fontMetrics().averageCharWidth() * 130);
    m_detail = new QWidget(this);
    auto* detail = new QVBoxLayout(m_detail);
    detail->setContentsMargins(0, 4, 0, 4);
    m_earlier = flagLabel({}, m_detail);
    m_earlier->setWordWrap(true);
    m_earlier->hide();
    colourLabel(m_earlier, colours.quiet);
    detail->addWidget(m_earlier);
    auto* grid = new QGridLayout;
    fillEvidence(grid, flag);
    detail->addLayout(grid);
    if (!flag.actions.isEmpty()) {
        QStringList labels;
        for (const QString& word : flag.actions) labels.push_back(actionLabel(word));
        auto* could = flagLabel(tr("Could be done: %1").arg(labels.join(QStringLiteral("; "))), m_detail);
        could->setWordWrap(true);
        detail->addWidget(could);
    }
    m_barPlace = new QVBoxLayout;
    detail->addLayout(m_barPlace);
    column->addWidget(head);
    // In a row of its own: a column would reckon the height for its whole width and cut a sentence that wraps sooner.
    auto* sentenceRow = new QHBoxLayout;
    sentenceRow->addWidget(m_sentence, 1);
    sentenceRow->addStretch(0);
    column->addLayout(sentenceRow);
    column->addWidget(m_detail);
}

void FlagView::fillEvidence(QGridLayout* grid, const Flag& flag)
{
    grid->setHorizontalSpacing(18);
    grid->setVerticalSpacing(1);
    const std::size_t first = flag.evidence.size() > kMostEvidenceRows ? flag.evidence.size() - kMostEvidenceRows : 0;
    int row = 0;
    if (first > 0) {
        auto* earlier = flagLabel(tr("and %n earlier", nullptr, static_cast<int>(first)), m_detail);
        colourLabel(earlier, themeColours(palette()).quiet);
        grid->addWidget(earlier, row++, 0, 1, 3);
    }
    for (std::size_t i = first; i < flag.evidence.size(); ++i, ++row) {
        const Evidence& evidence = flag.evidence[i];
        auto* date = flagLabel(format::date(evidence.date), m_detail);
        colourLabel(date, themeColours(palette()).quiet);
        grid->addWidget(date, row, 0);
        grid->addWidget(flagLabel(evidence.what, m_detail), row, 1);
        grid->addWidget(flagLabel(format::shortNumber(evidence.value), m_detail), row, 2, Qt::AlignRight);
    }
    grid->setColumnStretch(3, 1);
}

QWidget* FlagView::makeAnswerButtons(bool hasLine)
{
    auto* bar = new QWidget(m_detail);
    auto* layout = new QHBoxLayout(bar);
    layout->setContentsMargins(0, 4, 0, 0);
    QStringList ids{QStringLiteral("week.act"), QStringLiteral("week.watch"), QStringLiteral("week.dismiss")};
    if (hasLine) ids.push_back(QStringLiteral("week.open"));
    for (const QString& id : ids) {
        const ActionRow* action = findAction(id);
        auto* button = new QPushButton(QStringLiteral("%1  %2").arg(action->shortcut, plainText(action->text)), bar);
        button->setFocusPolicy(Qt::TabFocus);
        button->setAutoDefault(false);
        connect(button, &QPushButton::clicked, this, [this, id] {
            Q_EMIT chosen();
            Q_EMIT actionRequested(id);
        });
        layout->addWidget(button);
    }
    layout->addStretch(1);
    return bar;
}

void FlagView::setEarlier(const Decision& earlier)
{
    QString text = tr("Back again. Answered on %1.").arg(answerText(earlier));
    if (!earlier.said.isEmpty()) text += u' ' + tr("Then: %1").arg(earlier.said);
    m_earlier->setText(text);
    m_earlier->show();
}

void FlagView::setUnfolded(bool unfolded)
{
    m_unfolded = unfolded;
    QFont font = m_sentence->font();
    font.setPointSizeF(this->font().pointSizeF() * (unfolded ? 1.3 : 1.0));
    m_sentence->setFont(font);
    m_detail->setVisible(unfolded);
    update();
}

void FlagView::setAnswering(bool answering)
{
    if (m_buttons) m_buttons->setVisible(!answering);
}

void FlagView::setWritable(bool writable)
{
    if (m_buttons) m_buttons->setEnabled(writable);
}

void FlagView::mousePressEvent(QMouseEvent* event)
{
    event->accept();
    Q_EMIT chosen();
}

void FlagView::paintEvent(QPaintEvent* event)
{
    Q_UNUSED(event)
    QPainter painter(this);
    const ThemeColours& colours = themeColours(palette());
    if (m_unfolded) painter.fillRect(0, 4, 3, height() - 8, colours.accent);
    painter.setPen(colours.hairline);
    painter.drawLine(0, height() - 1, width(), height() - 1);
}

}  // namespace steelyard
