#pragma once

// The only transform between metres of the lure and pixels of the screen. Doubles on one side, floats on the
// other. Pure.

namespace evenfall::shell::drawing {

/// A point of the screen [CSS px], y downwards.
struct ScreenPoint {
    float x = 0.0f;
    float y = 0.0f;
};

/// Metres (u to the right, v upwards) ↔ pixels, with one scale for both directions: drawings are never
/// stretched.
class WorldToScreen {
public:
    WorldToScreen() = default;
    /// The world point (u_m, v_m) is at `at`; `px_per_m` > 0.
    WorldToScreen(double px_per_m, double u_m, double v_m, ScreenPoint at)
        : px_per_m_(px_per_m), u_m_(u_m), v_m_(v_m), at_(at) {}

    /// The same with the world pitched about (u_m, v_m), which stays in place: nose (at smaller u) up. Only
    /// at() and px() include the pitch.
    [[nodiscard]] WorldToScreen turned(double pitch_rad) const;

    [[nodiscard]] ScreenPoint at(double u, double v) const {
        const double u_m = u_m_ + cosine_ * (u - u_m_) + sine_ * (v - v_m_);
        const double v_m = v_m_ - sine_ * (u - u_m_) + cosine_ * (v - v_m_);
        return {at_.x + static_cast<float>((u_m - u_m_) * px_per_m_),
                at_.y - static_cast<float>((v_m - v_m_) * px_per_m_)};
    }
    [[nodiscard]] double u_m(float x) const { return u_m_ + static_cast<double>(x - at_.x) / px_per_m_; }
    [[nodiscard]] double v_m(float y) const { return v_m_ - static_cast<double>(y - at_.y) / px_per_m_; }
    [[nodiscard]] float px(double length_m) const { return static_cast<float>(length_m * px_per_m_); }
    [[nodiscard]] double px_per_m() const { return px_per_m_; }

private:
    double px_per_m_ = 1.0;
    double u_m_ = 0.0;
    double v_m_ = 0.0;
    ScreenPoint at_;
    double cosine_ = 1.0;
    double sine_ = 0.0;
};

/// The greatest scale at which u_span × v_span metres fit into w × h pixels [px/m]. A span of zero has no
/// effect.
[[nodiscard]] double fitting_px_per_m(double u_span_m, double v_span_m, float w_px, float h_px);

/// Rotates (u, v) about the origin so that the nose (at negative u) comes up by `pitch_rad`.
struct ViewPoint {
    double u = 0.0;
    double v = 0.0;
};
[[nodiscard]] ViewPoint pitched(double u, double v, double pitch_rad);

} // namespace evenfall::shell::drawing
