// What the Block place does to the block in sight: each change one edit of the history.
#include "ui/pages/block/block_page.h"

#include "core/book/book.h"
#include "core/edits/edits.h"
#include "core/edits/keying_edits.h"
#include "core/keying/line_change.h"
#include "core/planning/block_templates.h"
#include "ui/pages/block/block_words.h"
#include "ui/widgets/asked_line.h"
#include "ui/widgets/lift_line_choices.h"

#include <QtGui/QClipboard>
#include <QtGui/QGuiApplication>
#include <QtWidgets/QStackedWidget>
#include <QtWidgets/QToolButton>

#include <algorithm>

namespace steelyard {

PlanChoice BlockPage::choice() const
{
    return {*m_shown, places()->chosen(), places()->cursor(), m_scope};
}

bool BlockPage::store(std::unique_ptr<Edit> edit)
{
    const QString label = edit->label();
    m_storing = true;
    const auto done = m_context.book.history().perform(std::move(edit));
    m_storing = false;
    if (!done) {
        say(done.error().what, true);
        return false;
    }
    if (*done) Q_EMIT said(tr("Done: %1").arg(label));
    return true;
}

bool BlockPage::isUpToDate(const Row<Block>& thought)
{
    const auto now = m_context.book.blocks().of(*m_athlete);
    if (now && std::ranges::find(*now, thought) != now->end()) return true;
    m_later = false;
    readBlocks();
    say(tr("The plan has changed meanwhile and was read anew; nothing was changed by this."), true);
    return false;
}

void BlockPage::apply(Result<Block> after, const QString& label)
{
    const auto kept = keepingPast(m_shown->block(), std::move(after), m_shown->firstOpen);
    if (!kept) return say(kept.error().what, true);
    if (!isUpToDate(m_shown->row)) return;
    (void)store(named(changeBlock(m_shown->row.id, *kept), label));
}

void BlockPage::ask(const Asking& asking)
{
    m_asked->ask({asking.label, asking.text}, [this, asking, asked = m_shown->row](const QString& typed) -> QString {
        const auto kept = keepingPast(m_shown->block(), asking.answer(typed), m_shown->firstOpen);
        if (!kept) return kept.error().what;
        if (!isUpToDate(asked)) return {};
        return store(named(changeBlock(m_shown->row.id, *kept), asking.edit)) ? QString() : line();
    });
    if (!asking.help.isEmpty()) say(asking.help);
    Q_EMIT actionsChanged();
}

void BlockPage::askTemplate()
{
    m_asked->ask({tr("Name of the template"), m_shown->block().name}, [this](const QString& typed) -> QString {
        const auto shape = templateOf(m_shown->block(), typed);
        if (!shape) return shape.error().what;
        return store(addTemplate(*shape)) ? QString() : line();
    });
    Q_EMIT actionsChanged();
}

void BlockPage::chooseLift(bool replaces, bool everywhere)
{
    const PlanChoice now = choice();
    std::vector<LiftLine> there;
    if (const auto day = dayOn(m_shown->block(), now.cursor.date))
        for (const Slot& slot : m_shown->block().weeks[day->week].days[day->day].slotList)
            there.push_back(liftOf(m_shown->block(), slot));
    std::vector<LiftLine> lifts = liftsToAdd(m_shown->log(), m_shown->library(), there);
    if (replaces) {
        // Other ways of the same exercise first.
        auto ways = otherWays(m_shown->log(), m_shown->library(),
                              liftOf(m_shown->block(), *slotAt(m_shown->block(), now.chosen.front())));
        std::erase_if(lifts, [&](const LiftLine& lift) { return std::ranges::find(ways, lift) != ways.end(); });
        lifts.insert(lifts.begin(), ways.begin(), ways.end());
    }
    const QString title = everywhere ? tr("Instead of it, in the whole block")
                          : replaces ? tr("Instead of it")
                                     : tr("Put in");
    m_chooser->choose(title, lineChoices(m_shown->log(), m_shown->library(), lifts), false,
                      [this, replaces, everywhere](const LiftLine& lift) {
                          takeFocus();
                          const PlanChoice at = choice();
                          if (replaces) return apply(replaceDeed(lift, everywhere, at));
                          apply(addDeed({newSlot(lift, *m_shown)}, at));
                      });
    Q_EMIT actionsChanged();
}

void BlockPage::typed(const PlanPlace& place, const Slot& slot)
{
    if (m_shown) apply(doseDeed(place, slot, choice()));
}

void BlockPage::copy(bool cut)
{
    const PlanChoice now = choice();
    m_copied.clear();
    QStringList words;
    for (const PlanPlace& place : now.chosen) {
        const Slot& slot = *slotAt(m_shown->block(), place);
        m_copied.push_back(slot);
        words << exerciseWords(slot, m_shown->library()) + u'\t' + doseWords(slot);
    }
    QGuiApplication::clipboard()->setText(words.join(u'\n'));
    if (cut) {
        const auto deed = deedOf(QStringLiteral("block.remove"), now);
        return apply(deed->block, deed->label);
    }
    say(tr("%n lift(s) copied; Ctrl+V puts them where the cursor is.", nullptr, static_cast<int>(m_copied.size())));
    Q_EMIT actionsChanged();
}

void BlockPage::paste()
{
    apply(addDeed(m_copied, choice()));
}

void BlockPage::removeWhole()
{
    (void)store(removeBlock(m_shown->row.id, *m_athlete));
}

// No edit of the book: a wish for the next proposal.
void BlockPage::togglePin()
{
    const PlanPlaces chosen = choice().chosen;
    BlockPins& pins = m_pins[*m_athlete];
    const bool fixed = pins.toggle(m_shown->block(), chosen);
    auto shown = std::make_shared<BlockShown>(*m_shown);
    shown->pins = pins;
    m_shown = std::move(shown);
    const PlanCursor at = places()->cursor();
    showViews();
    goTo(at.date, at.slot ? std::optional(at.slot->slot) : std::nullopt);
    say(fixed ? tr("Fixed: a proposal leaves it on this weekday as it is. Ctrl+Shift+B proposes around it.")
              : tr("No longer fixed."));
}

void BlockPage::switchScope()
{
    m_scope = m_scope == WeekScope::ThisWeek ? WeekScope::ThisAndLater : WeekScope::ThisWeek;
    m_scopeButton->setText(m_scope == WeekScope::ThisWeek ? tr("Changes: this week")
                                                          : tr("Changes: this week and later"));
    say(m_scope == WeekScope::ThisWeek ? tr("A change is for the week in sight.")
                                       : tr("A change is for the same lift on the same weekday of every later week as "
                                            "well; easier weeks keep their sets."));
}

void BlockPage::switchView()
{
    const PlanCursor at = places()->cursor();
    m_views->setCurrentIndex(1 - m_views->currentIndex());
    m_viewButton->setText(m_views->currentIndex() == 0 ? tr("Day as a list") : tr("Whole week"));
    goTo(at.date, at.slot ? std::optional(at.slot->slot) : std::nullopt);
    takeFocus();
    Q_EMIT actionsChanged();
}

void BlockPage::stepLimit(int by)
{
    const auto& broken = m_shown->totals.broken;
    const PlanCursor at = places()->cursor();
    const auto dateOfLimit = [&](const BrokenLimit& one) {
        const QDate date = one.day ? dateOf(m_shown->block(), {one.week, *one.day, 0}) : QDate();
        return date.isValid() ? date : firstDayOf(m_shown->block(), one.week);
    };
    const std::pair here(at.date, at.slot ? static_cast<int>(at.slot->slot) : 0);
    const BrokenLimit* found = nullptr;
    for (const BrokenLimit& one : broken) {
        const std::pair there(dateOfLimit(one), one.slot ? static_cast<int>(*one.slot) : 0);
        if (by > 0 ? there > here : there < here) {
            found = &one;
            if (by > 0) break;
        }
    }
    if (!found) return say(by > 0 ? tr("No broken limit after this.") : tr("No broken limit before this."));
    const BrokenLimit limit = *found;
    goTo(dateOfLimit(limit), limit.slot);
    say(kLimitShape + QStringLiteral(" ") + limitWords(limit, m_shown->block(), m_shown->library()));
}

}  // namespace steelyard
