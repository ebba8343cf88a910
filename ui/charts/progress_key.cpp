#include "ui/charts/progress_key.h"

#include "ui/charts/chart_marker.h"

#include <QtCore/QCoreApplication>
#include <QtGui/QFontMetricsF>
#include <QtGui/QPainter>

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

struct KeyText {
    Q_DECLARE_TR_FUNCTIONS(KeyText)
};

constexpr double kKeyStroke = 18;  // px of a stroke
constexpr double kKeyGap = 10;     // between entries

class KeyBuilder {
public:
    KeyBuilder(const ProgressSpec& spec, const ChartColours& colours) : m_spec(spec), m_colours(colours) {}
    [[nodiscard]] std::vector<KeyEntry> build();

private:
    void add(const QString& word, double width, std::function<void(QPainter&, QPointF)> paint)
    {
        m_key.push_back({word, width, std::move(paint)});
    }
    void addStroke(const QString& word, const QPen& pen)
    {
        add(word, kKeyStroke, [pen](QPainter& painter, QPointF at) {
            painter.setPen(pen);
            painter.drawLine(at - QPointF(kKeyStroke / 2, 0), at + QPointF(kKeyStroke / 2, 0));
        });
    }
    void addSessions();
    void addCapacity();
    void addSets();
    void addLoads();
    void addNext();

    const ProgressSpec& m_spec;
    const ChartColours m_colours;
    std::vector<KeyEntry> m_key;
};

std::vector<KeyEntry> KeyBuilder::build()
{
    addSessions();
    addCapacity();
    addNext();
    addLoads();
    addSets();
    return std::move(m_key);
}

void KeyBuilder::addSessions()
{
    const auto& points = m_spec.reps.points;
    for (const PointKind kind : {PointKind::Standard, PointKind::Unwatched, PointKind::OffStandard, PointKind::Deload})
        if (std::ranges::find(points, kind, &ChartPoint::kind) != points.end())
            add(pointKindWord(kind), 8,
                [c = m_colours, kind](QPainter& painter, QPointF at) { paintMarker(painter, at, kind, c); });
    const auto isBeyond = [](const ChartPoint& point) { return point.beyond != Beyond::No; };
    if (std::ranges::any_of(m_spec.capacity.points, isBeyond) || std::ranges::any_of(points, isBeyond))
        add(KeyText::tr("beyond the scale"), 8, [c = m_colours](QPainter& painter, QPointF at) {
            paintBeyondMarker(painter, at, Beyond::Above, PointKind::Standard, c);
        });
}

void KeyBuilder::addCapacity()
{
    if (!m_spec.trend.empty())
        add(KeyText::tr("known then, 90 %"), kKeyStroke, [c = m_colours](QPainter& painter, QPointF at) {
            painter.fillRect(QRectF(at.x() - kKeyStroke / 2, at.y() - 5, kKeyStroke, 10), c.band);
            painter.setPen(QPen(c.data, 2));
            painter.drawLine(at - QPointF(kKeyStroke / 2, 0), at + QPointF(kKeyStroke / 2, 0));
        });
    if (!m_spec.fan.empty())
        add(KeyText::tr("to come: 50, 80, 95 %"), kKeyStroke, [c = m_colours](QPainter& painter, QPointF at) {
            for (const double half : {6.0, 4.0, 2.0})
                painter.fillRect(QRectF(at.x() - kKeyStroke / 2, at.y() - half, kKeyStroke, 2 * half), c.ahead);
            painter.setPen(aheadPen(c));
            painter.drawLine(at - QPointF(kKeyStroke / 2, 0), at + QPointF(kKeyStroke / 2, 0));
        });
    if (m_spec.realChange) addStroke(KeyText::tr("smallest real change"), changePen(m_colours));
}

void KeyBuilder::addNext()
{
    if (m_spec.next)
        add(KeyText::tr("next set, 80 %"), 10, [c = m_colours](QPainter& painter, QPointF at) {
            paintNextMarker(painter, at, at.y() + 6, at.y() - 6, c);
        });
}

void KeyBuilder::addLoads()
{
    if (m_spec.loadSeries.size() < 2) return;
    for (std::size_t i = 0; i < m_spec.loadSeries.size(); ++i)
        addStroke(KeyText::tr("at %1").arg(m_spec.loadSeries[i].label), loadPen(m_colours, i));
}

void KeyBuilder::addSets()
{
    const auto& sets = m_spec.sets;
    for (const SetEffort effort : {SetEffort::Near, SetEffort::Some, SetEffort::Far, SetEffort::Unknown})
        if (std::ranges::find(sets, effort, &SetMark::effort) != sets.end())
            add(setEffortWord(effort), 8, [c = m_colours, effort](QPainter& painter, QPointF at) {
                paintSetMarker(painter, at, effort, true, kSetRadius, c);
            });
    if (std::ranges::find(sets, false, &SetMark::watched) != sets.end())
        add(KeyText::tr("hollow: not watched"), 8, [c = m_colours](QPainter& painter, QPointF at) {
            paintSetMarker(painter, at, SetEffort::Near, false, kSetRadius, c);
        });
    if (std::ranges::any_of(sets, [](const SetMark& set) { return set.reps > set.counted; }))
        add(KeyText::tr("reps off standard"), 6, [c = m_colours](QPainter& painter, QPointF at) {
            paintOffStem(painter, at + QPointF(0, 5), at.y() - 5, c);
        });
}

// Goes through the entries with the place of each: line and left edge.
template <class Visit>
void placeKey(const std::vector<KeyEntry>& key, const QFontMetricsF& metrics, double width, Visit&& visit)
{
    int line = 0;
    double left = 0;
    for (const KeyEntry& entry : key) {
        const double needs = entry.width + 5 + metrics.horizontalAdvance(entry.word);
        if (left > 0 && left + needs > width) {
            ++line;
            left = 0;
        }
        visit(entry, line, left);
        left += needs + kKeyGap;
    }
}

}  // namespace

std::vector<KeyEntry> progressKey(const ProgressSpec& spec, const ChartColours& colours)
{
    return KeyBuilder(spec, colours).build();
}

int keyLines(const std::vector<KeyEntry>& key, const QFontMetricsF& metrics, double width)
{
    int lines = 0;
    placeKey(key, metrics, width, [&](const KeyEntry&, int line, double) { lines = line + 1; });
    return lines;
}

void paintKey(QPainter& painter, const std::vector<KeyEntry>& key, const ProgressScene& scene)
{
    const QFontMetricsF metrics(scene.small);
    const double edge = scene.capacity->plot().left();
    placeKey(key, metrics, scene.bounds.width() - edge, [&](const KeyEntry& entry, int line, double left) {
        const double foot = scene.keyTop + line * std::ceil(metrics.height()) + metrics.ascent();
        painter.setPen(scene.colours.quietInk);
        painter.drawText(QPointF(edge + left + entry.width + 5, foot), entry.word);
        entry.paint(painter, QPointF(edge + left + entry.width / 2, foot - metrics.xHeight() / 2));
    });
}

}  // namespace steelyard
