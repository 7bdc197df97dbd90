#pragma once

// Touches → pointer events and pinches. Pure: no SDL, no ImGui, no clock. One finger is the pointer. A second
// finger makes the pointer leave before it is released, so that a pinch taps nothing, and both together move
// and zoom. Only when all fingers are up can a new pointer start. After every release the pointer leaves, so
// that nothing stays hovered.

#include <cstdint>
#include <optional>
#include <vector>

namespace evenfall::shell::platform {

/// One event for the user interface, in order.
struct PointerEvent {
    enum class Kind {
        move, ///< pointer at x, y
        down,
        up,
        leave, ///< pointer outside
    };
    Kind kind = Kind::leave;
    float x = 0.0f; ///< CSS px
    float y = 0.0f;

    friend bool operator==(const PointerEvent&, const PointerEvent&) = default;
};

/// Two-finger gesture since it was last taken: zoom about (x, y), then move by (dx, dy).
struct Pinch {
    float x = 0.0f;
    float y = 0.0f;
    float dx = 0.0f;
    float dy = 0.0f;
    float zoom = 1.0f;
};

class Gesture {
public:
    void finger_down(std::int64_t finger, float x, float y);
    void finger_move(std::int64_t finger, float x, float y);
    void finger_up(std::int64_t finger, float x, float y);
    /// The system took over the touch (a call, a notification): everything is released, nothing is tapped.
    void cancel();

    /// Returns the events since the last call and clears them.
    [[nodiscard]] std::vector<PointerEvent> take_events();
    [[nodiscard]] std::optional<Pinch> take_pinch();

    [[nodiscard]] int fingers() const { return static_cast<int>(fingers_.size()); }

private:
    struct Finger {
        std::int64_t id = 0;
        float x = 0.0f;
        float y = 0.0f;
    };
    enum class Mode {
        idle,
        pointing, ///< one finger, pointer down
        pinching, ///< two fingers
        spent,    ///< fingers left after a pinch: ignored until all are up
    };
    Finger* find(std::int64_t id);
    void emit(PointerEvent::Kind kind, float x = 0.0f, float y = 0.0f) { events_.push_back({kind, x, y}); }

    std::vector<Finger> fingers_;
    Mode mode_ = Mode::idle;
    std::vector<PointerEvent> events_;
    std::optional<Pinch> pinch_;
};

} // namespace evenfall::shell::platform
