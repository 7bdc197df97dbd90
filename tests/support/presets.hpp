#pragma once

#include "evenfall.hpp"

#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>

namespace evenfall::support {

/// A demo lure of presets/ by its name: "millrace-170".
inline std::string preset_text(const std::string& name) {
    std::ifstream file(std::string(EVENFALL_PRESETS_DIR) + "/" + name + ".json", std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

inline document::Document preset_named(const std::string& name) {
    const auto document = read_document(preset_text(name));
    if (!document) throw std::runtime_error("no preset " + name);
    return *document;
}

} // namespace evenfall::support
