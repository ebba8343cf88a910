#include "ui/shell/pages.h"

#include "ui/pages/block/block_page.h"
#include "ui/pages/floor/floor_page.h"
#include "ui/pages/lifter/lifter_page.h"
#include "ui/pages/week/week_page.h"

namespace steelyard {

std::vector<Page*> makePages(const UiContext& context, QWidget* parent)
{
    return {
        new WeekPage(context, parent),
        new LifterPage(context, parent),
        new BlockPage(context, parent),
        new FloorPage(context, parent),
    };
}

}  // namespace steelyard
