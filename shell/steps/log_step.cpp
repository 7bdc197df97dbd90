#include "steps/step_panels.hpp"

#include "look/words_log.hpp"
#include "widgets/choice.hpp"
#include "widgets/words_of_panel.hpp"

#include <array>

namespace evenfall::shell::steps {

void log_panel(Desk& desk) {
    namespace words = look::words;
    using state::LogView;
    if (!desk.ui.phone) widgets::heading(desk.ui, words::log_head, words::log_below);
    constexpr std::array<std::string_view, 3> views{words::view_now, words::view_readings,
                                                    words::view_uncertainty};
    if (!desk.ui.phone) widgets::gap();
    if (const auto chosen = widgets::choice(desk.ui, "log.view", views, static_cast<int>(desk.view.log_view)))
        desk.view.log_view = static_cast<LogView>(*chosen);
    widgets::gap();
    switch (desk.view.log_view) {
    case LogView::now:
        now_rows(desk);
        break;
    case LogView::readings:
        reading_rows(desk);
        break;
    case LogView::uncertainty:
        uncertainty_rows(desk);
        break;
    }
}

} // namespace evenfall::shell::steps
