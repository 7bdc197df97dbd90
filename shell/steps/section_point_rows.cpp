#include "steps/fields.hpp"
#include "steps/step_panels.hpp"

#include "look/words_steps.hpp"
#include "widgets/button.hpp"
#include "widgets/rows.hpp"

#include <array>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using state::ItemKind;

void point_editor(PanelContext& context, int index, const document::OutlinePoint& point, bool end,
                  std::size_t count) {
    if (end) return; // belly and back are in the middle
    const std::string id = "shape.section.point." + std::to_string(index);
    constexpr document::PointsField field = document::points_of<&document::Section::half_outline>;
    const Shown shown{{}, 0.02, 2};
    number(context, id + ".y", words::section_point_out, point.y, spec_of(field.first, shown),
           words::section_changed, [=](double v) { return state::put_section_point(index, v, point.z); });
    number(context, id + ".z", words::section_point_up, point.z, spec_of(field.second, shown),
           words::section_changed, [=](double v) { return state::put_section_point(index, point.y, v); });
    if (count > 3 &&
        widgets::button(context.ui, id + ".remove", words::remove_point, widgets::ButtonKind::quiet)) {
        context.change(words::section_changed, state::remove_section_point(index));
        context.view.selection = {};
    }
}

} // namespace

void section_point_rows(PanelContext& context) {
    const auto& section = context.document().shape.section;
    if (section.kind != document::SectionKind::drawn) return;
    const std::array<widgets::TableColumn, 3> columns{{{0.03f, 0.15f, widgets::Align::left},
                                                       {0.15f, 0.56f, widgets::Align::right},
                                                       {0.56f, 0.97f, widgets::Align::right}}};
    const auto& outline = section.half_outline;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const int index = static_cast<int>(i);
        const std::string nr = std::to_string(i + 1);
        const std::string y = widgets::number_text(outline[i].y, widgets::Unit::one, 2);
        const std::string z = widgets::number_text(outline[i].z, widgets::Unit::one, 2);
        const std::array<widgets::Cell, 3> cells{{{nr, {}, false}, {y, {}, false}, {z, {}, true}}};
        const bool chosen = context.row_chosen(ItemKind::section_point, index);
        if (widgets::table_row(context.ui, "shape.section.point." + nr, columns, cells, chosen))
            context.choose(ItemKind::section_point, index);
        if (chosen)
            point_editor(context, index, outline[i], i == 0 || i + 1 == outline.size(), outline.size());
    }
    if (widgets::button(context.ui, "shape.section.add", words::add_point, widgets::ButtonKind::plain))
        context.change(words::add_point, state::add_section_point());
}

} // namespace evenfall::shell::steps
