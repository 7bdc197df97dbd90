#include "look/said.hpp"

#include "imgui.h"

namespace evenfall::shell::look {

namespace {

constexpr std::size_t remembered = 4000;
constexpr std::size_t most_unknown = 2000;

} // namespace

Translator::Translator() {
    ImGui::GetIO().UserData = this;
}

Translator::~Translator() {
    if (ImGui::GetCurrentContext() != nullptr && ImGui::GetIO().UserData == this)
        ImGui::GetIO().UserData = nullptr;
}

void Translator::choose(const std::string& code) {
    if (code == code_) return;
    code_ = code;
    language_.reset();
    // Every committed catalogue can be read: a test holds that.
    if (const words::Catalogue* catalogue = words::catalogue_of(code)) {
        if (auto language = words::Language::read(catalogue->text)) language_ = std::move(language).value();
    }
    memory_.clear();
    unknown_.clear();
    use_sign();
}

void Translator::set_device_sign(char sign) {
    device_sign_ = sign == ',' ? ',' : '.';
    memory_.clear();
    use_sign();
}

void Translator::use_sign() {
    ImGui::GetIO().PlatformLocaleDecimalPoint =
        static_cast<unsigned char>(language_ ? language_->decimal_sign() : device_sign_);
}

words::Speech Translator::speech() {
    return {language_ ? &*language_ : nullptr, &unknown_};
}

void Translator::begin_frame() {
    if (memory_.size() > remembered) memory_.clear();
    if (unknown_.size() > most_unknown) unknown_.clear();
}

std::string_view Translator::said(std::string_view english) {
    if (!language_ && device_sign_ == '.') return english;
    if (const auto known = memory_.find(english); known != memory_.end()) return known->second;
    std::string text =
        language_ ? language_->said(english, &unknown_) : words::with_decimal_sign(english, device_sign_);
    // A text that was translated before it came here stays as it is.
    memory_.emplace(text, text);
    return memory_.insert_or_assign(std::string(english), std::move(text)).first->second;
}

std::string_view said(std::string_view english) {
    if (ImGui::GetCurrentContext() == nullptr) return english;
    auto* translator = static_cast<Translator*>(ImGui::GetIO().UserData);
    return translator != nullptr ? translator->said(english) : english;
}

} // namespace evenfall::shell::look
