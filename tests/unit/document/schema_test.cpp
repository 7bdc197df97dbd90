#include "document/schema.hpp"

#include "evenfall.hpp"
#include "unit/document/documents.hpp"

#include <cstdlib>
#include <sstream>
#include <vector>

using namespace evenfall::testing;

namespace {

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream stream(text);
    for (std::string line; std::getline(stream, line);)
        lines.push_back(line);
    return lines;
}

/// What stands between the first and the last line that differ: of `before` after a minus, of `after` after a
/// plus.
std::string difference(const std::string& before, const std::string& after) {
    const std::vector<std::string> a = lines_of(before);
    const std::vector<std::string> b = lines_of(after);
    std::size_t head = 0;
    while (head < a.size() && head < b.size() && a[head] == b[head])
        ++head;
    std::size_t tail = 0;
    while (tail < a.size() - head && tail < b.size() - head &&
           a[a.size() - 1 - tail] == b[b.size() - 1 - tail])
        ++tail;
    std::string text = "from line " + std::to_string(head + 1) + ":\n";
    for (std::size_t i = head; i < a.size() - tail; ++i)
        text += "- " + a[i] + '\n';
    for (std::size_t i = head; i < b.size() - tail; ++i)
        text += "+ " + b[i] + '\n';
    return text;
}

} // namespace

TEST_CASE("the committed JSON Schema is the one that the reader's field table makes") {
    const std::string made = evenfall::document::schema_text();
    if (const char* path = std::getenv("EVENFALL_WRITE_SCHEMA"))
        std::ofstream(path, std::ios::binary) << made;
    const std::string committed = preset_text("schema/preset.schema.json");
    INFO("The committed schema (-) is not the one of the field table (+), "
         << difference(committed, made) << "If a field was changed on purpose, write the new one:\n"
         << "EVENFALL_WRITE_SCHEMA=" EVENFALL_PRESETS_DIR "/schema/preset.schema.json "
         << "build/native/tests/evenfall_tests \"the committed JSON Schema*\"");
    CHECK((made == committed));
}

TEST_CASE("two schemas that differ in one line show that line alone") {
    CHECK(difference("a\nb\nc\n", "a\nx\nc\n") == "from line 2:\n- b\n+ x\n");
    CHECK(difference("a\nc\n", "a\nb\nc\n") == "from line 2:\n+ b\n");
}

TEST_CASE("a document may name its schema, as a text") {
    std::string text = preset_text("millrace-170.json");
    const std::string bare = text;
    text.insert(text.find('{') + 1, "\"$schema\": \"schema/preset.schema.json\",");
    const auto named = evenfall::read_document(text);
    REQUIRE(named.ok());
    CHECK(evenfall::write_document(*named) == evenfall::write_document(*evenfall::read_document(bare)));

    std::string wrong = bare;
    wrong.insert(wrong.find('{') + 1, "\"$schema\": 1,");
    const auto refused = evenfall::read_document(wrong);
    REQUIRE_FALSE(refused.ok());
    CHECK(refused.problems().front().path == "/$schema");
}
