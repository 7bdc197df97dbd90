#include "document/schema.hpp"

#include "unit/document/documents.hpp"

#include <cstdlib>

using namespace evenfall::testing;

TEST_CASE("the committed JSON Schema is the one that the reader's field table makes") {
    // When a field was changed on purpose: run this case with EVENFALL_WRITE_SCHEMA naming the file to write.
    const std::string made = evenfall::document::schema_text();
    if (const char* path = std::getenv("EVENFALL_WRITE_SCHEMA"))
        std::ofstream(path, std::ios::binary) << made;
    CHECK(made == preset_text("schema/preset.schema.json"));
}
