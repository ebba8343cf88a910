// A roster whose sessions vary much more from day to day than the shipped numbers expect: something to learn.
#pragma once

#include "tests/support/temp_book.h"

#include <algorithm>
#include <cmath>
#include <random>

namespace steelyard::test {

// Adds lifters who train `line`'s variant twice a week, the last time on `lastDay`. All sets of a day are off by the same
// amount; reserve is known and everything was watched.
inline std::vector<Id<Athlete>> fillRestlessRoster(Book& book, const LiftLine& pattern, int lifters, int weeks,
                                                   QDate lastDay)
{
    std::mt19937_64 random(17);
    std::normal_distribution<double> form(0, 2.5);
    auto tx = must(Transaction::begin(book.database()));
    std::vector<Id<Athlete>> added;
    for (int i = 0; i < lifters; ++i) {
        Athlete athlete;
        athlete.name = QStringLiteral("Restless %1").arg(i);
        athlete.consents = {HealthConsent::given(QDate(2020, 1, 1))};
        athlete.experience = Experience::Intermediate;
        LiftLine line = pattern;
        line.athlete = must(book.athletes().insert(tx, athlete));
        added.push_back(line.athlete);
        const auto lineId = must(book.logbook().line(tx, line));
        for (int session = 2 * weeks - 1; session >= 0; --session) {
            const auto on = must(book.logbook().session(tx, line.athlete, lastDay.addDays(-(7 * session) / 2)));
            const double today = 10 + form(random);
            for (int number = 1; number <= 2; ++number) {
                SetEntry set = workSet("40", std::max(1, static_cast<int>(std::lround(today)) - number), 0);
                set.number = number;
                set.effort = Effort{Effort::Scale::Rir, Decimal(1)};
                must(book.logbook().insert(tx, line.athlete, {on, lineId, number, set}));
            }
        }
    }
    must(tx.commit());
    return added;
}

}  // namespace steelyard::test
