#include "steps/step_panels.hpp"

#include "evenfall.hpp"
#include "look/words_glue.hpp"
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

void block_check_rows(PanelContext& context) {
    const document::Wood& wood = context.document().wood;
    const materials::Wood* entry = materials::find_wood(wood.species);
    if (entry == nullptr) return;
    materials::Block& block = context.motion.block;
    widgets::subheading(context.ui, words::block_group);
    plain(context, "block.length", words::block_length, block.length_m, {Quantity::length, 0.0, 5.0, {}, -1});
    plain(context, "block.width", words::block_width, block.width_m, {Quantity::length, 0.0, 5.0, {}, -1});
    plain(context, "block.height", words::block_height, block.height_m, {Quantity::length, 0.0, 5.0, {}, -1});
    plain(context, "block.mass", words::block_mass, block.mass_kg, {Quantity::mass, 0.0, 50.0, {}, -1});
    double moisture = block.moisture_percent / 100.0;
    plain(context, "block.moisture", words::block_moisture, moisture, {Quantity::percent, 0.0, 0.3, 0.01, 0});
    block.moisture_percent = 100.0 * moisture;
    if (block.mass_kg <= 0.0) return; // nothing weighed yet
    const auto a = materials::weigh_block(block, *entry, wood.moisture_percent);
    if (!a.ok()) {
        widgets::problem_line(context.ui, a.problems().front().sentence);
        return;
    }
    const std::string_view unit = unit_of(context, Quantity::density);
    widgets::figure_row(
        context.ui, words::block_density, number_of(context, a->density_kg_m3, Quantity::density), unit,
        std::string(words::block_usual) + " " + number_of(context, a->usual_kg_m3, Quantity::density) + " ±" +
            widgets::number_text(a->spread, widgets::Unit::percent, 0) + " %");
    widgets::figure_row(context.ui, words::block_then,
                        number_of(context, a->at_other_kg_m3, Quantity::density), unit);
    const std::string sigmas = widgets::number_text(std::abs(a->sigmas), widgets::Unit::one, 1);
    if (a->says == materials::BlockComparison::usual)
        widgets::note(context.ui, words::block_as_usual);
    else if (a->says == materials::BlockComparison::heavier)
        widgets::figure_row(context.ui, words::block_heavier, sigmas, {}, words::block_heavier_below);
    else
        widgets::figure_row(context.ui, words::block_lighter, sigmas, {}, words::block_lighter_below);
    widgets::gap();
    if (widgets::button(context.ui, "block.use", words::block_use)) {
        context.change(words::block_use,
                       state::on_document([density = a->at_other_kg_m3](document::Document& d) {
                           document::set_weighed_density(d, density);
                       }));
    }
}

} // namespace evenfall::shell::steps
