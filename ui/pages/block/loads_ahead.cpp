#include "ui/pages/block/loads_ahead.h"

#include "core/book/block_outlook.h"
#include "core/book/book.h"
#include "ui/format/format.h"
#include "ui/shell/theme.h"
#include "ui/widgets/words.h"

#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QLabel>

#include <algorithm>

namespace steelyard {
namespace {

// Longer than between two keys of somebody who edits.
constexpr std::chrono::milliseconds kSoon(300);

}  // namespace

LoadsAhead::LoadsAhead(const UiContext& context, QWidget* parent)
    : QWidget(parent), m_context(context), m_words(plainWords(this))
{
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins({});
    row->addWidget(m_words);
    m_soon.setSingleShot(true);
    m_soon.setInterval(kSoon);
    connect(&m_soon, &QTimer::timeout, this, &LoadsAhead::reckon);
    hide();
}

LoadsAhead::~LoadsAhead()
{
    m_job.cancel();
}

QString LoadsAhead::words() const
{
    return isHidden() ? QString() : m_words->text();
}

void LoadsAhead::forget()
{
    m_soon.stop();
    m_job.cancel();
    ++m_asked;
    m_athlete.reset();
    m_shown.reset();
    m_forecast = {};
    hide();
}

void LoadsAhead::look(Id<Athlete> athlete, BlockShownPtr shown)
{
    const bool isOver = endOf(shown->block()) <= shown->firstOpen;
    if (isOver || !shown->editable) return forget();
    const bool isOther = !m_shown || m_shown->row.id != shown->row.id;
    if (isOther) forget();
    m_athlete = athlete;
    m_shown = std::move(shown);
    // Places may be others now.
    m_forecast = {};
    if (isOther)
        reckon();
    else
        m_soon.start();
}

void LoadsAhead::reckon()
{
    if (!m_athlete) return;
    m_job.cancel();
    const BlockOutlookRequest request{*m_athlete, m_shown->block(), m_shown->today, format::wording()};
    const auto& sessions = m_shown->log().sessionDates;
    m_job = m_context.jobs.run(
        this, tr("Forecasting loads"),
        [request, path = m_context.book.path()](const Progress& progress) -> Result<BlockOutlook> {
            if (progress.cancelled()) return fail(ErrorCode::Cancelled, {});
            STEELYARD_TRY(const auto database, Database::openReader(path));
            return readBlockOutlook(*database, request);
        },
        [this, asked = ++m_asked,
         last = sessions.empty() ? QDate() : sessions.back()](const Result<BlockOutlook>& outlook) {
            if (asked != m_asked) return;
            // What can't be read is said where it was asked for; here nobody asked.
            outlook ? show(*outlook, last) : hide();
        });
}

void LoadsAhead::show(const BlockOutlook& outlook, QDate lastSession)
{
    m_forecast = outlook.forecast;
    const auto others = std::ranges::count_if(
        outlook.changes, [](const LoadChangeAhead& change) { return change.before.load.has_value(); });
    const QString words =
        lastSession.isValid()
            ? tr("%n slot(s) would be written otherwise after %1 · F shows them", nullptr, static_cast<int>(others))
                  .arg(format::dayMonth(lastSession))
            : tr("%n slot(s) would be written otherwise today · F shows them", nullptr, static_cast<int>(others));
    m_words->setText(words);
    QPalette colours = m_words->palette();
    colours.setColor(QPalette::WindowText, themeColours(palette()).accent);
    m_words->setPalette(colours);
    setVisible(others > 0);
    Q_EMIT reckoned();
}

}  // namespace steelyard
