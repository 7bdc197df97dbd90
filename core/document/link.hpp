#pragma once

#include "base/outcome.hpp"
#include "document/document.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace evenfall {

/// Document → share text "2.…" in A–Z a–z 0–9 - _ . only, ending in an alphanumeric; goes behind '#' in an
/// address.
[[nodiscard]] std::string write_link(const document::Document& document);

/// Share text, or a whole address holding it behind '#', → document.
[[nodiscard]] Outcome<document::Document> read_link(const std::string& text);

} // namespace evenfall

namespace evenfall::document {

// A share link's container: how a document's compact text becomes letters that any messenger lets through.
//
//     "2." base64url( CRC-32 of the text, 4 bytes | length of the text, 3 bytes | raw deflate of the text )
//     "e"
//
// Numbers are big-endian. "2" is the version of the container; the document's own version sits inside its
// text. Deflate starts from link_example(), in version 1 from link_dictionary(); both never change, and links
// of both versions are read for ever. It knows no field: a new key or word of the form needs nothing here; a
// better example is a version 3. The closing "e" keeps "-" and "_" away from the end, where messengers drop
// them, and shows that the end is there.

inline constexpr std::size_t max_link_bytes = 32 * 1024; ///< of the whole share text

/// The frozen start dictionary of version 2: a few made-up lures as compact documents.
[[nodiscard]] std::string_view link_example();

/// The frozen start dictionary of version 1: keys and values that documents are full of, the likeliest last.
[[nodiscard]] std::string_view link_dictionary();

/// Any text of at most max_document_bytes → share text. One of over max_link_bytes does not open: see to it
/// before it is handed on.
[[nodiscard]] std::string pack_link(const std::string& text);

/// Share text, or an address holding it behind '#', blanks and line breaks allowed → the text. Refuses links
/// that are too long, of an unknown version, damaged, cut, or that would unfold beyond max_document_bytes (it
/// stops unfolding there).
[[nodiscard]] Outcome<std::string> unpack_link(std::string_view address);

/// Bytes ↔ letters by RFC 4648 (2006) §5, without padding. Absent for letters outside the alphabet, an
/// impossible length, or stray bits in the last letter (so that one byte string has one spelling only).
[[nodiscard]] std::string base64url(const std::vector<unsigned char>& bytes);
[[nodiscard]] std::optional<std::vector<unsigned char>> from_base64url(std::string_view letters);

} // namespace evenfall::document
