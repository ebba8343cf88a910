#include "ui/shell/learning.h"

#include "core/book/book.h"
#include "core/book/learn_parameters.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct LearningText {
    Q_DECLARE_TR_FUNCTIONS(LearningText)
};

}  // namespace

JobHandle learnFromRoster(const UiContext& context, QObject* owner, std::function<void(const QString&)> say)
{
    const LearnRequest request{context.book.path(), context.clock.today(), {}};
    return context.jobs.run(
        owner, LearningText::tr("Learning from the roster"),
        [request, place = context.book.database().checkPlace()](const Progress& progress) -> Result<LearnReport> {
            STEELYARD_CHECK(place);  // never into another file that came there
            return learnParameters(request, progress);
        },
        [&book = context.book, say = std::move(say)](const Result<LearnReport>& report) {
            if (!report) return say(report.error().what);
            // Said first: what the change sets off may want the line for itself.
            say(learnSentence(*report));
            book.hub().publish(report->changes);
        });
}

}  // namespace steelyard
