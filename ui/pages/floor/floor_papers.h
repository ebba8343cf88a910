// What the floor prints: read for a day, laid out as chosen, sent to a printer or into a PDF.
//
//   STEELYARD_TRY(const FloorDay day, readFloorDay(path, request, PaperLayout::Page, progress));      // off the UI thread
//   const FloorPaper paper{PaperLayout::Group, sheets, day.gyms, PaperSize::A4, date};
//   printFloorPaper(context, this, paper, [this](const QString& text) { say(text); });
#pragma once

#include "core/book/day_sheets.h"
#include "ui/print/paper_layouts.h"
#include "ui/shell/context.h"

#include <functional>
#include <map>

namespace steelyard {

struct FloorDay {
    std::vector<DaySheet> sheets;
    std::vector<DaySheet> week;  // everybody's seven days from Monday, where the layout is the week; else empty
    std::vector<Row<Gym>> gyms;
    std::map<Id<Athlete>, int> keyed;  // sets in the book on that day
};

[[nodiscard]] Result<FloorDay> readFloorDay(const QString& path, const DaySheetsRequest& day, PaperLayout layout,
                                            const Progress& progress);

struct FloorPaper {
    PaperLayout layout = PaperLayout::Page;
    std::vector<SessionSheet> sheets;
    std::vector<Row<Gym>> gyms;
    PaperSize size = PaperSize::A4;
    QDate date;

    [[nodiscard]] std::vector<SheetPage> pages(PaperSize on) const { return layOutPapers(layout, {sheets, gyms}, on); }
};

using SayQuietly = std::function<void(const QString&)>;
void printFloorPaper(const UiContext& context, QWidget* parent, const FloorPaper& paper, const SayQuietly& say);
void saveFloorPaper(const UiContext& context, QWidget* parent, const FloorPaper& paper, const SayQuietly& say);

}  // namespace steelyard
