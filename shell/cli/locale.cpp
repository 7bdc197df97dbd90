#include "cli/locale.hpp"

#include <algorithm>
#include <cstdio>

namespace evenfall::cli {

std::string first_set(std::initializer_list<const char*> locales) {
    const auto* set = std::find_if(locales.begin(), locales.end(),
                                   [](const char* name) { return name != nullptr && *name != '\0'; });
    return set != locales.end() ? *set : "";
}

units::UnitSet units_of_locale(const std::string& locale) {
    return units::inches_rule(locale) ? units::inches : units::metric;
}

ReaderLanguage::ReaderLanguage(const std::string& locale) {
    const words::Catalogue* catalogue = words::catalogue_of(locale);
    if (catalogue == nullptr) return;
    // Every committed catalogue can be read: a test holds that.
    if (auto language = words::Language::read(catalogue->text)) language_ = std::move(language).value();
}

words::Speech ReaderLanguage::speech() {
    return language_ ? words::Speech{&*language_, &unknown_} : words::Speech{};
}

void ReaderLanguage::tell_unknown(const char* path) const {
    if (path == nullptr || unknown_.empty()) return;
    std::FILE* file = std::fopen(path, "a");
    if (file == nullptr) return;
    for (const std::string& text : unknown_)
        std::fprintf(file, "%s\n", text.c_str());
    std::fclose(file);
}

} // namespace evenfall::cli
