#include "ui/format/body_words.h"

#include "ui/format/format.h"

#include <QtCore/QCoreApplication>

namespace steelyard::format {
namespace {

struct BodyWordText {
    Q_DECLARE_TR_FUNCTIONS(BodyWordText)
};

}  // namespace

QString bodyPlaceWord(BodyPlace place)
{
    switch (place) {
    case BodyPlace::Neck:
        return BodyWordText::tr("neck");
    case BodyPlace::Shoulders:
        return BodyWordText::tr("shoulders");
    case BodyPlace::Chest:
        return BodyWordText::tr("chest");
    case BodyPlace::Waist:
        return BodyWordText::tr("waist");
    case BodyPlace::Hips:
        return BodyWordText::tr("hips");
    case BodyPlace::UpperArm:
        return BodyWordText::tr("upper arm");
    case BodyPlace::Forearm:
        return BodyWordText::tr("forearm");
    case BodyPlace::Thigh:
        return BodyWordText::tr("thigh");
    case BodyPlace::Calf:
        return BodyWordText::tr("calf");
    }
    return {};
}

QString tape(const Measurement& measured)
{
    return decimal(measured.value) + QChar(0x00A0) + toText(measured.unit);
}

}  // namespace steelyard::format
