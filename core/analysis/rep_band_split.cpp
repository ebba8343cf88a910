#include "core/analysis/rep_band_split.h"

#include "core/analysis/counting.h"
#include "core/domain/gave_out.h"
#include "core/numerics/robust_trend.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct RepBandSplitText {
    Q_DECLARE_TR_FUNCTIONS(RepBandSplitText)
};

}  // namespace

std::size_t usualBandOf(int reps)
{
    const auto band = std::ranges::find_if(kUsualBands, [&](const RepBand& one) { return reps <= one.high; });
    return std::min(static_cast<std::size_t>(band - kUsualBands.begin()), kUsualBands.size() - 1);
}

QString usualBandText(std::size_t band)
{
    if (band + 1 == kUsualBands.size()) return RepBandSplitText::tr("more than %1").arg(kUsualBands[band - 1].high);
    return RepBandSplitText::tr("%1–%2").arg(kUsualBands.at(band).low).arg(kUsualBands.at(band).high);
}

std::optional<int> leadingReps(const Exposure& exposure)
{
    const auto first = std::ranges::find_if(exposure.sets, [](const LoggedSet& one) { return isWorkingSet(one.set); });
    if (first == exposure.sets.end() || first->set.reps == 0) return std::nullopt;
    return first->set.reps;
}

void BandRatings::add(const ExerciseRating& rating)
{
    if (const auto strongest = rating.felt()) felt.push_back(*strongest);
    if (rating.gaveOut.isEmpty()) return;
    ++limiterRated;
    if (rating.gaveOut == kTargetGaveOut) ++targetGaveOut;
}

double BandRatings::strength() const
{
    return median(felt).value_or(0);
}

double BandRatings::targetShare() const
{
    return limiterRated > 0 ? static_cast<double>(targetGaveOut) / limiterRated : 0;
}

RatingsByBand ratingsByBand(const LineRecord& line, QDate from)
{
    RatingsByBand ratings;
    for (const Exposure& exposure : line.exposures) {
        if (exposure.date < from) continue;
        if (const auto reps = leadingReps(exposure)) ratings.at(usualBandOf(*reps)).add(exposure.rating);
    }
    return ratings;
}

BandSplit splitByBand(const AthleteLog& log, std::size_t line)
{
    const LineRecord& whole = log.lines.at(line);
    BandSplit split{{log.athlete, log.bodyMass, {}, log.sessionDates, log.blocks, {}, log.muscles, {}}, {}};
    for (std::size_t band = 0; band < kUsualBands.size(); ++band) {
        LineRecord part = whole;
        part.id = Id<LiftLine>(static_cast<std::int64_t>(band) + 1);
        std::erase_if(part.exposures, [&](const Exposure& one) {
            const auto reps = leadingReps(one);
            return !reps || usualBandOf(*reps) != band;
        });
        if (part.exposures.empty()) continue;
        split.log.lines.push_back(std::move(part));
        split.bands.push_back(band);
    }
    return split;
}

}  // namespace steelyard
