#include "steps/step_panels.hpp"

#include "evenfall.hpp"
#include "look/words_glue.hpp"
#include "look/words_help.hpp"
#include "widgets/button.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <cmath>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;

void plain(PanelContext& context, const char* id, const char* label, double& value, const NumberSpec& spec) {
    if (const auto set = widgets::number_field(context.ui, id, label, value, spec)) value = *set;
}

} // namespace

void weighed_board_rows(PanelContext& context) {
    const document::Wood& wood = context.document().wood;
    const materials::Wood* entry = materials::find_wood(wood.species);
    if (entry == nullptr) return;
    materials::Board& board = context.motion.board;
    if (!section(context, {"section.shape.weighed_board", words::weighed_board_group})) return;
    plain(context, "board.length", words::weighed_board_length, board.length_m,
          {Quantity::length, 0.0, 5.0, {}, -1});
    plain(context, "board.width", words::weighed_board_width, board.width_m,
          {Quantity::length, 0.0, 5.0, {}, -1});
    plain(context, "board.height", words::weighed_board_height, board.height_m,
          {Quantity::length, 0.0, 5.0, {}, -1});
    plain(context, "board.mass", words::weighed_board_mass, board.mass_kg,
          {Quantity::mass, 0.0, 50.0, {}, -1});
    double moisture = board.moisture_percent / 100.0;
    plain(context, "board.moisture", words::weighed_board_moisture, moisture,
          {Quantity::percent, 0.0, 0.3, 0.01, 0});
    board.moisture_percent = 100.0 * moisture;
    if (board.mass_kg <= 0.0) return; // nothing weighed yet
    const auto a = materials::weigh_board(board, *entry, wood.moisture_percent);
    if (!a.ok()) {
        widgets::problem_line(context.ui, a.problems().front().sentence);
        return;
    }
    const std::string_view unit = unit_of(context, Quantity::density);
    if (widgets::figure_row(context.ui, words::weighed_board_density,
                            number_of(context, a->density_kg_m3, Quantity::density), unit,
                            std::string(words::weighed_board_usual) + " " +
                                number_of(context, a->usual_kg_m3, Quantity::density) + " ±" +
                                widgets::number_text(a->spread, widgets::Unit::percent, 0) + " %",
                            help::Topic::weighed_board)) {
        widgets::went_in(context.ui, words::went_mass, text_of(context, board.mass_kg, Quantity::mass));
        widgets::went_in(
            context.ui, words::went_volume_of_board,
            widgets::value_text(board.length_m * board.width_m * board.height_m, widgets::Unit::cm3, 1));
    }
    widgets::figure_row(context.ui, words::weighed_board_then,
                        number_of(context, a->at_other_kg_m3, Quantity::density), unit, {},
                        help::Topic::weighed_board);
    const std::string sigmas = widgets::number_text(std::abs(a->sigmas), widgets::Unit::one, 1);
    if (a->says == materials::BoardComparison::usual)
        widgets::note(context.ui, words::weighed_board_as_usual);
    else if (a->says == materials::BoardComparison::heavier)
        widgets::figure_row(context.ui, words::weighed_board_heavier, sigmas, {},
                            words::weighed_board_heavier_below, help::Topic::weighed_board);
    else
        widgets::figure_row(context.ui, words::weighed_board_lighter, sigmas, {},
                            words::weighed_board_lighter_below, help::Topic::weighed_board);
    widgets::gap();
    if (widgets::button(context.ui, "board.use", words::weighed_board_use)) {
        context.change(words::weighed_board_use,
                       state::on_document([density = a->at_other_kg_m3](document::Document& d) {
                           document::set_weighed_density(d, density);
                       }));
    }
}

} // namespace evenfall::shell::steps
