#include "document/link.hpp"
#include "document/write.hpp"
#include "support/limit_lures.hpp"
#include "unit/document/documents.hpp"

#include <catch2/generators/catch_generators.hpp>
#include <catch2/generators/catch_generators_range.hpp>

#include <cctype>
#include <random>
#include <utility>

using namespace evenfall;
using namespace evenfall::testing;

namespace {

constexpr const char* damaged_sentence =
    "This link is damaged or cut short; ask for it again or for the file.";

Problem link_refusal(const std::string& link) {
    const Outcome<document::Document> document = read_link(link);
    REQUIRE_FALSE(document.ok());
    return document.problems().front();
}

using Bytes = std::vector<unsigned char>;

Bytes joined(Bytes a, const Bytes& b) {
    a.insert(a.end(), b.begin(), b.end());
    return a;
}

Bytes number(std::size_t value, int bytes) {
    Bytes out;
    for (int shift = 8 * (bytes - 1); shift >= 0; shift -= 8)
        out.push_back(static_cast<unsigned char>(value >> shift));
    return out;
}

/// A container with any body, made without our writer, as a stranger could; with a sum of 0.
std::string forged(const std::string& version, std::size_t stated_length, const Bytes& body) {
    return version + document::base64url(joined(joined(number(0, 4), number(stated_length, 3)), body)) + "e";
}

/// A zero and so many copies of 258 of it, folded as RFC 1951 (1996) section 3.2.6 has it: each copy is the
/// code of length 285 and the distance code 0, 13 bits.
Bytes folded_zeros(std::size_t copies) {
    Bytes bytes;
    unsigned held = 0, count = 0;
    const auto put = [&](bool bit) {
        held |= (bit ? 1u : 0u) << count;
        if (++count < 8) return;
        bytes.push_back(static_cast<unsigned char>(held));
        held = count = 0;
    };
    const auto code = [&](unsigned value, int bits) {
        for (int at = bits - 1; at >= 0; --at)
            put((value >> at & 1u) != 0);
    };
    put(true), put(true), put(false); // the last block, of fixed codes
    code(0x30 + '0', 8);
    for (; copies > 0; --copies)
        code(0xC5, 8), code(0, 5);
    code(0, 7);
    code(0, 7); // fills the last byte
    return bytes;
}

std::string frozen(const std::string& file) {
    return text_of_file(std::string(EVENFALL_TESTS_DIR "/regression/version-2/") + file);
}

document::Document four_piece() {
    return document_of(frozen("four-piece.json"));
}

/// 64-bit FNV-1a (Fowler, Noll and Vo): enough to notice any edit.
unsigned long long fingerprint(std::string_view text) {
    unsigned long long hash = 14695981039346656037ULL;
    for (const char c : text)
        hash = (hash ^ static_cast<unsigned char>(c)) * 1099511628211ULL;
    return hash;
}

} // namespace

TEST_CASE("a share link gives back the same document") {
    const auto* file = GENERATE(from_range(std::begin(demo_presets), std::end(demo_presets)));
    INFO(file);
    const document::Document first = document_of(preset_text(file));
    const std::string link = write_link(first);
    const Outcome<document::Document> second = read_link(link);
    REQUIRE(second.ok());
    CHECK(document::same(first, *second));
    CHECK(write_link(*second) == link);
}

TEST_CASE("a share link holds only letters that messengers keep, and ends in one") {
    const auto* file = GENERATE(from_range(std::begin(demo_presets), std::end(demo_presets)));
    const std::string link = write_link(document_of(preset_text(file)));
    CHECK(link.find_first_not_of("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_.") ==
          std::string::npos);
    CHECK(std::isalnum(static_cast<unsigned char>(link.back())) != 0);
}

