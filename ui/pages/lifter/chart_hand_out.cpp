#include "ui/pages/lifter/chart_hand_out.h"

#include "ui/charts/chart_picture.h"
#include "ui/format/format.h"
#include "ui/format/people.h"
#include "ui/pages/lifter/line_list_model.h"
#include "ui/prompt/prompter.h"

#include <QtCore/QPointer>
#include <QtGui/QClipboard>
#include <QtGui/QGuiApplication>

namespace steelyard {
namespace {

struct HandOutText {
    Q_DECLARE_TR_FUNCTIONS(HandOutText)
};

}  // namespace

ChartCaption captionOf(const LifterView& view, const ShownLine& shown)
{
    QStringList parts{format::person(shown.lifter->log.athlete.value.name), lineTitle(shown.record())};
    if (const QString detail = lineDetail(shown.record()); !detail.isEmpty()) parts << detail;
    parts << view.title();
    return {parts.join(QStringLiteral(" · ")), format::date(shown.today)};
}

QString pictureName(const ShownLine& shown)
{
    QString name = QStringList{format::person(shown.lifter->log.athlete.value.name), lineTitle(shown.record()),
                               shown.today.toString(Qt::ISODate)}
                       .join(u' ');
    static const QString kUnwanted = QStringLiteral("/\\:*?\"<>|");
    for (QChar& letter : name)
        if (kUnwanted.contains(letter) || !letter.isPrint()) letter = u'-';
    return name + QStringLiteral(".png");
}

void copyChart(const LifterView& view, const ShownLine& shown)
{
    QGuiApplication::clipboard()->setImage(chartImage(*view.drawing(), captionOf(view, shown)));
}

void saveChartAs(Prompter& prompter, const LifterView& view, const ShownLine& shown, QWidget* parent,
                 std::function<void(const QString& path)> saved)
{
    const FileQuestion question{HandOutText::tr("Save the chart"), pictureName(shown),
                                HandOutText::tr("Pictures (*.png *.svg *.pdf)"), QStringLiteral("png")};
    // The view may be gone, or draw nothing any more, when the answer comes.
    prompter.chooseFileToSave(parent, question,
                              [&prompter, view = QPointer<const LifterView>(&view), caption = captionOf(view, shown),
                               parent, saved = std::move(saved)](const QString& path) {
                                  QWidget* drawing = view ? view->drawing() : nullptr;
                                  if (!drawing) return;
                                  if (const auto done = saveChart(*drawing, caption, path); done)
                                      saved(path);
                                  else
                                      prompter.tellError(parent, HandOutText::tr("The chart was not saved"),
                                                         done.error());
                              });
}

}  // namespace steelyard
