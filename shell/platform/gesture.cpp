#include "platform/gesture.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace evenfall::shell::platform {

Gesture::Finger* Gesture::find(std::int64_t id) {
    const auto at =
        std::find_if(fingers_.begin(), fingers_.end(), [id](const Finger& f) { return f.id == id; });
    return at == fingers_.end() ? nullptr : &*at;
}

void Gesture::finger_down(std::int64_t finger, float x, float y) {
    if (Finger* known = find(finger)) { // its release was lost: end the old touch
        finger_up(finger, known->x, known->y);
    }
    fingers_.push_back({finger, x, y});
    if (mode_ == Mode::idle) {
        mode_ = Mode::pointing;
        emit(PointerEvent::Kind::move, x, y);
        emit(PointerEvent::Kind::down, x, y);
    } else if (mode_ == Mode::pointing) {
        mode_ = Mode::pinching;
        emit(PointerEvent::Kind::leave);
        emit(PointerEvent::Kind::up);
    } else {
        mode_ = Mode::spent; // a third finger, or a new one after a pinch
    }
}

void Gesture::finger_move(std::int64_t finger, float x, float y) {
    Finger* moved = find(finger);
    if (moved == nullptr) return;
    if (mode_ == Mode::pointing) {
        emit(PointerEvent::Kind::move, x, y);
    } else if (mode_ == Mode::pinching && fingers_.size() == 2) {
        const Finger& other = moved == &fingers_[0] ? fingers_[1] : fingers_[0];
        // Two fingers on one spot have no ratio; smaller distances are not measured.
        constexpr float least_px = 8.0f;
        const float before = std::max(std::hypot(moved->x - other.x, moved->y - other.y), least_px);
        const float after = std::max(std::hypot(x - other.x, y - other.y), least_px);
        Pinch pinch = pinch_.value_or(Pinch{});
        pinch.x = (x + other.x) / 2.0f;
        pinch.y = (y + other.y) / 2.0f;
        pinch.dx += (x - moved->x) / 2.0f;
        pinch.dy += (y - moved->y) / 2.0f;
        pinch.zoom *= after / before;
        pinch_ = pinch;
    }
    moved->x = x;
    moved->y = y;
}

void Gesture::finger_up(std::int64_t finger, float x, float y) {
    const Finger* lifted = find(finger);
    if (lifted == nullptr) return;
    fingers_.erase(fingers_.begin() + (lifted - fingers_.data()));
    if (mode_ == Mode::pointing) {
        emit(PointerEvent::Kind::move, x, y);
        emit(PointerEvent::Kind::up, x, y);
        emit(PointerEvent::Kind::leave);
    }
    mode_ = fingers_.empty() ? Mode::idle : Mode::spent;
}

void Gesture::cancel() {
    if (mode_ == Mode::pointing) {
        emit(PointerEvent::Kind::leave);
        emit(PointerEvent::Kind::up);
    }
    fingers_.clear();
    mode_ = Mode::idle;
}

std::vector<PointerEvent> Gesture::take_events() {
    return std::exchange(events_, {});
}

std::optional<Pinch> Gesture::take_pinch() {
    return std::exchange(pinch_, std::nullopt);
}

} // namespace evenfall::shell::platform
