#include "widgets/glide.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::shell::widgets {
namespace {

constexpr double looked_back_s = 0.1;      // the stretch of a drag that says how fast it was let go
constexpr std::size_t frames_at_least = 2; // on a slow device, however long they took
constexpr float halves_s = 0.26f;          // time in which a glide loses half its speed
constexpr float begins_px_s = 60.0f;
constexpr float ends_px_s = 16.0f;
constexpr float most_px_s = 4500.0f;

} // namespace

void Glide::take(unsigned area, double pressed_s) {
    stop();
    area_ = area;
    dragging_ = true;
    count_ = 0;
    last_s_ = pressed_s;
}

void Glide::drag(float way_px, double now_s) {
    moves_[count_ % moves_.size()] = {last_s_, now_s, way_px};
    ++count_;
    last_s_ = now_s;
}

void Glide::release(float at_px, double now_s) {
    dragging_ = false;
    at_px_ = at_px;
    float way_px = 0.0f;
    double took_s = 0.0;
    for (std::size_t back = 1; back <= std::min(count_, moves_.size()); ++back) {
        const Move& move = moves_[(count_ - back) % moves_.size()];
        if (back > frames_at_least && now_s - move.from_s > looked_back_s) break;
        way_px += move.px;
        took_s += move.to_s - move.from_s;
    }
    speed_ = took_s > 0.0 ? std::clamp(way_px / static_cast<float>(took_s), -most_px_s, most_px_s) : 0.0f;
    if (std::abs(speed_) < begins_px_s) stop();
}

float Glide::glide(float dt_s, float most_px) {
    const float wanted = at_px_ + speed_ * dt_s;
    at_px_ = std::clamp(wanted, 0.0f, std::max(most_px, 0.0f));
    speed_ *= std::exp2(-dt_s / halves_s);
    const float at = at_px_;
    if (at_px_ != wanted || std::abs(speed_) < ends_px_s) stop();
    return at;
}

void Glide::stop() {
    area_ = 0;
    dragging_ = false;
    speed_ = 0.0f;
}

} // namespace evenfall::shell::widgets
