#include "core/domain/block.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct BlockText {
    Q_DECLARE_TR_FUNCTIONS(BlockText)
};

}  // namespace

Problems validate(const Block& block)
{
    Problems problems;
    if (block.name.isEmpty()) problems.push_back({QStringLiteral("name"), BlockText::tr("A name is needed.")});
    if (!block.start.isValid()) problems.push_back({QStringLiteral("start"), BlockText::tr("A start date is needed.")});
    for (const PlannedWeek& week : block.weeks)
        for (const PlannedDay& day : week.days) {
            if (!day.date.isValid() || day.date < block.start)
                problems.push_back({QStringLiteral("days"), BlockText::tr("Every planned day lies in the block.")});
            for (const Slot& slot : day.slotList)
                if (slot.sets < 1 || slot.sets > 30 || slot.band.low < 1 || slot.band.high < slot.band.low)
                    problems.push_back(
                        {QStringLiteral("slots"),
                         BlockText::tr("A slot has 1 to 30 sets and a rep band that begins with its low end.")});
        }
    return problems;
}

}  // namespace steelyard
