#pragma once

#include "base/unit.hpp"
#include "cli/arguments.hpp"

namespace evenfall::cli {

/// An option of a command that takes a number: where the number goes, and its usual unit.
struct Setting {
    const char* option;
    units::Unit usual;
    double* into;
    double factor = 1.0; ///< for units that are typed plain: 60 for minutes
};

/// Reads every option that was typed. Refuses, by the option's name, what is not in the list and what is no
/// number.
template <std::size_t n>
[[nodiscard]] Problems take_settings(const Arguments& arguments, const Setting (&list)[n]);

[[nodiscard]] Problems take_setting(const std::string& option, const std::string& text, const Setting* list,
                                    std::size_t count);

template <std::size_t n>
Problems take_settings(const Arguments& arguments, const Setting (&list)[n]) {
    Problems out;
    for (const auto& [option, text] : arguments.settings) {
        for (Problem& p : take_setting(option, text, list, n))
            out.push_back(std::move(p));
    }
    return out;
}

} // namespace evenfall::cli