TEST_CASE("a link is short: 700 characters for the default lure, 1,200 for one of four pieces in inches") {
    CHECK(write_link(document_of(preset_text("millrace-170.json"))).size() <= 700);
    document::Document pieces = four_piece();
    REQUIRE(pieces.joints.size() == 3);
    REQUIRE(pieces.hangers.size() == 3);
    REQUIRE(pieces.log.size() == 5);
    CHECK(write_link(pieces).size() <= 1200);
    pieces.log.clear();
    CHECK(write_link(pieces).size() <= 1000);
}

TEST_CASE("a link carries numbers as they are, to the last digit that a document keeps") {
    document::Document lure = four_piece();
    std::mt19937 draw(11);
    std::uniform_int_distribution<int> micrometre(1, 90'000'000);
    for (document::CurvePoint& point : lure.shape.back)
        point.value = micrometre(draw) / 1e9;
    for (document::Part& part : lure.parts)
        part.mass_kg = micrometre(draw) / 1e9;
    const auto back = read_link(write_link(lure));
    REQUIRE(back.ok());
    CHECK(write_document(*back) == write_document(lure));
}

TEST_CASE("keys that no link had before travel, and cost little from their second time on") {
    const auto size = [](int entries) {
        std::string text = R"({"evenfall":2,"shelves":[)";
        for (int n = 0; n < entries; ++n)
            text += std::string(n > 0 ? "," : "") + R"({"quite_unheard_of_mm":)" + std::to_string(7 * n) +
                    R"(,"whichever":"sideways"})";
        text += "]}";
        const std::string link = document::pack_link(text);
        const auto back = document::unpack_link(link);
        REQUIRE(back.ok());
        CHECK(*back == text);
        return link.size();
    };
    CHECK(size(10) - size(2) < size(2) - size(0));
}

TEST_CASE("a link is found behind # in an address and between blanks") {
    const document::Document document = document_of(full_text);
    const std::string link = write_link(document);
    for (const std::string& text : {link, " \n" + link + "\r\n\t", "https://lures.example/evenfall/#" + link,
                                    "http://127.0.0.1:8080/index.html#" + link + " ", "#" + link}) {
        INFO(text);
        const Outcome<document::Document> read = read_link(text);
        REQUIRE(read.ok());
        CHECK(document::same(*read, document));
    }
}

TEST_CASE("a link cut anywhere is refused as damaged") {
    const std::string link = write_link(document_of(full_text));
    for (std::size_t length = 1; length < link.size(); ++length) {
        const Problem problem = link_refusal(link.substr(0, length));
        REQUIRE(problem.code == ProblemCode::damaged_link);
        REQUIRE(problem.sentence.text(evenfall::units::metric) == damaged_sentence);
    }
    CHECK(link_refusal("").code == ProblemCode::damaged_link);
    CHECK(link_refusal("https://lures.example/#").code == ProblemCode::damaged_link);
}

TEST_CASE("a line break or a blank within a link is forgiven, wherever it is") {
    const document::Document document = document_of(full_text);
    const std::string link = write_link(document);
    for (std::size_t at = 0; at <= link.size(); ++at) {
        const std::string broken = link.substr(0, at) + (at % 2 == 0 ? "\r\n  " : "\n") + link.substr(at);
        const auto read = read_link(broken);
        REQUIRE(read.ok());
        REQUIRE(document::same(*read, document));
    }
}

TEST_CASE("a link with one letter changed is refused as damaged, or says the same") {
    const document::Document document = document_of(full_text);
    const std::string link = write_link(document);
    for (std::size_t at = 2; at < link.size(); ++at) {
        std::string altered = link;
        altered[at] = altered[at] == 'A' ? 'B' : 'A';
        // The last byte of a deflate stream has bits that stand for nothing (RFC 1951 (1996) section 3.1.1).
        const auto read = read_link(altered);
        if (read.ok()) {
            REQUIRE(document::same(*read, document));
            REQUIRE(at + 3 >= link.size());
            continue;
        }
        // A changed length may claim more than the cap; all else is damage.
        const ProblemCode code = read.problems().front().code;
        REQUIRE((code == ProblemCode::damaged_link || code == ProblemCode::too_large));
    }
}

