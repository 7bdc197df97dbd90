#pragma once

// What is drawn, in the reader's language. Widgets ask here for each text as it is drawn or measured.

#include "language.hpp"

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace evenfall::shell::look {

/// A language and what has been said in it. English is the language of the code.
class Translator {
public:
    /// Binds itself to the ImGui context in use; said() asks the one that is bound.
    Translator();
    ~Translator();
    Translator(const Translator&) = delete;
    Translator& operator=(const Translator&) = delete;

    /// By its code, "de"; English for every code without a catalogue.
    void choose(const std::string& code);
    /// Of the device; it holds for English.
    void set_device_sign(char sign);

    [[nodiscard]] std::string_view said(std::string_view english);
    [[nodiscard]] std::string code() const { return language_ ? language_->code() : "en"; }
    [[nodiscard]] words::Speech speech();
    /// What the catalogue did not have, since the language was chosen; for tests and translators.
    [[nodiscard]] const std::vector<std::string>& unknown() const { return unknown_; }

    /// Forgets what was said long ago. No text that said() gave may be in use.
    void begin_frame();

private:
    struct Hash {
        using is_transparent = void;
        std::size_t operator()(std::string_view text) const { return std::hash<std::string_view>()(text); }
    };
    void use_sign();

    std::string code_;
    std::optional<words::Language> language_;
    char device_sign_ = '.';
    std::unordered_map<std::string, std::string, Hash, std::equal_to<>> memory_;
    std::vector<std::string> unknown_;
};

/// The text in the language of the translator that is bound to the ImGui context in use, or as it is. Valid
/// until the next frame.
[[nodiscard]] std::string_view said(std::string_view english);

} // namespace evenfall::shell::look
