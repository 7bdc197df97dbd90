#pragma once

#include "widgets/ui.hpp"

#include <functional>
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
/// A vertical line through the plot with a word at its top.
struct PlotMark {
    double x = 0.0;
    std::string text;
};

/// A point with a word beside it; `solid` is filled, else a ring.
struct PlotDot {
    PlotPoint at;
    std::string text;
    bool solid = false;
};

/// Curves over a pair of axes, in the units shown. A finger reads values off the first line.
struct Plot {
    std::string title{};  ///< of the vertical axis: "Righting arm, mm"
    std::string x_unit{}; ///< after the figures of the horizontal axis: "°"
    double x_step = 10.0; ///< between figures of the horizontal axis
    double x_least = 0.0;
    double x_most = 1.0;
    bool with_zero = true; ///< the vertical axis includes zero, marked by a line
    bool hatched = false;  ///< hatching between the lines and zero, where they are above it
    bool region = false;   ///< the first two lines bound a region: hatched between them, closed at its ends
    std::vector<PlotLine> lines{};
    std::vector<PlotMark> marks{};
    std::vector<PlotDot> dots{};
    std::function<std::string(double)> x_below{}; ///< a second line under each figure of that axis
    help::Topic topic = help::Topic::none;        ///< a tap on the title explains it
};

/// Full width at the cursor, `height` px high, recorded under `id`. A finger that slides sideways reads
/// values off: returns its x while it is down. `read_x` is marked by a vertical line; `read` is the text
/// beside the title for it.
std::optional<double> plot(Ui& ui, std::string_view id, const Plot& plot, std::optional<double> read_x,
                           std::string_view read, float height = 200.0f);

/// The line's y at x, linear between its points; nullopt beyond its ends.
[[nodiscard]] std::optional<double> read_off(const PlotLine& line, double x);

/// A round step (1, 2 or 5 times a power of ten) that divides `span` into about `parts`.
[[nodiscard]] double round_step(double span, int parts);

} // namespace evenfall::shell::widgets
