// No label is drawn with an ellipsis: what does not fit is reworded, not shrunk. Names that a builder types
// may be cut.

#include "unit/shell/walk_of_tests.hpp"

#include <set>

using namespace evenfall;
using namespace evenfall::shell::bench_of_tests;

namespace {

/// What the builder has typed: names and notes of the recipe.
void typed(const nlohmann::json& part, std::set<std::string>& out) {
    for (const auto& [key, value] : part.items()) {
        if (value.is_structured())
            typed(value, out);
        else if (value.is_string() && (part.is_array() || key == "name" || key == "note") &&
                 !value.get<std::string>().empty())
            out.insert(value);
    }
}

std::set<std::string> cut_labels(Bench& bench) {
    std::set<std::string> names;
    typed(nlohmann::json::parse(bench.app.document_json()), names);
    std::set<std::string> out;
    for (const auto& text : nlohmann::json::parse(bench.app.cut_json())) {
        const std::string cut = text;
        const bool is_typed = std::any_of(names.begin(), names.end(), [&](const std::string& name) {
            return cut.find(name) != std::string::npos;
        });
        if (!is_typed) out.insert(cut);
    }
    return out;
}

} // namespace

TEST_CASE("no label of any step is cut off, on a tablet and on a phone, in millimetres and in inches",
          "[shell][labels]") {
    const float sizes[][2] = {{1024.0f, 768.0f}, {390.0f, 844.0f}};
    for (const auto& size : sizes) {
        for (const char* length : {"shelf.length.0", "shelf.length.1", "shelf.length.2"}) {
            for (const char* demo : {"millrace-170.json", "estuary-150.json"}) {
                Bench bench(size[0], size[1]);
                REQUIRE(bench.app.open_json(demo_text(demo)).empty());
                bench.tap("shelf.open");
                bench.reach(length);
                bench.reach(length[13] == '0' ? "shelf.mass.0" : "shelf.mass.1");
                bench.tap("shelf.close");
                walk_panels(bench, [&](const std::string& where) {
                    const auto cut = cut_labels(bench);
                    CAPTURE(size[0], length, demo, where);
                    for (const std::string& label : cut)
                        UNSCOPED_INFO(label);
                    CHECK(cut.empty());
                });
            }
        }
    }
}
