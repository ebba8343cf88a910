#include "ui/charts/travel_panel.h"

#include "core/numerics/robust_trend.h"
#include "ui/format/repetition_words.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct TravelPanelText {
    Q_DECLARE_TR_FUNCTIONS(TravelPanelText)
};

constexpr double kJoinTravelDays = 35;

struct SessionTravel {
    PanelSeries each{.name = TravelPanelText::tr("a repetition"), .shape = PanelShape::Disc};
    PanelSeries middle{.name = TravelPanelText::tr("the session's median"),
                       .shape = PanelShape::Diamond,
                       .line = PanelLine::Solid,
                       .ink = 1};
    std::vector<double> values;
};

void addSession(SessionTravel& travel, const RatingsSource& source, const RatedSession& session)
{
    std::vector<double> values;
    for (const LoggedSet& logged : session.logged->sets) {
        const auto* repetitions = repetitionsOf(source.repetitions, logged.id);
        if (!repetitions || logged.set.kind == SetKind::WarmUp) continue;
        for (const Repetition& one : *repetitions) {
            const auto value = valueOf(one, RepetitionQuantity::Travel);
            if (!value) continue;
            const bool isShort = one.marks.has(Mark::ShortBottom) || one.marks.has(Mark::ShortTop);
            travel.each.points.push_back({session.x(), *value, isShort});
            values.push_back(*value);
        }
    }
    travel.values.insert(travel.values.end(), values.begin(), values.end());
    if (const auto middle = median(std::move(values))) travel.middle.points.push_back({session.x(), *middle});
}

}  // namespace

std::optional<PlotPanel> travelPanel(const RatingsSource& source, const std::vector<RatedSession>& sessions,
                                     const QLocale& locale)
{
    SessionTravel travel;
    for (const RatedSession& session : sessions) addSession(travel, source, session);
    if (travel.values.empty()) return std::nullopt;
    auto [low, high] = std::ranges::minmax(travel.values);
    PlotPanel panel;
    panel.title = TravelPanelText::tr("travel of the repetitions, mm");
    panel.column = 1;
    const auto full = fullTravel(lineRepetitions(source.record, source.repetitions));
    const auto& least = source.record.standard.value.leastTravelPercent;
    if (full && least) low = std::min(low, full->mm * *least / 100);
    setValueAxis(panel, low, high, 3, locale);
    if (full && least)
        panel.zones.push_back({panel.low, full->mm * *least / 100, TravelPanelText::tr("less doesn't count"), false});
    travel.middle.runs = runsOf(travel.middle.points, kJoinTravelDays);
    panel.series = {std::move(travel.each), std::move(travel.middle)};
    return panel;
}

QString travelSummary(const RatingsSource& source)
{
    const auto& exposures = source.record.exposures;
    for (auto exposure = exposures.rbegin(); exposure != exposures.rend(); ++exposure)
        for (auto logged = exposure->sets.rbegin(); logged != exposure->sets.rend(); ++logged) {
            if (logged->set.kind == SetKind::WarmUp || !repetitionsOf(source.repetitions, logged->id)) continue;
            const auto found = repetitionConsistency(likeSets(source.record, source.repetitions, logged->id),
                                                     RepetitionQuantity::Travel);
            return found ? consistencyWords(*found, RepetitionQuantity::Travel) : QString();
        }
    return {};
}

}  // namespace steelyard
