// Runs tests without a screen: a program of QtCore alone.
#include <gtest/gtest.h>

#include <QtCore/QCoreApplication>

int main(int argc, char** argv)
{
    testing::InitGoogleTest(&argc, argv);
    const QCoreApplication application(argc, argv);
    return RUN_ALL_TESTS();
}
