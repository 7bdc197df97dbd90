#pragma once

#include <array>
#include <cstddef>

namespace evenfall::shell::widgets {

/// Scrolling by one finger: the area that it drags, and how the area glides on after a flick. Pure: the
/// caller passes the time and moves the area.
class Glide {
public:
    bool owned = false;  ///< a drawing handle has the finger: areas must not scroll
    bool caught = false; ///< the finger stopped a glide: it taps nothing until it is lifted

    /// The area that is dragged or glides; 0 = none.
    [[nodiscard]] unsigned area() const { return area_; }
    [[nodiscard]] bool dragging() const { return dragging_; }
    /// CSS px/s, down the list positive; 0 = at rest.
    [[nodiscard]] float speed() const { return speed_; }

    /// A finger that came down at `pressed_s` begins to drag this area; a glide ends.
    void take(unsigned area, double pressed_s);
    /// Once a frame while the finger drags, also at rest: its way down the list since the frame before [CSS
    /// px].
    void drag(float way_px, double now_s);
    /// The finger let go of the area at this scroll position; it glides on where the finger was moving.
    void release(float at_px, double now_s);
    /// The scroll position after `dt_s` more, held within 0 and `most_px`. At an end, or when it has become
    /// slow, the glide is over.
    float glide(float dt_s, float most_px);
    void stop();

private:
    struct Move {
        double from_s = 0.0;
        double to_s = 0.0;
        float px = 0.0f;
    };
    std::array<Move, 16> moves_{}; ///< the last frames of the drag, the newest at count_ − 1
    std::size_t count_ = 0;
    double last_s_ = 0.0;
    unsigned area_ = 0;
    bool dragging_ = false;
    float speed_ = 0.0f;
    float at_px_ = 0.0f; ///< with the fraction of a pixel that a scroll position does not have
};

} // namespace evenfall::shell::widgets
