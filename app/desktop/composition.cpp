#include "app/desktop/composition.h"

namespace steelyard {

MainServices makeServices(const Clock& clock)
{
    MainServices services;
    services.reviewer = reviewRoster;
    services.makeEmptyBook = [&clock](const QString& path, const Progress&) -> Result<void> {
        STEELYARD_CHECK(Book::create(path, clock));
        return {};
    };
    return services;
}

}  // namespace steelyard
