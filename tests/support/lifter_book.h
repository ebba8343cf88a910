// A book with one lifter and one lift line for tests of pages.
#pragma once

#include "core/book/book.h"
#include "core/edits/edits.h"
#include "tests/support/temp_dir.h"

namespace steelyard::testing_support {

template <class T>
T must(Result<T> result)
{
    if (!result) qFatal("%s (%s)", qPrintable(result.error().what), qPrintable(result.error().detail));
    return std::move(*result);
}

class LifterBook {
public:
    explicit LifterBook(QDate today) : clock(today), book(must(Book::create(dir.path(u"club.steelyard"), clock)))
    {
        Athlete lifter;
        lifter.name = QStringLiteral("Dana Quill");
        lifter.consents = {HealthConsent::given(QDate(2020, 1, 1))};
        (void)must(book->history().perform(addAthlete(lifter)));
        athlete = must(book->athletes().findByName(lifter.name)).id;
    }

    // A line of its own exercise with `sessions` sessions of three sets, three or four days apart, ending today.
    LiftLine addLine(const QString& exercise, int sessions)
    {
        auto tx = must(Transaction::begin(book->database()));
        const LibraryRepository library(book->database());
        const auto exerciseId = must(library.insert(tx, Exercise{exercise, {}, false}));
        Variant variant{exerciseId, QStringLiteral("straight bar, upright")};
        variant.isDefault = true;
        const auto variantId = must(library.insert(tx, variant));
        const auto gripId = must(library.insert(tx, Grip{exercise + QStringLiteral(" grip"), {}, {}, {}}));
        const auto standardId = must(library.insert(tx, RepStandard{variantId, {}, QStringLiteral("strict")}));
        if (const auto done = tx.commit(); !done) qFatal("%s", qPrintable(done.error().what));
        const LiftLine line{*athlete, variantId, gripId, standardId};
        QDate day = clock.today().addDays(-(7 * (sessions - 1)) / 2);
        for (int i = 0; i < sessions; ++i, day = day.addDays(i % 2 ? 3 : 4)) addSession(line, day, i);
        return line;
    }

    void addSession(const LiftLine& line, QDate day, int index)
    {
        for (int number = 0; number < 3; ++number) {
            SetEntry set;
            set.load = *Load::parse(index < 12 ? u"40" : u"42.5", MassUnit::kg);
            set.reps = 8 + (index % 12) / 3 - (number == 2 ? 1 : 0);
            if (index % 6 != 5) set.off = index % 7 == 6 ? 5 : (number == 2 ? 1 : 0);
            if (set.off.value_or(0) > 0) set.marks.set(Mark::Swing, *set.off);
            set.effort = Effort{Effort::Scale::Rir, Decimal(number == 2 ? 1 : 2)};
            (void)must(book->history().perform(addSet(line, day, set)));
        }
    }

    TempDir dir;
    FixedClock clock;
    std::unique_ptr<Book> book;
    std::optional<Id<Athlete>> athlete;
};

}  // namespace steelyard::testing_support