TEST_CASE("a link of a later container is refused by its version") {
    const std::string link = write_link(document_of(full_text));
    CHECK(link_refusal("3" + link.substr(1)).sentence ==
          "This link is of version 3; this build reads versions 1 and 2. Ask for the file.");
    CHECK(link_refusal("3" + link.substr(1)).code == ProblemCode::unknown_version);
    CHECK(link_refusal("1" + link.substr(1)).code != ProblemCode::unknown_version);
    CHECK(link_refusal("x" + link.substr(1)).code == ProblemCode::damaged_link);
}

TEST_CASE("a link that would unfold to megabytes is stopped") {
    const Bytes bomb = folded_zeros(14'000); // 3.6 MB
    CHECK(bomb.size() < 24 * 1024);          // fits into the longest link
    for (const char* version : {"1.", "2."}) {
        CHECK(link_refusal(forged(version, (1u << 24) - 1, bomb)).code == ProblemCode::too_large);
        CHECK(link_refusal(forged(version, 1000, bomb)).code == ProblemCode::damaged_link);
        CHECK(link_refusal(forged(version, document::max_document_bytes, bomb)).code ==
              ProblemCode::damaged_link);
        CHECK(link_refusal(version + std::string(40'000, 'A') + "e").code == ProblemCode::too_large);
    }
}

TEST_CASE("a sound link with a bad document tells what is wrong with the document") {
    const std::string bad = document::pack_link(with(full_text, R"("depth_mm":9,)", R"("depth_mm":145,)"));
    CHECK(link_refusal(bad).path == "/holes/0/depth_mm");
    CHECK(link_refusal(document::pack_link("")).code == ProblemCode::not_json);
    CHECK(link_refusal(document::pack_link(std::string(50'000, '['))).code == ProblemCode::too_large);
}

TEST_CASE("any text of a document's size survives a link's container") {
    std::mt19937 draw(7);
    for (const std::size_t size : {0u, 1u, 2u, 3u, 100u, 1000u, 20'000u}) {
        std::string text(size, ' ');
        for (char& c : text)
            c = static_cast<char>(draw() & 0xFFu);
        const Outcome<std::string> back = document::unpack_link(document::pack_link(text));
        REQUIRE(back.ok());
        CHECK(*back == text);
    }
}

TEST_CASE("base64url agrees with the test vectors of RFC 4648 (2006) section 10, padding left off") {
    const std::pair<const char*, const char*> vectors[] = {
        {"", ""},           {"f", "Zg"},          {"fo", "Zm8"},         {"foo", "Zm9v"},
        {"foob", "Zm9vYg"}, {"fooba", "Zm9vYmE"}, {"foobar", "Zm9vYmFy"}};
    for (const auto& [plain, letters] : vectors) {
        const std::string text = plain;
        const std::vector<unsigned char> bytes(text.begin(), text.end());
        CHECK(document::base64url(bytes) == letters);
        CHECK(document::from_base64url(letters) == bytes);
    }
    CHECK_FALSE(document::from_base64url("Zh").has_value()); // stray bits
    CHECK_FALSE(document::from_base64url("Z").has_value());
    CHECK_FALSE(document::from_base64url("Zm9+").has_value()); // of the other alphabet
}

TEST_CASE("the start dictionary of link version 1 never changes") {
    const std::string_view dictionary = document::link_dictionary();
    CHECK(dictionary.size() == 3915);
    CHECK(fingerprint(dictionary) == 6992792093139440444ULL);
}

TEST_CASE("the start dictionary of link version 2 never changes, and each line of it is a lure") {
    const std::string example(document::link_example());
    CHECK(example.size() == 10751);
    CHECK(fingerprint(example) == 13758959607341219630ULL);
    std::size_t lures = 0;
    for (std::size_t from = 0, to = 0; from < example.size(); from = to + 1) {
        to = example.find('\n', from);
        REQUIRE(to != std::string::npos);
        const std::string line = example.substr(from, to - from);
        CHECK(document::write_compact(document_of(line)) == line);
        ++lures;
    }
    CHECK(lures == 3);
}

TEST_CASE("a link made by the first release still opens") {
    // Made by this program when link version 1 was laid down. Never renew it: links out there cannot be
    // renewed.
    const std::string golden = "1.CvfOwwAGFqWYW2rDMBBFt5IF2ELWy_ECuov-NCWFkNCEtLSYkr1HIws9rCv5o3_GyI8RYuac-"
                               "wdV-uXneJ935-McnfrjdP_63pHxvX5aSLra"
                               "0pz-IdXObLp05olO88qazcSZ0HV1HmhsVwWZKLBQZMlakjwU67n7BJQVz8OWX6TSZtx7-IfYHdhZ-"
                               "lW9qRCwWVZOfp1asem2idNTMrwcCDnbd7"
                               "2XjI6z5ZaxV2Nq6ymEkkovFo3R03pIwp4CsWeKpFv0-AZEOVdjj5U8dF7XCjNGs_"
                               "gjR50hFVJqJMnO8RN2VNCwR6YbENq14ZP6dQU-D0Us4Ck0"
                               "K8YgthPhjygkqEDdLSckbVjKSMRks-8aoolkvUroSa1Sg6Sekh-tliX4yDkEr9-TO3PN_"
                               "h7Dl0C3uisCDR6mZC9jcTrOFkgd7sDGkAPOB2r__5"
                               "oOA8hLNM5LwkffL8tY3ezxWZTG3dZkaZqzLpCniTJPo419PJ4e";
    const Outcome<document::Document> document = read_link(golden);
    REQUIRE(document.ok());
    document::Document expected = document_of(full_text);
    expected.shape.section.exponent = document::Section{}.exponent; // version 1 had none for a drawn section
    for (document::Coat& coat : expected.coats)
        coat.note.clear();                                            // nor had a coat a note
    expected.targets.matters_more = document::Targets{}.matters_more; // nor could a target come first
    expected.air_m3.reset();                                          // nor was there caught air
    expected.shape.carving = document::Shape{}.carving; // nor did it say how closely it is carved
    CHECK(document::same(*document, expected));
}

TEST_CASE("what a short link leaves out does not make its lure too long to be opened again") {
    // Every list full, and every text of it short.
    const document::Document d =
        support::with_full_log(support::at_the_limits(), document::ReadingKind::dry_weight, 0.05, 0.001);
    CHECK(write_document(d).size() < 3 * document::max_document_bytes / 4);
}

TEST_CASE("a link whose lure could not be opened again as a file is refused") {
    document::Document d = support::at_the_limits();
    const std::string longest(document::max_text, '"'); // written as two letters each
    for (auto& hole : d.holes)
        hole.name = longest;
    for (auto& part : d.parts)
        part.name = longest;
    for (auto& coat : d.coats)
        coat.note = longest;
    while (write_document(d).size() <= document::max_document_bytes) {
        REQUIRE(d.log.size() < document::max_readings);
        document::Reading reading;
        reading.mass_kg = 0.05;
        reading.note = longest;
        d.log.push_back(reading);
    }
    REQUIRE(document::write_compact(d).size() <= document::max_document_bytes);
    const Problem refused = link_refusal(write_link(d));
    CHECK(refused.code == ProblemCode::too_large);
    CHECK(refused.limit == Sentence("256 kB"));
}

TEST_CASE("a link made when link version 2 was laid down still opens") {
    // Frozen as the one above. Another link of the same lure is a change of what links are written in.
    const std::string golden = frozen("four-piece.link");
    const Outcome<document::Document> document = read_link(golden);
    REQUIRE(document.ok());
    CHECK(document::same(*document, four_piece()));
    CHECK(document::pack_link(*document::unpack_link(golden)) == golden);
}
