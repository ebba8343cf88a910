#include "app/desktop/composition.h"

#include "core/exchange/new_book.h"
#include "core/samples/sample_club.h"

namespace steelyard {

MainServices makeServices(const Clock& clock)
{
    MainServices services;
    services.reviewer = reviewRoster;
    services.makeEmptyBook = [&clock](const QString& path, const Progress&) -> Result<void> {
        STEELYARD_CHECK(newBook(path, clock));
        return {};
    };
    services.makeSampleClub = [&clock](const QString& path, const Progress& progress) -> Result<void> {
        STEELYARD_TRY(const auto book, newBook(path, clock));
        return fillSampleClub(*book, {.lastDay = clock.today()}, progress);
    };
    return services;
}

}  // namespace steelyard
