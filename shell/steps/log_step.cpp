#include "steps/step_panels.hpp"

#include "look/words_log.hpp"
#include "widgets/choice.hpp"
#include "widgets/words_of_panel.hpp"

#include <array>

namespace evenfall::shell::steps {

void log_panel(PanelContext& context) {
    namespace words = look::words;
    using state::LogView;
    if (!context.ui.phone) widgets::heading(context.ui, words::log_head, words::log_below);
    constexpr std::array<std::string_view, 3> views{words::view_now, words::view_readings,
                                                    words::view_uncertainty};
    if (!context.ui.phone) widgets::gap();
    if (const auto chosen =
            widgets::choice(context.ui, "log.view", views, static_cast<int>(context.view.log_view)))
        context.view.log_view = static_cast<LogView>(*chosen);
    widgets::gap();
    switch (context.view.log_view) {
    case LogView::now:
        now_rows(context);
        break;
    case LogView::readings:
        reading_rows(context);
        break;
    case LogView::uncertainty:
        uncertainty_rows(context);
        break;
    }
}

} // namespace evenfall::shell::steps
