#include "widgets/band_bar.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::shell::widgets {

double band_scale_end(double high) {
    if (!(high > 0.0) || !std::isfinite(high)) return 1.0;
    const double power = std::pow(10.0, std::floor(std::log10(high)));
    for (const double round : {1.0, 2.0, 3.0, 4.0, 6.0, 8.0}) {
        if (high <= 0.95 * round * power) return round * power;
    }
    return 10.0 * power * (high <= 9.5 * power ? 1.0 : 2.0);
}

bool band_bar(Ui& ui, const BandBar& band) {
    const look::Palette& ink = ui.inks();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    gap(12.0f);
    const Rect head = take_row(34.0f);
    const Rect touched{head.x, head.y - 10.0f, head.w, head.h + 10.0f};
    const Touch touch = help_area(ui, band.topic, touched, band.title, band.number + ", " + band.unit);
    const float figure_w = figure_in(ui, head, ui.type.title, ink.ink, band.number, band.unit);
    help_text_in(ui, {head.x, head.y, head.w - figure_w - 12.0f, head.h}, ui.type.body, ink.ink, band.title,
                 band.topic);
    if (touch.focused) focus_ring(ui, touched, look::control_rounding);

    const double end = band_scale_end(band.high);
    const Rect row = take_row(46.0f);
    constexpr float bar_h = 16.0f;
    const Rect bar{row.x, row.y + 4.0f, row.w, bar_h};
    const auto x_of = [&](double value) {
        return bar.x + bar.w * static_cast<float>(std::clamp(value / end, 0.0, 1.0));
    };
    list.AddRectFilled({bar.x, bar.y}, {bar.right(), bar.bottom()}, ink.well, 0.5f * bar_h);
    // Never thinner than its ends are round.
    const float low = std::min(x_of(band.low), x_of(band.mid) - 0.5f * bar_h);
    const float high = std::max(x_of(band.high), x_of(band.mid) + 0.5f * bar_h);
    list.AddRectFilled({std::max(low, bar.x), bar.y}, {std::min(high, bar.right()), bar.bottom()},
                       ink.water_line, 0.5f * bar_h);
    const float mid = std::round(x_of(band.mid));
    list.AddRectFilled({mid - 2.5f, bar.y - 4.0f}, {mid + 2.5f, bar.bottom() + 4.0f}, ink.card, 2.0f);
    list.AddRectFilled({mid - 1.5f, bar.y - 4.0f}, {mid + 1.5f, bar.bottom() + 4.0f}, ink.ink, 1.5f);

    ImFont* const font = ui.type.small;
    const float digits_y = bar.bottom() + 5.0f;
    constexpr int parts = 4;
    for (int i = 0; i <= parts; ++i) {
        const double value = end * i / parts;
        const int decimals = std::clamp(static_cast<int>(std::ceil(-std::log10(end / parts) - 1e-9)), 0, 3);
        // A quarter of 1 or 3 has two decimals.
        const bool fine =
            std::abs(value * std::pow(10.0, decimals) - std::round(value * std::pow(10.0, decimals))) > 1e-6;
        if (fine) continue;
        const Align align = i == 0 ? Align::left : i == parts ? Align::right : Align::middle;
        const float x = x_of(value);
        const Rect place{i == 0 ? x : i == parts ? x - 40.0f : x - 20.0f, digits_y, 40.0f, 18.0f};
        text_in(ui, place, font, ink.ink_soft, widgets::number_text(value, Unit::one, decimals), align);
    }
    return touch.tapped;
}

} // namespace evenfall::shell::widgets
