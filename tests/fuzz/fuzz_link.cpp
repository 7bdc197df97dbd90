// Any bytes as a share link; and any bytes packed into a sound container, so that the checksum does not hide the rest.

#include "fuzz/document_laws.hpp"
#include "preset/link.hpp"

#include <cstddef>
#include <cstdint>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
    using namespace evenfall;
    const std::string text(reinterpret_cast<const char*>(bytes), size);
    const auto document = read_link(text);
    if (document.ok()) fuzz::must_keep(*document);
    else fuzz::must_explain(document.problems());

    const std::string packed = preset::pack_link(text);
    const auto unpacked = preset::unpack_link(packed);
    fuzz::must(unpacked.ok() ? *unpacked == text : packed.size() > preset::max_link_bytes, "a container keeps its text, or is too long");
    return 0;
}
