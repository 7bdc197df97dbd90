#include "steps/before_after.hpp"

#include "widgets/rows.hpp"

#include <array>

namespace evenfall::shell::steps {
namespace {

constexpr std::array<widgets::TableColumn, 3> columns{{{0.0f, 0.34f, widgets::Align::left},
                                                       {0.34f, 0.67f, widgets::Align::right},
                                                       {0.67f, 1.0f, widgets::Align::right}}};

} // namespace

bool before_after_head(PanelContext& context, std::string_view before, std::string_view after,
                       help::Topic topic) {
    const std::array<std::string_view, 3> titles{std::string_view{}, before, after};
    return widgets::table_head(context.ui, columns, titles, topic);
}

void before_after_row(PanelContext& context, std::string_view title, const std::string& before,
                      const std::string& after) {
    const std::array<widgets::Cell, 3> cells{{{title, {}, false}, {before, {}, false}, {after, {}, true}}};
    widgets::table_row(context.ui, {}, columns, cells);
}

} // namespace evenfall::shell::steps
