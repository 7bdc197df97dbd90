#pragma once

#include <algorithm>

namespace evenfall::shell::platform {

/// Number of frames still to be drawn. Without events nothing is drawn.
class PendingFrames {
public:
    /// ImGui spreads queued events over frames and measures some things one frame late; three frames are
    /// enough.
    static constexpr int after_event = 3;

    void wake(int frames = after_event) { left_ = std::max(left_, frames); }
    /// Uses up one frame; false where none is left.
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
