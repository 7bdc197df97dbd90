#include "steps/step_panels.hpp"

#include "look/words_sheet.hpp"
#include "platform/host.hpp"
#include "state/file_stem.hpp"
#include "widgets/button.hpp"
#include "widgets/choice.hpp"
#include "widgets/words_of_panel.hpp"

#include <array>

namespace evenfall::shell::steps {

void sheet_panel(Desk& desk) {
    namespace words = look::words;
    if (!desk.ui.phone) widgets::heading(desk.ui, words::sheet_head, words::sheet_below);
    constexpr std::array<std::string_view, 2> papers{words::sheet_a4, words::sheet_letter};
    if (const auto chosen = widgets::choice(desk.ui, "sheet.paper", words::sheet_paper, papers,
                                            desk.view.sheet.letter ? 1 : 0))
        desk.view.sheet.letter = *chosen == 1;
    desk.view.sheet.lures += widgets::stepper(desk.ui, "sheet.lures", words::sheet_lures,
                                              desk.view.sheet.lures, 1, state::most_lures);
    auto& with = desk.view.sheet.with;
    if (!desk.motion.recipes.empty()) widgets::subheading(desk.ui, words::sheet_with_group);
    for (const auto& recipe : desk.motion.recipes) {
        const auto found = with.find(recipe.id);
        const int count = found == with.end() ? 0 : found->second;
        const int by = widgets::stepper(desk.ui, "sheet.with." + recipe.id, recipe.document.name, count, 0,
                                        state::most_lures);
        if (count + by > 0)
            with[recipe.id] = count + by;
        else if (by != 0)
            with.erase(recipe.id);
    }
    if (!desk.motion.recipes.empty()) widgets::note(desk.ui, words::sheet_with_note);
    if (widgets::button(desk.ui, "sheet.print", words::sheet_print, widgets::ButtonKind::main))
        desk.ui.host->print_sheet();
    widgets::gap();
    widgets::note(desk.ui, words::sheet_scale_note);
    widgets::subheading(desk.ui, words::sheet_save_group);
    const int format = widgets::button_row(desk.ui, {{"sheet.pdf", words::sheet_pdf},
                                                     {"sheet.svg", words::sheet_svg},
                                                     {"sheet.html", words::sheet_html}});
    constexpr std::array<const char*, 3> endings{".pdf", ".svg", ".html"};
    if (format >= 0)
        desk.ui.host->save_sheet(state::file_stem(desk.document().name) +
                                 endings[static_cast<std::size_t>(format)]);
}

} // namespace evenfall::shell::steps
