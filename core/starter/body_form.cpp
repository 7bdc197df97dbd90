#include "starter/body_form.hpp"

#include "starter/rounded.hpp"

#include <array>
#include <cmath>

namespace evenfall::starter {

namespace {

constexpr std::size_t stations = 11;
constexpr std::array<double, stations> along{0.0, 0.02, 0.05, 0.1, 0.2, 0.33, 0.5, 0.65, 0.8, 0.92, 1.0};

/// Half height (back and belly) and half width at the stations, as shares of the greatest.
struct Lines {
    std::array<double, stations> back;
    std::array<double, stations> belly;
    std::array<double, stations> width;
    double exponent;
    double height_share;    ///< of the length
    double thickness_share; ///< of the height
};

const Lines& lines_of(Form form) {
    static constexpr Lines full{{0.18, 0.42, 0.60, 0.78, 0.95, 1.0, 0.90, 0.72, 0.52, 0.40, 0.36},
                                {0.20, 0.43, 0.61, 0.80, 0.97, 1.0, 0.90, 0.72, 0.52, 0.38, 0.33},
                                {0.28, 0.48, 0.66, 0.86, 0.98, 1.0, 0.92, 0.77, 0.58, 0.42, 0.34},
                                2.4,
                                0.20,
                                0.64};
    static constexpr Lines slender{{0.24, 0.48, 0.65, 0.82, 0.96, 1.0, 0.97, 0.88, 0.72, 0.56, 0.48},
                                   {0.24, 0.48, 0.65, 0.82, 0.96, 1.0, 0.97, 0.88, 0.72, 0.56, 0.48},
                                   {0.30, 0.52, 0.70, 0.88, 0.99, 1.0, 0.95, 0.84, 0.68, 0.50, 0.42},
                                   2.4,
                                   0.155,
                                   0.74};
    static constexpr Lines deep{{0.16, 0.37, 0.55, 0.77, 0.96, 1.0, 0.86, 0.64, 0.44, 0.32, 0.28},
                                {0.18, 0.38, 0.56, 0.78, 0.97, 1.0, 0.86, 0.64, 0.42, 0.30, 0.26},
                                {0.36, 0.56, 0.74, 0.92, 1.0, 1.0, 0.95, 0.84, 0.68, 0.52, 0.42},
                                3.2,
                                0.26,
                                0.44};
    static constexpr Lines round{{0.32, 0.56, 0.73, 0.88, 0.99, 1.0, 0.96, 0.86, 0.70, 0.54, 0.44},
                                 {0.32, 0.56, 0.73, 0.88, 0.99, 1.0, 0.96, 0.86, 0.70, 0.54, 0.44},
                                 {0.32, 0.56, 0.73, 0.88, 0.99, 1.0, 0.96, 0.86, 0.70, 0.54, 0.44},
                                 2.0,
                                 0.145,
                                 1.0};
    switch (form) {
    case Form::full:
        break;
    case Form::slender:
        return slender;
    case Form::deep:
        return deep;
    case Form::round:
        return round;
    }
    return full;
}

} // namespace

double usual_height_m(Form form, double length_m) {
    return tenth_mm(lines_of(form).height_share * length_m);
}

double usual_thickness_m(Form form, double height_m) {
    return tenth_mm(lines_of(form).thickness_share * height_m);
}

document::Shape shape_of(const LureCard& card) {
    const Lines& lines = lines_of(card.form);
    const double height_m = card.height_m.value_or(usual_height_m(card.form, card.length_m));
    const double thickness_m = card.thickness_m.value_or(usual_thickness_m(card.form, height_m));
    document::Shape shape;
    shape.section.exponent = {{0.0, lines.exponent}};
    for (std::size_t k = 0; k < stations; ++k) {
        const double x_m = k + 1 == stations ? card.length_m : tenth_mm(along[k] * card.length_m);
        shape.back.push_back({x_m, tenth_mm(0.5 * height_m * lines.back[k])});
        shape.belly.push_back({x_m, -tenth_mm(0.5 * height_m * lines.belly[k])});
        shape.half_width.push_back({x_m, tenth_mm(0.5 * thickness_m * lines.width[k])});
    }
    return shape;
}

} // namespace evenfall::starter
