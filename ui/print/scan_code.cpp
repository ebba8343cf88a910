#include "ui/print/scan_code.h"

#include <memory>

#include <qrencode.h>

namespace steelyard {

std::optional<ScanCode> makeScanCode(const QString& text)
{
    constexpr bool kCaseMatters = true;
    const std::unique_ptr<QRcode, decltype(&QRcode_free)> made(
        QRcode_encodeString(text.toUtf8().constData(), 0, QR_ECLEVEL_Q, QR_MODE_8, kCaseMatters ? 1 : 0), &QRcode_free);
    if (!made) return std::nullopt;
    ScanCode code{made->width, {}};
    const auto count = static_cast<std::size_t>(made->width) * static_cast<std::size_t>(made->width);
    code.dark.reserve(count);
    for (std::size_t i = 0; i < count; ++i) code.dark.push_back((made->data[i] & 1U) != 0);
    return code;
}

}  // namespace steelyard
