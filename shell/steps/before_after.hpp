#pragma once

#include "steps/desk.hpp"

namespace evenfall::shell::steps {

/// A table of figures before and after a change: first its head, which explains them (true in the frame of a
/// tap on it), then a row for each figure.
bool before_after_head(PanelContext& context, std::string_view before, std::string_view after,
                       help::Topic topic);
void before_after_row(PanelContext& context, std::string_view title, const std::string& before,
                      const std::string& after);

} // namespace evenfall::shell::steps
