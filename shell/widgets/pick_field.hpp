#pragma once

#include "widgets/ui.hpp"

#include <string>
#include <vector>

namespace evenfall::shell::widgets {

struct PickOption {
    std::string key{};   ///< as in a document: "basswood"
    std::string label{}; ///< as shown
    std::string below{}; ///< second line: density, source; may be empty
};

/// A row with a label and the chosen option; a tap opens a list sheet. Option rows are recorded as
/// "pick.<key>", cancel as "pick.cancel". Returns the chosen key where it is another one.
std::optional<std::string> pick_field(Ui& ui, std::string_view id, std::string_view label,
                                      const std::vector<PickOption>& options, std::string_view chosen_key);

/// The list sheet of pick_field; one per application, drawn by app.cpp.
class Picker {
public:
    void open(std::string_view field_id, std::string_view label, std::vector<PickOption> options,
              std::string_view chosen);
    void close() { open_ = false; }
    /// Closes and discards a result that was not collected.
    void put_away() {
        close();
        result_.reset();
    }
    [[nodiscard]] bool is_open() const { return open_; }
    [[nodiscard]] std::optional<std::string> collect(std::string_view field_id);
    void draw(Ui& ui, const Rect& screen, const Rect& place, bool from_below);

private:
    bool open_ = false;
    float out_ = 0.0f;
    std::string field_;
    std::string label_;
    std::string chosen_;
    std::vector<PickOption> options_;
    std::optional<std::string> result_;
};

} // namespace evenfall::shell::widgets
