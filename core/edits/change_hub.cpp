#include "core/edits/change_hub.h"

namespace steelyard {

struct ChangeHub::Listeners {
    std::map<int, Listener> byNumber;
    int next = 0;
};

ChangeHub::ChangeHub() : m_listeners(std::make_shared<Listeners>()) {}

ChangeHub::Subscription ChangeHub::subscribe(Listener listener)
{
    const int number = m_listeners->next++;
    m_listeners->byNumber.emplace(number, std::move(listener));
    const std::weak_ptr<Listeners> weak = m_listeners;
    return Subscription(std::shared_ptr<void>(nullptr, [weak, number](void*) {
        if (const auto listeners = weak.lock()) listeners->byNumber.erase(number);
    }));
}

void ChangeHub::publish(const Changes& changes) const
{
    if (changes.none()) return;
    // A copy: a listener may subscribe or leave while it is told.
    const auto told = m_listeners->byNumber;
    for (const auto& [number, listener] : told)
        if (m_listeners->byNumber.contains(number)) listener(changes);
}

}  // namespace steelyard
