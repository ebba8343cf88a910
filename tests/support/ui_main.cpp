// Runs tests of the window. Without a platform named from outside it draws into memory, so no display is needed.
#include "ui/shell/guarded_application.h"

#include <gtest/gtest.h>

int main(int argc, char** argv)
{
    testing::InitGoogleTest(&argc, argv);
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    const steelyard::GuardedApplication application(argc, argv);
    return RUN_ALL_TESTS();
}
