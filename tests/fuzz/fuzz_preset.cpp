// Any bytes as a document: refused with a reason, or kept through writing, linking and evaluating.

#include "fuzz/document_laws.hpp"

#include <cstddef>
#include <cstdint>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
    const std::string text(reinterpret_cast<const char*>(bytes), size);
    const auto document = evenfall::read_document(text);
    if (document.ok())
        evenfall::fuzz::must_keep(*document);
    else
        evenfall::fuzz::must_explain(document.problems());
    return 0;
}
