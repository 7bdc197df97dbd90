// Any bytes as a share link; any bytes packed into a sound container, so that the checksum does not hide the
// rest; any bytes as what letters of a link of version 1 stand for, and as the coded text of version 2, so
// that letters and checksum do not hide what is unfolded.

#include "document/link.hpp"
#include "document/text_code.hpp"
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
    const auto unfolded = document::unpack_link("1." + document::base64url(raw) + "e");
    if (unfolded.ok())
        fuzz::must(unfolded->size() <= document::max_document_bytes,
                   "nothing unfolds beyond a document's size");
    else
        fuzz::must_explain(unfolded.problems());

    // The first two bytes are the length, the rest the code of a text, by a model that has read nothing.
    if (size < 2) return 0;
    const std::size_t length = (std::size_t{bytes[0]} << 8 | bytes[1]) % 4096;
    static const document::TextModel unread("");
    const auto decoded = document::decoded_text({bytes + 2, bytes + size}, length, unread);
    if (decoded) {
        fuzz::must(decoded->size() == length, "a coded text has the length that it says");
        const auto again = document::coded_text(*decoded, unread);
        fuzz::must(again.size() == size - 2, "a text has one length of code");
    }
    return 0;
}
