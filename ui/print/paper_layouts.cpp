#include "ui/print/paper_layouts.h"

#include "core/base/text.h"
#include "ui/print/day_layout.h"
#include "ui/print/group_layout.h"
#include "ui/print/week_layout.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <array>
#include <tuple>

namespace steelyard {
namespace {

struct PaperText {
    Q_DECLARE_TR_FUNCTIONS(PaperText)
};

struct NamedLayout {
    PaperLayout layout;
    QStringView name;
};

constexpr std::array<NamedLayout, 4> kNamedLayouts{{{PaperLayout::Page, u"page"},
                                                    {PaperLayout::Group, u"group"},
                                                    {PaperLayout::Week, u"week"},
                                                    {PaperLayout::Day, u"day"}}};

// What stands together on pages of its own comes first in the key.
template <class Key, class LayOut>
std::vector<SheetPage> byKey(std::span<const SessionSheet> sheets, Key key, LayOut layOut)
{
    std::vector<SessionSheet> sorted(sheets.begin(), sheets.end());
    std::ranges::stable_sort(sorted, {}, key);
    std::vector<SheetPage> pages;
    for (auto from = sorted.begin(); from != sorted.end();) {
        const auto first = std::get<0>(key(*from));
        const auto to = std::find_if(from, sorted.end(),
                                     [&](const SessionSheet& sheet) { return std::get<0>(key(sheet)) != first; });
        std::ranges::move(layOut(std::span(from, to)), std::back_inserter(pages));
        from = to;
    }
    return pages;
}

}  // namespace

std::optional<PaperLayout> paperLayoutFrom(QStringView name)
{
    const auto found = std::ranges::find(kNamedLayouts, name, &NamedLayout::name);
    return found == kNamedLayouts.end() ? std::nullopt : std::optional(found->layout);
}

QString paperLayoutTitle(PaperLayout layout)
{
    switch (layout) {
    case PaperLayout::Page:
        return PaperText::tr("One lifter a page");
    case PaperLayout::Group:
        return PaperText::tr("Several to a page");
    case PaperLayout::Week:
        return PaperText::tr("The week of a lifter");
    case PaperLayout::Day:
        return PaperText::tr("The day of the gym");
    }
    return {};
}

std::vector<SheetPage> layOutPapers(PaperLayout layout, const PaperContent& content, PaperSize paper)
{
    switch (layout) {
    case PaperLayout::Page:
        return layOutSheets(content.sheets, paper);
    case PaperLayout::Group:
        return byKey(
            content.sheets,
            [](const SessionSheet& sheet) {
                return std::tuple(std::tuple(sheet.date, sheet.group), searchKey(sheet.athlete));
            },
            [&](std::span<const SessionSheet> group) { return layOutGroup(group, paper); });
    case PaperLayout::Week:
        return byKey(
            content.sheets,
            [](const SessionSheet& sheet) {
                return std::tuple(std::tuple(searchKey(sheet.athlete), sheet.athlete), sheet.date);
            },
            [&](std::span<const SessionSheet> week) { return layOutWeek(week, paper); });
    case PaperLayout::Day:
        return byKey(
            content.sheets,
            [](const SessionSheet& sheet) { return std::tuple(sheet.date, sheet.group, searchKey(sheet.athlete)); },
            [&](std::span<const SessionSheet> day) { return layOutDay(day, content.gyms, paper); });
    }
    return {};
}

}  // namespace steelyard
