#include "ui/pages/floor/rating_row.h"

#include "ui/format/format.h"
#include "ui/shell/theme.h"

#include <QtGui/QKeyEvent>
#include <QtGui/QPainter>

#include <algorithm>

namespace steelyard {
namespace {

constexpr int kLeastLetters = 6;
constexpr int kMuscleLetters = 15;
constexpr int kTitleLetters = 26;
constexpr int kMargin = 10;

QString cellTitle(RatingCell cell)
{
    if (const auto joint = jointOf(cell)) {
        const QString word = format::jointWord(*joint);
        return word.left(1).toUpper() + word.mid(1);
    }
    switch (cell) {
    case RatingCell::Tension:
        return RatingRow::tr("Tension");
    case RatingCell::Burn:
        return RatingRow::tr("Burn");
    case RatingCell::Pump:
        return RatingRow::tr("Pump");
    case RatingCell::GaveOut:
        return RatingRow::tr("Gave out first");
    case RatingCell::NextSoreness:
        return RatingRow::tr("Sore");
    case RatingCell::NextWeakness:
        return RatingRow::tr("Weak");
    default:
        return {};
    }
}

bool isStop(const QString& text)
{
    return text == QLatin1StringView(".") || text == QLatin1StringView(",");
}

}  // namespace

RatingRow::RatingRow(std::span<const RatingCell> cells, QString title, QWidget* parent)
    : QWidget(parent), m_cells(cells), m_title(std::move(title))
{
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(m_title.isEmpty() ? tr("Ratings") : m_title);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void RatingRow::setMuscles(std::vector<MuscleChoice> muscles)
{
    m_muscles = std::move(muscles);
}

void RatingRow::setRating(const ExerciseRating& rating)
{
    m_rating = rating;
    update();
}

void RatingRow::begin()
{
    const auto open = std::ranges::find_if(m_cells, [&](RatingCell cell) { return valueText(cell).isEmpty(); });
    go(open == m_cells.end() ? 0 : static_cast<std::size_t>(std::distance(m_cells.begin(), open)));
}

QSize RatingRow::sizeHint() const
{
    return {cellRect(m_cells.size() - 1).right() + kMargin, 2 * fontMetrics().height() + 6};
}

QSize RatingRow::minimumSizeHint() const
{
    return {200, sizeHint().height()};
}

QFont RatingRow::titleFont() const
{
    QFont small = font();
    small.setPointSizeF(font().pointSizeF() * 0.8);
    return small;
}

// A joint's cell says which letter goes to it.
QString RatingRow::cellHead(std::size_t cell) const
{
    const auto joint = jointOf(m_cells[cell]);
    return joint ? letterOf(*joint) + u' ' + cellTitle(m_cells[cell]) : cellTitle(m_cells[cell]);
}

int RatingRow::wantedWidth(std::size_t cell) const
{
    const int letters = m_cells[cell] == RatingCell::GaveOut ? kMuscleLetters : kLeastLetters;
    return std::max(letters * fontMetrics().averageCharWidth(),
                    QFontMetrics(titleFont()).horizontalAdvance(cellHead(cell)) + 12);
}

QRect RatingRow::cellRect(std::size_t cell) const
{
    const int title = m_title.isEmpty() ? 0 : kTitleLetters * fontMetrics().averageCharWidth();
    int whole = 0;
    int before = 0;
    for (std::size_t i = 0; i < m_cells.size(); ++i) {
        if (i == cell) before = whole;
        whole += wantedWidth(i);
    }
    // Where there is less room than that, every cell gives way alike.
    const double room = width() - 2 * kMargin - title;
    const double share = room > 0 && room < whole ? room / whole : 1;
    const int from = static_cast<int>(before * share);
    const int to = static_cast<int>((before + wantedWidth(cell)) * share);
    return {kMargin + title + from, 1, to - from - 3, height() - 4};
}

QString RatingRow::valueText(RatingCell cell) const
{
    if (cell != RatingCell::GaveOut) {
        const auto score = scoreOf(m_rating, cell);
        return score ? QString::number(*score) : QString();
    }
    const auto at = std::ranges::find(m_muscles, m_rating.gaveOut, &MuscleChoice::key);
    return at == m_muscles.end() ? m_rating.gaveOut : at->name;
}

void RatingRow::go(std::size_t cell)
{
    m_current = cell;
    m_typed.clear();
    const QString value = valueText(m_cells[m_current]);
    setAccessibleDescription(value.isEmpty() ? cellTitle(m_cells[m_current])
                                             : tr("%1: %2").arg(cellTitle(m_cells[m_current]), value));
    update();
}

void RatingRow::goOn()
{
    if (m_current + 1 < m_cells.size())
        go(m_current + 1);
    else
        Q_EMIT left(1);
}

void RatingRow::tell()
{
    update();
    Q_EMIT rated(m_rating);
}

void RatingRow::put(std::optional<int> score)
{
    if (m_readOnly) return;
    ExerciseRating changed = m_rating;
    if (m_cells[m_current] == RatingCell::GaveOut)
        changed.gaveOut.clear();
    else
        putScore(changed, m_cells[m_current], score);
    if (changed == m_rating) return;
    m_rating = changed;
    tell();
}

void RatingRow::takeMuscle()
{
    const auto found = findMuscle(m_muscles, m_typed);
    m_typed.clear();
    if (!found || m_readOnly || m_rating.gaveOut == m_muscles[*found].key) return;
    m_rating.gaveOut = m_muscles[*found].key;
    tell();
}

void RatingRow::takeLetter(const QString& letter)
{
    if (m_cells[m_current] == RatingCell::GaveOut) {
        // A letter with which no muscle goes on is not taken, so that what is shown is what was found.
        if (findMuscle(m_muscles, m_typed + letter)) m_typed += letter;
        update();
        return;
    }
    if (letter.compare(QLatin1StringView("x"), Qt::CaseInsensitive) == 0) {
        put(10);
        goOn();
        return;
    }
    for (std::size_t i = 0; i < m_cells.size(); ++i)
        if (const auto joint = jointOf(m_cells[i]); joint && letterOf(*joint) == letter.at(0).toLower()) go(i);
}

bool RatingRow::event(QEvent* event)
{
    if (event->type() == QEvent::ShortcutOverride) {
        // Letters and digits are for the cells, not for the page's keys.
        const auto* key = static_cast<QKeyEvent*>(event);
        const bool own = !(key->modifiers() & (Qt::ControlModifier | Qt::AltModifier)) && !key->text().isEmpty()
                         && key->key() != Qt::Key_Escape;
        event->setAccepted(own);
        return own;
    }
    return QWidget::event(event);
}

void RatingRow::keyPressEvent(QKeyEvent* event)
{
    const QString text = event->text();
    const bool plain = !(event->modifiers() & (Qt::ControlModifier | Qt::AltModifier));
    if (!m_typed.isEmpty() && event->key() == Qt::Key_Backspace) {
        m_typed.chop(1);
        return update();
    }
    const bool findsOn = plain && text.size() == 1 && text.at(0).isLetter();
    if (!m_typed.isEmpty() && !findsOn) {
        takeMuscle();
        // A digit belongs to the cell after the muscle.
        if (plain && text.size() == 1 && text.at(0).isDigit()) goOn();
    }
    switch (event->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
    case Qt::Key_Right:
        return goOn();
    case Qt::Key_Left:
        if (m_current > 0) go(m_current - 1);
        return;
    case Qt::Key_Up:
        Q_EMIT left(-1);
        return;
    case Qt::Key_Down:
        Q_EMIT left(1);
        return;
    case Qt::Key_Backspace:
    case Qt::Key_Delete:
        return put(std::nullopt);
    default:
        break;
    }
    if (!plain || text.size() != 1) return QWidget::keyPressEvent(event);
    if (isStop(text)) {
        Q_EMIT restSkipped();
    } else if (text.at(0).isDigit() && m_cells[m_current] != RatingCell::GaveOut) {
        put(text.at(0).digitValue());
        goOn();
    } else if (findsOn) {
        takeLetter(text);
    }
}

void RatingRow::focusInEvent(QFocusEvent* event)
{
    QWidget::focusInEvent(event);
    if (event->reason() != Qt::ActiveWindowFocusReason && event->reason() != Qt::MouseFocusReason) begin();
    update();
    Q_EMIT focused();
}

void RatingRow::focusOutEvent(QFocusEvent* event)
{
    QWidget::focusOutEvent(event);
    if (!m_typed.isEmpty() && event->reason() != Qt::ActiveWindowFocusReason) takeMuscle();
    update();
}

void RatingRow::mousePressEvent(QMouseEvent* event)
{
    for (std::size_t i = 0; i < m_cells.size(); ++i)
        if (cellRect(i).contains(event->position().toPoint())) go(i);
}

void RatingRow::paintCell(QPainter& painter, std::size_t cell) const
{
    const ThemeColours& colours = themeColours(palette());
    const QRect box = cellRect(cell);
    const bool current = hasFocus() && cell == m_current;
    painter.setPen(current ? QPen(colours.accent, 2) : QPen(colours.hairline));
    painter.setBrush(palette().base());
    painter.drawRect(box);
    painter.setFont(titleFont());
    painter.setPen(colours.quiet);
    const QRect head = box.adjusted(3, 1, -2, -box.height() / 2);
    painter.drawText(head, Qt::AlignLeft | Qt::AlignVCenter,
                     QFontMetrics(titleFont()).elidedText(cellHead(cell), Qt::ElideRight, head.width()));
    painter.setFont(font());
    painter.setPen(colours.text);
    const QRect body = box.adjusted(4, box.height() / 2 - 1, -3, -1);
    QString value = valueText(m_cells[cell]);
    if (cell == m_current && !m_typed.isEmpty())
        if (const auto found = findMuscle(m_muscles, m_typed)) value = m_muscles[*found].name + QStringLiteral(" …");
    painter.drawText(body, Qt::AlignRight | Qt::AlignVCenter,
                     fontMetrics().elidedText(value, Qt::ElideRight, body.width()));
}

void RatingRow::paintEvent(QPaintEvent* event)
{
    Q_UNUSED(event)
    const ThemeColours& colours = themeColours(palette());
    QPainter painter(this);
    if (!m_title.isEmpty()) {
        const QRect head(kMargin, 0, kTitleLetters * fontMetrics().averageCharWidth() - 8, height());
        painter.setPen(colours.text);
        painter.drawText(head, Qt::AlignLeft | Qt::AlignVCenter,
                         fontMetrics().elidedText(m_title, Qt::ElideRight, head.width()));
    }
    if (m_title.isEmpty() && m_rating.none() && !hasFocus()) {
        // Empty cells of every exercise would only hide the one that is being rated.
        painter.setPen(colours.quiet);
        painter.drawText(rect().adjusted(kMargin, 0, 0, 0), Qt::AlignLeft | Qt::AlignVCenter, tr("not rated"));
        return;
    }
    for (std::size_t i = 0; i < m_cells.size(); ++i) paintCell(painter, i);
    if (hasFocus()) painter.fillRect(0, 0, 3, height(), colours.accent);
}

}  // namespace steelyard
