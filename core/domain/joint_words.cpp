#include "core/domain/joint_words.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct JointText {
    Q_DECLARE_TR_FUNCTIONS(JointText)
};

}  // namespace

QString jointName(Joint joint)
{
    switch (joint) {
    case Joint::Elbow:
        return JointText::tr("elbow");
    case Joint::Shoulder:
        return JointText::tr("shoulder");
    case Joint::Wrist:
        return JointText::tr("wrist");
    case Joint::LowerBack:
        return JointText::tr("lower back");
    case Joint::Hip:
        return JointText::tr("hip");
    case Joint::Knee:
        return JointText::tr("knee");
    case Joint::Neck:
        return JointText::tr("neck");
    case Joint::Ankle:
        return JointText::tr("ankle");
    }
    return {};
}

}  // namespace steelyard
