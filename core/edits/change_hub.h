// Tells who cares that the book changed: after the commit, never before, in the thread that committed.
//
//   m_subscription = hub.subscribe([this](const Changes& changes) { reload(changes); });
//
// The subscription ends when its handle dies. The hub must outlive its subscriptions' callbacks, not their handles.
#pragma once

#include "core/storage/transaction.h"

#include <functional>
#include <map>
#include <memory>

namespace steelyard {

class ChangeHub {
public:
    using Listener = std::function<void(const Changes&)>;

    class Subscription {
    public:
        Subscription() = default;

    private:
        friend class ChangeHub;
        explicit Subscription(std::shared_ptr<void> life) : m_life(std::move(life)) {}
        std::shared_ptr<void> m_life;
    };

    ChangeHub();
    [[nodiscard]] Subscription subscribe(Listener listener);
    void publish(const Changes& changes) const;

private:
    struct Listeners;
    std::shared_ptr<Listeners> m_listeners;
};

}  // namespace steelyard
