#include "core/domain/athlete.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

const QDate kAsked(2026, 3, 2);

TEST(HealthConsent, CountsFromTheDayItIsGivenUntilItIsWithdrawn)
{
    HealthConsents consents;
    EXPECT_EQ(standingOf(consents), ConsentStanding::NotAsked);
    EXPECT_FALSE(mayKeep(consents, HealthField::Discomfort));
    consents.push_back(HealthConsent::given(kAsked));
    EXPECT_EQ(standingOf(consents), ConsentStanding::Given);
    EXPECT_TRUE(mayKeep(consents, HealthField::Discomfort));
    EXPECT_TRUE(mayKeep(consents, HealthField::JointHistory));
    withdraw(consents, kAsked.addDays(3));
    EXPECT_EQ(standingOf(consents), ConsentStanding::Withdrawn);
    EXPECT_FALSE(mayKeep(consents, HealthField::Discomfort));
    EXPECT_EQ(consents.front().givenOn, kAsked);
    consents.push_back(HealthConsent::given(kAsked.addDays(9)));
    EXPECT_EQ(standingOf(consents), ConsentStanding::Given);
}

TEST(HealthConsent, IsForTheKindsOfEntryInItsScopeOnly)
{
    const HealthConsents consents{HealthConsent::given(kAsked, {true, false})};
    EXPECT_TRUE(mayKeep(consents, HealthField::Discomfort));
    EXPECT_FALSE(mayKeep(consents, HealthField::JointHistory));
    EXPECT_EQ(consents.front().scope.toString(), QStringLiteral("discomfort"));
    EXPECT_EQ(HealthScope::parse(u"joint_history of_a_newer_program"), (HealthScope{false, true}));
    EXPECT_EQ(HealthScope::parse(HealthScope{}.toString()), HealthScope{});
}

TEST(HealthConsent, OfBeforeAnybodyWasAskedCountsAndIsToBeConfirmed)
{
    const HealthConsents consents{HealthConsent::toConfirm()};
    EXPECT_EQ(standingOf(consents), ConsentStanding::ToConfirm);
    EXPECT_TRUE(mayKeep(consents, HealthField::Discomfort));
    EXPECT_TRUE(validate(consents, kAsked).empty());
}

TEST(HealthConsent, OfNothingOrOfTheFutureOrWithoutWordingIsRefused)
{
    HealthConsent consent = HealthConsent::given(kAsked);
    EXPECT_TRUE(validate(HealthConsents{consent}, kAsked).empty());
    EXPECT_FALSE(validate(HealthConsents{consent}, kAsked.addDays(-1)).empty());
    consent.withdrawnOn = kAsked.addDays(-1);
    EXPECT_FALSE(validate(HealthConsents{consent}, kAsked).empty());
    consent.withdrawnOn.reset();
    consent.wording = 0;
    EXPECT_FALSE(validate(HealthConsents{consent}, kAsked).empty());
    EXPECT_FALSE(validate(HealthConsents{HealthConsent::given(kAsked, {false, false})}, kAsked).empty());
}

TEST(HealthConsent, HasItsWordsUnderItsNumberForGood)
{
    EXPECT_TRUE(consentWording(kConsentWording).contains(QStringLiteral("discomfort")));
    EXPECT_EQ(consentWording(0), QString());
    EXPECT_EQ(consentWording(kConsentWording + 1), QString());
}

TEST(Athlete, HasAJointHistoryOnlyWithConsent)
{
    Athlete athlete;
    athlete.name = QStringLiteral("Ada Fulcrum");
    athlete.jointHistory = QStringLiteral("left elbow");
    ASSERT_EQ(validate(athlete, kAsked).size(), 1U);
    EXPECT_EQ(validate(athlete, kAsked).front().field, QStringLiteral("joint_history"));
    athlete.consents = {HealthConsent::given(kAsked, {true, false})};
    EXPECT_EQ(validate(athlete, kAsked).size(), 1U);
    athlete.consents = {HealthConsent::given(kAsked)};
    EXPECT_TRUE(validate(athlete, kAsked).empty());
}

}  // namespace
}  // namespace steelyard
