#include "ui/print/load_drawing.h"

#include "ui/print/sheet_words.h"
#include "ui/print/text_measure.h"

#include <algorithm>
#include <array>

namespace steelyard {
namespace {

struct DiscRow {
    int fromGrams;
    DiscSize size;
};

constexpr double kLabelThick = 4.3;
constexpr std::array<DiscRow, 8> kDiscs{{
    {24'000, {1.00, kLabelThick, 0.15}},
    {18'000, {1.00, kLabelThick, 0.12}},
    {13'000, {0.89, kLabelThick, 0.03}},
    {9'000, {0.72, kLabelThick, 0.08}},
    {4'000, {0.51, 2.8, 0}},
    {2'000, {0.42, 2.2, 0.12}},
    {1'000, {0.36, 1.8, 0}},
    {0, {0.30, 1.4, 0}},
}};

constexpr double kShaftLength = 5;
constexpr double kShaftHeight = 0.9;
constexpr double kFlangeThick = 1.2;
constexpr double kSleeveHeight = 1.6;

QString labelOf(const Load& plate)
{
    return plate.amount().trimmed().toString();
}

void addDisc(SheetPage& page, const QRectF& rect, const Load& plate, double grey)
{
    page.boxes.push_back({rect, 0.3, grey, false});
    const QString label = labelOf(plate);
    const double needed = textWidthMm(label, kSmallestPoints, true);
    if (rect.width() >= lineHeightMm(kSmallestPoints) && rect.height() >= needed)
        page.texts.push_back({rect, label, kSmallestPoints, true, TextSide::Centre, true});
}

void drawBar(SheetPage& page, const QRectF& area, const std::vector<Load>& plates)
{
    const double middle = area.center().y();
    const double sleeveFrom = area.left() + kShaftLength + kFlangeThick;
    page.boxes.push_back({{area.left(), middle - kShaftHeight / 2, kShaftLength, kShaftHeight}, kHairline, 0.1, false});
    page.boxes.push_back({{area.left() + kShaftLength, middle - 1.6, kFlangeThick, 3.2}, kHairline, 0.1, false});
    double total = 0;
    for (const Load& plate : plates) total += discSize(plate.mass()).thickMm;
    const double room = area.right() - sleeveFrom - 2;  // a piece of sleeve stays in sight
    const double squeeze = total > room ? room / total : 1.0;
    page.boxes.push_back(
        {{sleeveFrom, middle - kSleeveHeight / 2, area.right() - sleeveFrom, kSleeveHeight}, kHairline, 0, false});
    double x = sleeveFrom;
    for (const Load& plate : plates) {
        const DiscSize size = discSize(plate.mass());
        const double height = size.heightShare * area.height();
        addDisc(page, {x, middle - height / 2, size.thickMm * squeeze, height}, plate, size.grey);
        x += size.thickMm * squeeze;
    }
}

void drawPin(SheetPage& page, const QRectF& area)
{
    constexpr int kSlabs = 6;
    const double height = area.height() / kSlabs;
    const double left = area.left() + 8;
    for (int slab = 0; slab < kSlabs; ++slab)
        page.boxes.push_back({{left, area.top() + slab * height, 14, height}, kHairline, slab < 3 ? 0.12 : 0.0, false});
    const double y = area.top() + 2.5 * height;
    page.lines.push_back({{left + 7, y, left + 20, y}, 0.7});
    page.boxes.push_back({{left + 20, y - 1, 2, 2}, 0.4, 0.15, false});
}

void drawDumbbell(SheetPage& page, const QRectF& area)
{
    const double middle = area.center().y();
    const double left = area.left() + 4;
    page.boxes.push_back({{left + 7, middle - 0.8, 12, 1.6}, kHairline, 0, false});
    for (const double x : {left, left + 19}) {
        page.boxes.push_back({{x, middle - 4, 7, 8}, 0.3, 0.12, false});
    }
}

void drawBelt(SheetPage& page, const QRectF& area, const std::vector<Load>& plates)
{
    const double middle = area.left() + area.width() / 2;
    page.lines.push_back({{middle - 8, area.top(), middle + 8, area.top()}, 0.7});
    double y = area.top() + 2;
    page.lines.push_back({{middle, area.top(), middle, y}, 0.4});
    if (plates.empty()) {
        page.boxes.push_back({{middle - 4, y, 8, area.height() - 2}, 0.3, 0.08, false});
        return;
    }
    double total = 0;
    for (const Load& plate : plates) total += discSize(plate.mass()).thickMm;
    const double squeeze = std::min(1.0, (area.height() - 2) / total);
    for (const Load& plate : plates) {
        const DiscSize size = discSize(plate.mass());
        const double width = size.heightShare * 18;
        page.boxes.push_back({{middle - width / 2, y, width, size.thickMm * squeeze}, 0.3, size.grey, false});
        y += size.thickMm * squeeze;
    }
}

}  // namespace

DiscSize discSize(Mass plate)
{
    for (const DiscRow& row : kDiscs)
        if (plate >= massFromGrams(row.fromGrams)) return row.size;
    return kDiscs.back().size;
}

bool hasDrawing(const SheetLoad& load)
{
    return load.picture == LoadPicture::Bar || load.picture == LoadPicture::Dumbbells
           || load.picture == LoadPicture::Pin || load.picture == LoadPicture::Belt;
}

void drawLoad(SheetPage& page, const QRectF& area, const SheetLoad& load)
{
    switch (load.picture) {
    case LoadPicture::Bar:
        drawBar(page, area, load.plates);
        return;
    case LoadPicture::Dumbbells:
        drawDumbbell(page, area);
        return;
    case LoadPicture::Pin:
        drawPin(page, area);
        return;
    case LoadPicture::Belt:
        drawBelt(page, area, load.plates);
        return;
    case LoadPicture::BarUnknown:
    case LoadPicture::BodyOnly:
    case LoadPicture::Counterweight:
        return;
    }
}

}  // namespace steelyard
