// With names as initials, no name stands anywhere on screen or paper: in no widget, tooltip, model, menu, title, nor in what is
// painted.
#include "core/edits/edits.h"
#include "tests/support/club_window.h"
#include "tests/support/page_tour.h"
#include "tests/support/text_walk.h"
#include "ui/format/people.h"

#include <QtWidgets/QLabel>

namespace steelyard {
namespace {

using testing_support::paintedBy;
using testing_support::textsOf;
using testing_support::tourPages;

class Initials : public testing_support::ClubWindow {
protected:
    Initials() : ClubWindow({.athletes = 4, .years = 1, .seed = 3}) {}
    ~Initials() override { format::callPeople(false, {}); }

    void SetUp() override
    {
        ClubWindow::SetUp();
        const auto all = window.book()->athletes().all();
        ASSERT_TRUE(all);
        for (const Row<Athlete>& row : *all) names << row.value.name.split(u' ');
        // Something with a name in it to be undone.
        Athlete added;
        added.name = QStringLiteral("Zorblatt Quibblewick");
        ASSERT_TRUE(window.book()->history().perform(addAthlete(added)));
        names << added.name.split(u' ');
        settle();
    }
    [[nodiscard]] QStringList found(const QString& text) const
    {
        QStringList all;
        for (const QString& name : names)
            if (text.contains(name)) all << name;
        return all;
    }
    QStringList names;
};

TEST_F(Initials, LeaveNoNameOnAnyPageMenuOrTooltip)
{
    int seenBefore = 0;
    for (const QString& text : textsOf(window)) seenBefore += found(text).isEmpty() ? 0 : 1;
    ASSERT_GT(seenBefore, 5);
    ASSERT_FALSE(found(paintedBy(window)).isEmpty());

    window.perform(QStringLiteral("view.initials"));
    settle();
    EXPECT_EQ(window.windowTitle(), QStringLiteral("Steelyard"));
    EXPECT_TRUE(window.findChild<QLabel*>(QStringLiteral("initialsShown"))->isVisible());
    EXPECT_TRUE(window.action(QStringLiteral("edit.undo"))->text().contains(QStringLiteral("Z. Q.")));
    tourPages(window, [&](const QString& where) {
        for (const QString& text : textsOf(window))
            EXPECT_TRUE(found(text).isEmpty()) << qPrintable(where) << " " << qPrintable(text);
        const QString painted = paintedBy(window);
        EXPECT_TRUE(found(painted).isEmpty()) << qPrintable(where) << qPrintable(found(painted).join(u' '));
    });
}

TEST_F(Initials, StandOnPaperAndInTheNamesOfFiles)
{
    window.perform(QStringLiteral("view.initials"));
    settle();
    int papers = 0;
    for (const auto& [place, action] : {std::pair("week", "week.pdf"), std::pair("floor", "floor.pdf")}) {
        prompter.path = dir.path(u"paper.pdf");
        QFile::remove(prompter.path);
        window.view()->showPlace(QString::fromLatin1(place));
        settle();
        window.perform(QString::fromLatin1(action));
        ASSERT_TRUE(QTest::qWaitFor([&] { return window.isSettled() && QFile::exists(prompter.path); }, 30000))
            << action;
        QProcess reader;
        reader.start(QStringLiteral("pdftotext"), {prompter.path, QStringLiteral("-")});
        ASSERT_TRUE(reader.waitForFinished(30000));
        const QString text = QString::fromUtf8(reader.readAllStandardOutput());
        EXPECT_GT(text.size(), 200);
        EXPECT_TRUE(found(text).isEmpty()) << action << qPrintable(found(text).join(u' '));
        ++papers;
    }
    EXPECT_EQ(papers, 2);
}

TEST_F(Initials, GoAndComeBackWithoutAnyChangeToTheBook)
{
    const QByteArray before = content();
    window.perform(QStringLiteral("view.initials"));
    settle();
    EXPECT_TRUE(window.action(QStringLiteral("view.initials"))->isChecked());
    EXPECT_TRUE(settings.value(QStringLiteral("view/initials")).toBool());
    window.perform(QStringLiteral("view.initials"));
    settle();
    EXPECT_FALSE(window.action(QStringLiteral("view.initials"))->isChecked());
    EXPECT_FALSE(found(paintedBy(window)).isEmpty());
    EXPECT_TRUE(window.windowTitle().contains(QStringLiteral("club")));
    EXPECT_EQ(content(), before);
}

TEST_F(Initials, StillFindALifterByTheName)
{
    window.perform(QStringLiteral("view.initials"));
    settle();
    ASSERT_TRUE(window.view()->chooseLifter(QStringLiteral("Zorblatt Quibblewick")));
}

}  // namespace
}  // namespace steelyard
