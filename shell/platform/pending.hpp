#pragma once

#include <algorithm>

namespace evenfall::shell::platform {

/// How many frames are still to be drawn. Nothing happens on the bench: nothing is drawn.
class Pending {
public:
    /// ImGui spreads queued events over frames and measures some things a frame late; three lose nothing.
    static constexpr int after_event = 3;

    void wake(int frames = after_event) { left_ = std::max(left_, frames); }
    /// Takes one frame; false when there is none to draw.
    bool take() {
        if (left_ == 0) return false;
        --left_;
        return true;
    }
    [[nodiscard]] bool idle() const { return left_ == 0; }

private:
    int left_ = after_event;
};

} // namespace evenfall::shell::platform
