#include "ui/pages/lifter/panels_view.h"

#include "ui/charts/panels_chart.h"
#include "ui/widgets/words.h"

#include <QtWidgets/QLabel>
#include <QtWidgets/QScrollArea>
#include <QtWidgets/QStackedWidget>
#include <QtWidgets/QVBoxLayout>

namespace steelyard {
namespace {

constexpr int kNoteLines = 3;

QFont smallFont(QFont font)
{
    font.setPointSizeF(font.pointSizeF() * 0.9);
    return font;
}

}  // namespace

PanelsView::PanelsView(const QString& chartName, QWidget* parent)
    : LifterView(parent),
      m_chart(new PanelsChart(chartName, this)),
      m_note(quietWords(this)),
      m_footnote(quietWords(this)),
      m_instead(quietWords(this)),
      m_states(new QStackedWidget(this))
{
    m_note->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_note->setForegroundRole(QPalette::WindowText);
    m_footnote->setFont(smallFont(font()));
    m_instead->setAlignment(Qt::AlignCenter);
    m_instead->setMargin(40);
    // A stop may have more to say than there is room; the chart shouldn't jump for it.
    auto* notes = new QScrollArea(this);
    notes->setWidget(m_note);
    notes->setWidgetResizable(true);
    notes->setFrameShape(QFrame::NoFrame);
    notes->setFixedHeight(kNoteLines * fontMetrics().lineSpacing() + 4);
    notes->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    notes->setFocusPolicy(Qt::NoFocus);
    auto* drawn = new QWidget(this);
    auto* below = new QVBoxLayout(drawn);
    below->setContentsMargins({});
    below->setSpacing(4);
    below->addWidget(m_chart, 1);
    below->addWidget(notes);
    below->addWidget(m_footnote);
    m_states->addWidget(drawn);
    m_states->addWidget(m_instead);
    m_row = new QHBoxLayout(this);
    m_row->setContentsMargins({});
    m_row->addWidget(m_states, 1);
    setFocusProxy(m_chart);
    connect(m_chart, &PanelsChart::pointedAt, this, &PanelsView::showNote);
    connect(m_chart, &PanelsChart::lineStepped, this, &LifterView::lineStepped);
    connect(m_chart, &PanelsChart::selectedStop, this, [this](int stop) {
        const int exposure = m_chart->spec().stops[static_cast<std::size_t>(stop)].exposure;
        if (exposure >= 0) Q_EMIT sessionLookedAt(exposure);
    });
}

void PanelsView::addBeside(QWidget* widget)
{
    m_row->insertWidget(0, widget);
}

PanelsOptions PanelsView::optionsFor(const ShownLine& shown)
{
    return {.locale = QLocale(), .unit = shown.unit(), .from = shown.from(), .asOf = shown.today};
}

void PanelsView::showSpec(PanelsSpec spec, const QString& otherwise)
{
    if (spec.empty()) {
        m_chart->setSpec({});
        say(otherwise);
        return;
    }
    m_chart->setSpec(std::move(spec));
    m_footnote->setVisible(!m_footnote->text().isEmpty());
    m_states->setCurrentIndex(0);
    m_chart->select(static_cast<int>(m_chart->spec().stops.size()) - 1);
}

void PanelsView::say(const QString& text)
{
    m_instead->setText(text);
    m_states->setCurrentIndex(1);
}

void PanelsView::setFootnote(const QString& text)
{
    m_footnote->setText(text);
}

void PanelsView::takeFocus()
{
    m_chart->setFocus();
}

void PanelsView::lookAt(int exposure)
{
    m_chart->select(m_chart->stopOf(exposure));
}

void PanelsView::showNote(int stop)
{
    const auto& stops = m_chart->spec().stops;
    const bool there = stop >= 0 && stop < static_cast<int>(stops.size());
    m_note->setText(there ? stops[static_cast<std::size_t>(stop)].words : QString());
}

ChartTable PanelsView::table() const
{
    return m_chart->spec().table;
}

QWidget* PanelsView::drawing() const
{
    return m_chart;
}

}  // namespace steelyard
