#pragma once

#include "body/body.hpp"
#include "output/sheet/parts.hpp"
#include "output/sheet/tiling.hpp"

#include <functional>

namespace evenfall::sheet {

/// A window on the lure at full size: metres of the lure → millimetres on paper. `across` is z seen from the
/// side (up on the paper) or y seen from above (starboard up, nose to the left as from the side).
class View {
public:
    View(Composer& pages, const Rect& window, double left_x_mm, double zero_y_mm)
        : pages_(pages), window_(window), left_x_mm_(left_x_mm), zero_y_mm_(zero_y_mm) {}

    [[nodiscard]] Point at(double x_m, double across_m) const;
    [[nodiscard]] const Rect& window() const { return window_; }
    [[nodiscard]] bool shows(double x_m) const;

    void outline(const std::vector<shape::Point2>& points, Stroke stroke, bool closed = true) const;
    void segment(double x0_m, double a0_m, double x1_m, double a1_m, Stroke stroke) const;
    void circle(double x_m, double across_m, double diameter_m, Stroke stroke) const;
    void cross(double x_m, double across_m, double arm_mm, Stroke stroke) const;
    void hatched(const std::vector<shape::Point2>& points, Stroke stroke, double spacing_mm) const;
    void filled(const std::vector<shape::Point2>& points, Colour colour) const;
    /// Text centred at x, `y_mm` on the paper; omitted where x is outside the window.
    void label(double x_m, double y_mm, const std::string& words, double size_mm = 2.4,
               Weight weight = Weight::regular, Colour colour = ink) const;
    [[nodiscard]] Composer& pages() const { return pages_; }

private:
    Composer& pages_;
    Rect window_;
    double left_x_mm_;
    double zero_y_mm_;
};

/// What is drawn from end to end: the lure, or its tail.
struct Length {
    double from_m = 0.0; ///< zero of the scale
    double length_m = 0.0;
};
/// The whole length at full size in as many parts as the paper needs, under a heading, each with a scale of
/// stations below and a line to glue on where the next part joins. Heights are of the drawing itself; each
/// edge gets room for one row of labels.
void add_stretches(Composer& pages, const Length& whole, const std::string& heading, double low_m,
                   double high_m, const std::function<void(const View&)>& draw);

// Line styles used throughout.
inline constexpr Stroke outline_stroke{0.35, ink, 0.0};
inline constexpr Stroke thin_stroke{0.15, ink, 0.0};
inline constexpr Stroke centre_stroke{0.12, soft_ink, 1.6};
inline constexpr Stroke hidden_stroke{0.2, ink, 0.9};
inline constexpr Stroke keep_out_stroke{0.15, mark, 0.0};

} // namespace evenfall::sheet
