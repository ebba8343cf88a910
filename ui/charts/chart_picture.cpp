#include "ui/charts/chart_picture.h"

#include "ui/print/whole_file.h"
#include "ui/shell/theme.h"

#include <QtCore/QBuffer>
#include <QtCore/QCoreApplication>
#include <QtCore/QFileInfo>
#include <QtGui/QPageSize>
#include <QtGui/QPainter>
#include <QtGui/QPdfWriter>
#include <QtSvg/QSvgGenerator>
#include <QtWidgets/QWidget>

#include <cmath>

namespace steelyard {
namespace {

struct PictureText {
    Q_DECLARE_TR_FUNCTIONS(PictureText)
};

constexpr int kMargin = 14;  // of the picture, in the dots of the screen

// The light palette on white, for as long as this lives.
class LightDress {
public:
    explicit LightDress(QWidget& widget)
        : m_widget(widget), m_palette(widget.palette()), m_own(widget.testAttribute(Qt::WA_SetPalette))
    {
        QPalette light = themePalette(false);
        light.setColor(QPalette::Base, Qt::white);
        light.setColor(QPalette::Window, Qt::white);
        m_widget.setPalette(light);
    }
    ~LightDress() { m_widget.setPalette(m_own ? m_palette : QPalette()); }
    LightDress(const LightDress&) = delete;
    LightDress& operator=(const LightDress&) = delete;

private:
    QWidget& m_widget;
    QPalette m_palette;
    bool m_own;
};

// The drawing with its caption, in the screen's dots from 0, 0.
class PictureSheet {
public:
    PictureSheet(QWidget& drawing, const ChartCaption& caption)
        : m_dress(drawing), m_drawing(drawing), m_caption(caption), m_title(drawing.font()), m_detail(drawing.font())
    {
        m_title.setBold(true);
        m_captionHeight = static_cast<int>(std::ceil(QFontMetricsF(m_title, &drawing).height())) + 10;
    }
    [[nodiscard]] QSize size() const { return m_drawing.size() + QSize(2 * kMargin, 2 * kMargin + m_captionHeight); }
    [[nodiscard]] int dotsPerInch() const { return m_drawing.logicalDpiX(); }

    void paint(QPainter& painter) const
    {
        painter.fillRect(QRect(QPoint(), size()), Qt::white);
        painter.setPen(themeColours(false).text);
        const QRectF line(kMargin, kMargin, m_drawing.width(), m_captionHeight);
        painter.setFont(m_detail);
        painter.drawText(line, Qt::AlignRight | Qt::AlignTop, m_caption.detail);
        const double room = line.width() - QFontMetricsF(m_detail, &m_drawing).horizontalAdvance(m_caption.detail) - 16;
        painter.setFont(m_title);
        painter.drawText(line, Qt::AlignLeft | Qt::AlignTop,
                         QFontMetricsF(m_title, &m_drawing).elidedText(m_caption.title, Qt::ElideRight, room));
        painter.translate(kMargin, kMargin + m_captionHeight);
        // A scrolling view's own render() would draw its scene alone.
        m_drawing.QWidget::render(&painter);
    }

private:
    LightDress m_dress;
    QWidget& m_drawing;
    const ChartCaption& m_caption;
    QFont m_title;
    QFont m_detail;
    int m_captionHeight = 0;
};

}  // namespace

QImage chartImage(QWidget& drawing, const ChartCaption& caption)
{
    const PictureSheet sheet(drawing, caption);
    QImage image(sheet.size() * kPictureScale, QImage::Format_RGB32);
    image.setDevicePixelRatio(kPictureScale);
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    sheet.paint(painter);
    return image;
}

QByteArray chartSvg(QWidget& drawing, const ChartCaption& caption)
{
    const PictureSheet sheet(drawing, caption);
    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    QSvgGenerator generator;
    generator.setOutputDevice(&buffer);
    generator.setResolution(sheet.dotsPerInch());
    generator.setSize(sheet.size());
    generator.setViewBox(QRect(QPoint(), sheet.size()));
    generator.setTitle(caption.title);
    generator.setDescription(drawing.accessibleDescription());
    QPainter painter(&generator);
    sheet.paint(painter);
    painter.end();
    return buffer.data();
}

QByteArray chartPdf(QWidget& drawing, const ChartCaption& caption)
{
    const PictureSheet sheet(drawing, caption);
    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter writer(&buffer);
    writer.setResolution(sheet.dotsPerInch());
    writer.setPageSize(QPageSize(QSizeF(sheet.size()) / sheet.dotsPerInch(), QPageSize::Inch));
    writer.setPageMargins(QMarginsF());
    writer.setTitle(caption.title);
    writer.setCreator(QStringLiteral("Steelyard"));
    QPainter painter(&writer);
    sheet.paint(painter);
    painter.end();
    return buffer.data();
}

Result<void> saveChart(QWidget& drawing, const ChartCaption& caption, const QString& path)
{
    const QString suffix = QFileInfo(path).suffix().toLower();
    if (suffix == QStringLiteral("svg")) return writeWhole(path, chartSvg(drawing, caption));
    if (suffix == QStringLiteral("pdf")) return writeWhole(path, chartPdf(drawing, caption));
    if (suffix != QStringLiteral("png"))
        return fail(ErrorCode::Invalid,
                    PictureText::tr("A picture can be saved as .png, .svg or .pdf, not as “.%1”. End the name with one "
                                    "of these.")
                        .arg(suffix));
    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    if (!chartImage(drawing, caption).save(&buffer, "PNG"))
        return fail(ErrorCode::Storage, PictureText::tr("The picture could not be made."));
    return writeWhole(path, buffer.data());
}

}  // namespace steelyard
