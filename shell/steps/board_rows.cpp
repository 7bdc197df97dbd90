#include "steps/fields.hpp"
#include "steps/step_panels.hpp"

#include "body.hpp"
#include "look/words_steps.hpp"
#include "widgets/button.hpp"
#include "widgets/choice.hpp"
#include "widgets/words_of_panel.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using state::on_document;

bool by_place(const document::Measured& a, const document::Measured& b) {
    return a.x_m < b.x_m;
}

/// A board that contains the body, rounded up to whole 5 mm.
document::Board board_for(const shape::Lines& lines) {
    const auto box = shape::body_box(lines);
    document::Board board;
    const auto rounded = [&](double m) {
        constexpr double step_m = 0.005;
        return step_m * std::ceil((m + 2.0 * board.saw_m) / step_m - 1e-9);
    };
    board.length_m = rounded(box.length_m);
    board.height_m = rounded(box.high_z_m - box.low_z_m);
    board.thickness_m = rounded(2.0 * box.half_width_m);
    return board;
}

state::Edit put_reading(int index, document::Measured reading) {
    return on_document([=](document::Document& d) {
        auto& readings = d.shape.measured;
        if (index < 0 || index >= static_cast<int>(readings.size())) return;
        readings.erase(readings.begin() + index);
        readings.insert(std::upper_bound(readings.begin(), readings.end(), reading, by_place), reading);
    });
}

void reading_rows(PanelContext& context, int index) {
    document::Measured reading = context.document().shape.measured[static_cast<std::size_t>(index)];
    const auto station = context.evaluation().body.lines->at(reading.x_m);
    Fields f(context, "shape.measured." + std::to_string(index), words::measured_kind, index);
    using document::Measured;
    f.number<&Measured::x_m>(".x", words::place_x, reading);
    f.optional_number<&Measured::width_m>(".width", words::measured_width, reading,
                                          2.0 * station.half_width_m, words::measured_absent);
    f.optional_number<&Measured::height_m>(".height", words::measured_height, reading,
                                           2.0 * station.half_height_m, words::measured_absent);
    f.put([&] { return put_reading(index, reading); });
    if (widgets::button(context.ui, f.id(".remove"), words::measured_remove, widgets::ButtonKind::quiet)) {
        context.change(f.said(words::take_away), on_document([index](document::Document& d) {
                           if (index < static_cast<int>(d.shape.measured.size()))
                               d.shape.measured.erase(d.shape.measured.begin() + index);
                       }));
    }
}

} // namespace

void board_rows(PanelContext& context) {
    if (!section(context, {"section.shape.board", words::board_group})) return;
    widgets::caution_box(context.ui, words::saws_title, cautions::saws);
    widgets::gap();
    const auto& kept = context.document().board;
    if (widgets::toggle(context.ui, "shape.board", words::board_show, kept.has_value(),
                        words::board_show_below)) {
        if (kept) {
            context.change(words::board_group, on_document([](document::Document& d) { d.board.reset(); }));
        } else {
            context.change(words::board_group,
                           on_document([board = board_for(*context.evaluation().body.lines)](
                                           document::Document& d) { d.board = board; }));
        }
    }
    if (!kept) return;
    document::Board board = *kept;
    Fields f(context, "shape.board");
    f.number<&document::Board::length_m>(".length", words::board_length, board);
    f.number<&document::Board::height_m>(".height", words::board_height, board);
    f.number<&document::Board::thickness_m>(".thickness", words::board_thickness, board);
    f.number<&document::Board::saw_m>(".saw", words::board_saw, board, words::board_saw_below);
    f.put([&] { return on_document([board](document::Document& d) { d.board = board; }); });
    for (const auto& warning : shape::board_warnings(*kept, *context.evaluation().body.lines))
        widgets::problem_line(context.ui, warning.sentence);
}

void measured_rows(PanelContext& context) {
    if (!section(context, {"section.shape.measured", words::measured_group})) return;
    widgets::note(context.ui, words::measured_note);
    const auto& readings = context.document().shape.measured;
    for (int i = 0; i < static_cast<int>(readings.size()); ++i)
        reading_rows(context, i);
    if (readings.size() >= document::max_measured) return;
    if (!widgets::button(context.ui, "shape.measured.add", words::measured_add, widgets::ButtonKind::plain))
        return;
    const double x = std::round(context.view.section_x_m * 1e4) / 1e4;
    const auto station = context.evaluation().body.lines->at(x);
    // Starts with the drawn size to 0.1 mm; the builder types the caliper's reading.
    const auto tenth = [](double m) { return std::round(m * 1e4) / 1e4; };
    context.change(words::measured_add,
                   on_document([reading = document::Measured{x, tenth(2.0 * station.half_width_m),
                                                             tenth(2.0 * station.half_height_m)}](
                                   document::Document& d) {
                       auto& list = d.shape.measured;
                       list.insert(std::upper_bound(list.begin(), list.end(), reading, by_place), reading);
                   }));
}

} // namespace evenfall::shell::steps
