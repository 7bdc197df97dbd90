// Any bytes as a share link; any bytes packed into a sound container, so that the checksum does not hide the
// rest; any bytes as what the letters of a link stand for, so that letters do not hide what is unfolded.

#include "document/link.hpp"
#include "fuzz/document_laws.hpp"

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
    using namespace evenfall;
    const std::string text(reinterpret_cast<const char*>(bytes), size);
    const auto document = read_link(text);
    if (document.ok())
        fuzz::must_keep(*document);
    else
        fuzz::must_explain(document.problems());

    const std::string packed = document::pack_link(text);
    const auto unpacked = document::unpack_link(packed);
    fuzz::must(unpacked.ok() ? *unpacked == text : packed.size() > document::max_link_bytes,
               "a container keeps its text, or is too long");
    if (unpacked.ok()) {
        const auto held = read_link(packed);
        if (held.ok())
            fuzz::must_keep(*held);
        else
            fuzz::must_explain(held.problems());
    }

    // A head with a length within the limits, then whatever is there as a folded text.
    std::vector<unsigned char> raw(bytes, bytes + size);
    if (raw.size() > 4) raw[4] &= 0x07u;
    for (const char* version : {"1.", "2."}) {
        const auto unfolded = document::unpack_link(version + document::base64url(raw) + "e");
        if (unfolded.ok())
            fuzz::must(unfolded->size() <= document::max_document_bytes,
                       "nothing unfolds beyond a document's size");
        else
            fuzz::must_explain(unfolded.problems());
    }

    return 0;
}
