#include "ui/pages/week/kept_filters.h"

#include "tests/support/temp_dir.h"

#include <QtCore/QSettings>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

AthleteReview someone()
{
    AthleteReview review{.athlete = Id<Athlete>(1)};
    review.name = QStringLiteral("Żaneta Quill");
    review.group = QStringLiteral("Tuesday");
    review.tags = {QStringLiteral("juniors"), QStringLiteral("back soon")};
    review.summary.muscles = {{.muscle = Id<Muscle>(1), .name = QStringLiteral("Biceps"), .perWeek = 4}};
    LineReview line{.id = Id<LiftLine>(1), .exercise = QStringLiteral("Arm curl")};
    review.lines.push_back(std::move(line));
    Flag flag;
    flag.rule = QStringLiteral("stalled");
    review.flags = {flag};
    return review;
}

TEST(PictureFilter, LetsEverybodyPassWhenNothingIsAsked)
{
    EXPECT_TRUE(PictureFilter{}.accepts(someone()));
    EXPECT_TRUE(PictureFilter{}.accepts(AthleteReview{.athlete = Id<Athlete>(2)}));
}

TEST(PictureFilter, FindsWordsInNameGroupAndTags)
{
    EXPECT_TRUE(PictureFilter{.text = QStringLiteral("zan")}.accepts(someone()));
    EXPECT_TRUE(PictureFilter{.text = QStringLiteral("soon quill TUES")}.accepts(someone()));
    EXPECT_FALSE(PictureFilter{.text = QStringLiteral("quill monday")}.accepts(someone()));
}

TEST(PictureFilter, AsksForEveryPartThatIsChosen)
{
    const PictureFilter whole{.text = {},
                              .muscle = QStringLiteral("Biceps"),
                              .exercise = QStringLiteral("Arm curl"),
                              .rule = QStringLiteral("stalled"),
                              .group = QStringLiteral("Tuesday"),
                              .tag = QStringLiteral("juniors")};
    EXPECT_TRUE(whole.accepts(someone()));
    for (const PictureFacet& facet : pictureFacets()) {
        PictureFilter other = whole;
        other.*facet.chosen = QStringLiteral("something else");
        EXPECT_FALSE(other.accepts(someone())) << facet.key;
        EXPECT_FALSE(whole.accepts(AthleteReview{.athlete = Id<Athlete>(2)})) << facet.key;
    }
}

TEST(PictureFilter, IsTheSameAfterItWasKept)
{
    PictureFilter filter{.text = QStringLiteral("a, \"b\" = c")};
    for (const PictureFacet& facet : pictureFacets()) filter.*facet.chosen = QString::fromLatin1(facet.key);
    EXPECT_EQ(PictureFilter::fromMap(filter.toMap()), filter);
    EXPECT_EQ(PictureFilter::fromMap({{QStringLiteral("of a newer program"), 3}}), PictureFilter{});
}

class KeptFilterFile : public testing::Test {
protected:
    // As the next start of the program finds it.
    std::vector<KeptFilter> afterRestart()
    {
        QSettings again(path, QSettings::IniFormat);
        return KeptFilters(&again).all();
    }
    testing_support::TempDir dir;
    QString path = dir.path(u"settings.ini");
    QSettings settings{path, QSettings::IniFormat};
    KeptFilters kept{&settings};
    const PictureFilter stalled{.rule = QStringLiteral("stalled")};
    const PictureFilter tuesday{.text = QStringLiteral("é; x"), .group = QStringLiteral("Tuesday")};
};

TEST_F(KeptFilterFile, OutlivesTheProgramInItsOrder)
{
    kept.keep(QStringLiteral("stalls"), stalled);
    kept.keep(QStringLiteral("Tuesday, é"), tuesday);
    settings.sync();
    EXPECT_EQ(afterRestart(),
              (std::vector<KeptFilter>{{QStringLiteral("stalls"), stalled}, {QStringLiteral("Tuesday, é"), tuesday}}));
}

TEST_F(KeptFilterFile, ReplacesWhatHasTheSameNameWhateverItsCase)
{
    kept.keep(QStringLiteral("one"), stalled);
    kept.keep(QStringLiteral("ONE"), tuesday);
    ASSERT_EQ(kept.all().size(), 1u);
    EXPECT_EQ(kept.all()[0].filter, tuesday);
    EXPECT_EQ(kept.find(tuesday)->name, QStringLiteral("ONE"));
    EXPECT_EQ(kept.find(stalled), nullptr);
}

TEST_F(KeptFilterFile, IsRenamedUnlessTheNameIsTaken)
{
    kept.keep(QStringLiteral("one"), stalled);
    kept.keep(QStringLiteral("two"), tuesday);
    EXPECT_FALSE(kept.rename(QStringLiteral("one"), QStringLiteral("Two")));
    EXPECT_FALSE(kept.rename(QStringLiteral("none"), QStringLiteral("three")));
    EXPECT_TRUE(kept.rename(QStringLiteral("one"), QStringLiteral("One")));
    settings.sync();
    EXPECT_EQ(afterRestart()[0].name, QStringLiteral("One"));
}

TEST_F(KeptFilterFile, ForgetsWhatIsDeleted)
{
    kept.keep(QStringLiteral("one"), stalled);
    kept.keep(QStringLiteral("two"), tuesday);
    kept.remove(QStringLiteral("one"));
    settings.sync();
    EXPECT_EQ(afterRestart(), (std::vector<KeptFilter>{{QStringLiteral("two"), tuesday}}));
}

TEST(KeptFilters, LiveWithoutSettingsAsLongAsTheWindow)
{
    KeptFilters kept(nullptr);
    kept.keep(QStringLiteral("one"), PictureFilter{.tag = QStringLiteral("t")});
    EXPECT_EQ(kept.all().size(), 1u);
}

}  // namespace
}  // namespace steelyard
