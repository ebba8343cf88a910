// A book with one lifter, two grips, and a trial of them that could be stored: four sessions, Mondays and Thursdays.
#pragma once

#include "tests/support/temp_book.h"

namespace steelyard::test {

class TrialBook {
public:
    TrialBook() : neutral(book.line())
    {
        auto tx = must(Transaction::begin(book->database()));
        neutral.grip = must(book->library().insert(
            tx, Grip{QStringLiteral("neutral, medium"), HandOrientation::Neutral, HandSpacing::Medium, {}}));
        must(tx.commit());
    }
    [[nodiscard]] static TrialArm arm(const LiftLine& line)
    {
        return {.variant = line.variant, .grip = line.grip, .standard = line.standard, .band = {8, 12}};
    }
    // Designed on Sunday 1 March 2026; the order is A B, B A.
    [[nodiscard]] Trial trial() const
    {
        Trial made{.athlete = book.athlete()};
        made.question = QStringLiteral("Supinated or neutral?");
        made.designedOn = QDate(2026, 3, 1);
        made.arms = {arm(book.line()), arm(neutral)};
        made.outcomes = {{QStringLiteral("tension"), 2.0}, {QStringLiteral("reps"), 1.0}};
        made.blocks = 2;
        made.days = {{QDate(2026, 3, 2), 1, 0},
                     {QDate(2026, 3, 5), 1, 1},
                     {QDate(2026, 3, 9), 2, 1},
                     {QDate(2026, 3, 12), 2, 0}};
        return made;
    }
    Id<RepStandard> standardOfAnotherVariant()
    {
        auto tx = must(Transaction::begin(book->database()));
        const auto library = must(book->library().read());
        Variant other = library.find(book.line().variant)->value;
        other.name = QStringLiteral("cable, upright");
        other.isDefault = false;
        RepStandard standard{.variant = must(book->library().insert(tx, other))};
        standard.name = QStringLiteral("strict");
        const auto id = must(book->library().insert(tx, standard));
        must(tx.commit());
        return id;
    }

    mutable TempBook book;
    LiftLine neutral;
};

}  // namespace steelyard::test
