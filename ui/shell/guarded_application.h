// The application object, with the last net below every slot and event: what is thrown there is caught, reported once as the
// kind of thing it was (never its text, which may hold names), and the window goes on. Everything that was stored before is
// stored already, since an edit is committed when it is made.
//
//   GuardedApplication app(argc, argv);
//   app.setCaught([&](const QString& kind) { log.write(u"caught", kind); … });
//
// Every label of the program shows its text letter by letter, whatever a name in it looks like: one whose format was left open
// is made plain before it is seen first, those of Qt's own boxes and forms too. Who wants mark-up says so (Qt::RichText).
//
// Not for errors that are expected: those are Results.
#pragma once

#include <QtWidgets/QApplication>

#include <functional>

namespace steelyard {

class GuardedApplication final : public QApplication {
    Q_OBJECT

public:
    using Caught = std::function<void(const QString& kind)>;
    GuardedApplication(int& argc, char** argv);
    void setCaught(Caught caught) { m_caught = std::move(caught); }

    bool notify(QObject* receiver, QEvent* event) override;

private:
    void report(const QString& kind);

    Caught m_caught;
    bool m_reporting = false;
};

}  // namespace steelyard
