#include "core/domain/block.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct BlockText {
    Q_DECLARE_TR_FUNCTIONS(BlockText)
};

}  // namespace

std::optional<std::size_t> weekOfBlock(const Block& block, QDate day)
{
    constexpr qint64 kDays = 7;
    const qint64 days = block.start.daysTo(day);
    if (days < 0 || days / kDays >= std::ssize(block.weeks)) return std::nullopt;
    return static_cast<std::size_t>(days / kDays);
}

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
