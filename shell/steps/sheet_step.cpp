#include "steps/step_panels.hpp"

#include "look/words_sheet.hpp"
#include "platform/host.hpp"
#include "state/file_stem.hpp"
#include "widgets/button.hpp"
#include "widgets/choice.hpp"
#include "widgets/words_of_panel.hpp"

#include <array>

namespace evenfall::shell::steps {

void sheet_panel(PanelContext& context) {
    namespace words = look::words;
    if (!context.ui.phone) widgets::heading(context.ui, words::sheet_head, words::sheet_below);
    constexpr std::array<std::string_view, 2> papers{words::sheet_a4, words::sheet_letter};
    const SheetPaper paper = context.view.sheet.paper.value_or(usual_paper(context.ui.units));
    if (const auto chosen = widgets::choice(context.ui, "sheet.paper", words::sheet_paper, papers,
                                            paper == SheetPaper::letter ? 1 : 0))
        context.view.sheet.paper = *chosen == 1 ? SheetPaper::letter : SheetPaper::a4;
    context.view.sheet.lures += widgets::stepper(context.ui, "sheet.lures", words::sheet_lures,
                                                 context.view.sheet.lures, 1, state::most_lures);
    auto& with = context.view.sheet.with;
    if (!context.motion.recipes.empty()) widgets::subheading(context.ui, words::sheet_with_group);
    for (const auto& recipe : context.motion.recipes) {
        const auto found = with.find(recipe.id);
        const int count = found == with.end() ? 0 : found->second;
        const int by = widgets::stepper(context.ui, "sheet.with." + recipe.id, recipe.document.name, count, 0,
                                        state::most_lures);
        if (count + by > 0)
            with[recipe.id] = count + by;
        else if (by != 0)
            with.erase(recipe.id);
    }
    if (!context.motion.recipes.empty()) widgets::note(context.ui, words::sheet_with_note);
    if (widgets::button(context.ui, "sheet.print", words::sheet_print, widgets::ButtonKind::main))
        context.ui.host->print_sheet();
    widgets::gap();
    widgets::note(context.ui, words::sheet_scale_note);
    widgets::subheading(context.ui, words::sheet_save_group);
    const int format = widgets::button_row(context.ui, {{"sheet.pdf", words::sheet_pdf},
                                                        {"sheet.svg", words::sheet_svg},
                                                        {"sheet.html", words::sheet_html}});
    constexpr std::array<const char*, 3> endings{".pdf", ".svg", ".html"};
    if (format >= 0)
        context.ui.host->save_sheet(state::file_stem(context.document().name) +
                                    endings[static_cast<std::size_t>(format)]);
}

} // namespace evenfall::shell::steps
