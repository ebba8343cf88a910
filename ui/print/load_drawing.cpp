#include "ui/print/load_drawing.h"

#include "ui/print/text_measure.h"

#include <algorithm>
#include <array>

namespace steelyard {
namespace {

struct DiscRow {
    int fromGrams;
    double height;
};

constexpr std::array<DiscRow, 5> kDiscHeights{
    {{18'000, 1.00}, {13'000, 0.95}, {9'000, 0.90}, {4'000, 0.85}, {0, 0.80}}};

constexpr double kDiscThick = 4.3;  // a number lies in it
constexpr double kBandShare = 0.1;  // of a disc's height, at each end
constexpr double kDiscLine = 0.3;
constexpr double kShaftLength = 3;
constexpr double kShaftHeight = 0.9;
constexpr double kFlangeThick = 1.2;
constexpr double kFlangeHeight = 3.2;
constexpr double kSleeveHeight = 1.6;
constexpr double kSleeveLeft = 1.6;  // a piece of it stays in sight
constexpr double kBarGrey = 0.1;

void drawDisc(SheetPage& page, const QRectF& rect, const Load& disc, bool onBelt)
{
    const double band = kBandShare * (onBelt ? rect.width() : rect.height());
    page.boxes.push_back({rect, kDiscLine, 0, false});
    if (const auto colour = discColour(disc.mass())) {
        const QRectF first = onBelt ? QRectF(rect.left(), rect.top(), band, rect.height())
                                    : QRectF(rect.left(), rect.top(), rect.width(), band);
        const QPointF toLast = onBelt ? QPointF(rect.width() - band, 0) : QPointF(0, rect.height() - band);
        page.boxes.push_back({first, kHairline, 0, false, colour});
        page.boxes.push_back({first.translated(toLast), kHairline, 0, false, colour});
    }
    const QString number = disc.amount().trimmed().toString();
    const double along = (onBelt ? rect.width() : rect.height()) - 2 * band;
    const double across = onBelt ? rect.height() : rect.width();
    // Between the bands, so that no ink stands on a colour.
    const QRectF room = onBelt ? rect.adjusted(band, 0, -band, 0) : rect.adjusted(0, band, 0, -band);
    const bool bold = along >= textWidthMm(number, kSmallestPoints, true);
    if (across >= lineHeightMm(kSmallestPoints) && along >= textWidthMm(number, kSmallestPoints, bold))
        page.texts.push_back({room, number, kSmallestPoints, bold, TextSide::Centre, !onBelt});
}

void drawBar(SheetPage& page, const QRectF& area, const std::vector<Load>& plates)
{
    const double middle = area.center().y();
    const double flange = area.left() + kShaftLength;
    const double sleeve = flange + kFlangeThick;
    page.boxes.push_back(
        {{area.left(), middle - kShaftHeight / 2, kShaftLength, kShaftHeight}, kHairline, kBarGrey, false});
    page.boxes.push_back(
        {{flange, middle - kFlangeHeight / 2, kFlangeThick, kFlangeHeight}, kHairline, kBarGrey, false});
    page.boxes.push_back(
        {{sleeve, middle - kSleeveHeight / 2, area.right() - sleeve, kSleeveHeight}, kHairline, 0, false});
    const double room = area.right() - sleeve - kSleeveLeft;
    const double thick = std::min(kDiscThick, room / static_cast<double>(std::max<std::size_t>(1, plates.size())));
    double x = sleeve;
    for (const Load& plate : plates) {
        const double height = discHeight(plate.mass()) * area.height();
        drawDisc(page, {x, middle - height / 2, thick, height}, plate, false);
        x += thick;
    }
}

void drawBelt(SheetPage& page, const QRectF& area, const std::vector<Load>& plates)
{
    constexpr double kBeltLength = 16;
    constexpr double kChain = 2;
    constexpr double kWidestDisc = 18;
    const double middle = area.center().x();
    page.lines.push_back({{middle - kBeltLength / 2, area.top(), middle + kBeltLength / 2, area.top()}, 0.7});
    double y = area.top() + kChain;
    page.lines.push_back({{middle, area.top(), middle, y}, 0.4});
    const double room = (area.height() - kChain) / static_cast<double>(plates.size());
    const double thick = std::min(kDiscThick, room);
    for (const Load& plate : plates) {
        const double width = discHeight(plate.mass()) * kWidestDisc;
        drawDisc(page, {middle - width / 2, y, width, thick}, plate, true);
        y += thick;
    }
}

}  // namespace

double discHeight(Mass disc)
{
    for (const DiscRow& row : kDiscHeights)
        if (disc >= massFromGrams(row.fromGrams)) return row.height;
    return kDiscHeights.back().height;
}

bool hasDrawing(const SheetLoad& load)
{
    return load.picture == LoadPicture::Bar || (load.picture == LoadPicture::Belt && !load.plates.empty());
}

void drawLoad(SheetPage& page, const QRectF& area, const SheetLoad& load)
{
    if (load.picture == LoadPicture::Bar) drawBar(page, area, load.plates);
    if (load.picture == LoadPicture::Belt && !load.plates.empty()) drawBelt(page, area, load.plates);
}

}  // namespace steelyard
