#include "ui/print/disc_colours.h"

#include <array>

namespace steelyard {
namespace {

struct ColouredDisc {
    int grams;
    DiscColour colour;
};

constexpr std::array<ColouredDisc, 10> kColouredDiscs{{{25'000, DiscColour::Red},
                                                       {20'000, DiscColour::Blue},
                                                       {15'000, DiscColour::Yellow},
                                                       {10'000, DiscColour::Green},
                                                       {5'000, DiscColour::White},
                                                       {2'500, DiscColour::Red},
                                                       {2'000, DiscColour::Blue},
                                                       {1'500, DiscColour::Yellow},
                                                       {1'000, DiscColour::Green},
                                                       {500, DiscColour::White}}};

}  // namespace

std::optional<DiscColour> discColour(Mass disc)
{
    for (const ColouredDisc& row : kColouredDiscs)
        if (disc == massFromGrams(row.grams)) return row.colour;
    return std::nullopt;
}

QColor inkOf(DiscColour colour)
{
    switch (colour) {
    case DiscColour::Red:
        return {200, 30, 35};
    case DiscColour::Blue:
        return {25, 80, 170};
    case DiscColour::Yellow:
        return {245, 205, 40};
    case DiscColour::Green:
        return {20, 130, 70};
    case DiscColour::White:
        break;
    }
    return Qt::white;
}

}  // namespace steelyard
