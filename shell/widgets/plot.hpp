#pragma once

#include "widgets/ui.hpp"

#include <string>
#include <vector>

namespace evenfall::shell::widgets {

struct PlotPoint {
    double x = 0.0;
    double y = 0.0;
};
struct PlotLine {
    std::vector<PlotPoint> points; ///< ascending in x
    bool dashed = false;
};
/// A plumb line through the plot with a word at its head.
struct PlotMark {
    double x = 0.0;
    std::string text;
};

/// A drawn curve over a pair of axes, in the units shown. The first line is the one a finger reads off.
struct Plot {
    std::string title{};  ///< what stands up: "Righting arm, mm"
    std::string x_unit{}; ///< behind the figures of the axis below: "°"
    double x_step = 10.0; ///< between its figures
    double x_least = 0.0;
    double x_most = 1.0;
    bool with_zero = true; ///< the axis standing up includes zero, and a line marks it
    bool hatched = false;  ///< strokes between the lines and zero, where they lie above
    std::vector<PlotLine> lines{};
    std::vector<PlotMark> marks{};
};

/// Full width at the cursor, `height` px high, recorded under `id`. Sliding a finger sideways reads values
/// off: returns its x while it is down. `read_x` is the place read, shown by a plumb line; `read` what to
/// write beside the title for it.
std::optional<double> plot(Ui& ui, std::string_view id, const Plot& plot, std::optional<double> read_x,
                           std::string_view read, float height = 200.0f);

/// The line's y at x, straight between its points; nullopt beyond its ends.
[[nodiscard]] std::optional<double> read_off(const PlotLine& line, double x);

/// A round step (1, 2 or 5 times a power of ten) that parts `span` into about `parts`.
[[nodiscard]] double round_step(double span, int parts);

} // namespace evenfall::shell::widgets
