#include "ui/shell/guarded_application.h"

#include <QtCore/QEvent>
#include <QtWidgets/QLabel>

#include <cxxabi.h>
#include <cstdlib>
#include <exception>
#include <memory>
#include <typeinfo>
#include <utility>

namespace steelyard {
namespace {

QString kindOf(const std::exception& thrown)
{
    const char* raw = typeid(thrown).name();
    int status = 0;
    const std::unique_ptr<char, decltype(&std::free)> plain(abi::__cxa_demangle(raw, nullptr, nullptr, &status),
                                                            &std::free);
    return QString::fromLatin1(status == 0 ? plain.get() : raw);
}

class PlainLabels final : public QObject {
public:
    using QObject::QObject;

    bool eventFilter(QObject* watched, QEvent* event) override
    {
        if (event->type() != QEvent::Polish) return false;
        auto* label = qobject_cast<QLabel*>(watched);
        // A tooltip is a label as well, and its text was made plain where it was set (format::plainToolTip).
        if (label && label->textFormat() == Qt::AutoText && !label->inherits("QTipLabel"))
            label->setTextFormat(Qt::PlainText);
        return false;
    }
};

}  // namespace

GuardedApplication::GuardedApplication(int& argc, char** argv) : QApplication(argc, argv)
{
    installEventFilter(new PlainLabels(this));
}

bool GuardedApplication::notify(QObject* receiver, QEvent* event)
{
    try {
        return QApplication::notify(receiver, event);
    } catch (const std::exception& thrown) {
        report(kindOf(thrown));
    } catch (...) {
        report(QStringLiteral("something that is no exception"));
    }
    return true;
}

void GuardedApplication::report(const QString& kind)
{
    if (!m_caught || std::exchange(m_reporting, true)) return;
    m_caught(kind);
    m_reporting = false;
}

}  // namespace steelyard
