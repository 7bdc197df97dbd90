#include "document/link.hpp"
#include "document/write.hpp"
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

/// A container with any body, made without our writer, as a stranger could.
std::string forged(std::size_t stated_length, const std::vector<unsigned char>& body) {
    std::vector<unsigned char> bytes{0,
                                     0,
                                     0,
                                     0,
                                     static_cast<unsigned char>(stated_length >> 16),
                                     static_cast<unsigned char>(stated_length >> 8),
                                     static_cast<unsigned char>(stated_length)};
    bytes.insert(bytes.end(), body.begin(), body.end());
    return "1." + document::base64url(bytes) + "e";
}

/// The deflated body of a text, taken out of its link.
std::vector<unsigned char> body_of(const std::string& text) {
    const std::string link = document::pack_link(text);
    const auto bytes = document::from_base64url(std::string_view(link).substr(2, link.size() - 3));
    REQUIRE(bytes.has_value());
    return {bytes->begin() + 7, bytes->end()};
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

TEST_CASE("the link of the default lure has at most 1,000 characters") {
    CHECK(write_link(document_of(preset_text("millrace-170.json"))).size() <= 1000);
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
        REQUIRE(problem.sentence == damaged_sentence);
    }
    CHECK(link_refusal("").code == ProblemCode::damaged_link);
    CHECK(link_refusal("https://lures.example/#").code == ProblemCode::damaged_link);
}

TEST_CASE("a link with one letter changed is refused as damaged") {
    const std::string link = write_link(document_of(full_text));
    for (std::size_t at = 2; at < link.size(); ++at) {
        std::string altered = link;
        altered[at] = altered[at] == 'A' ? 'B' : 'A';
        const Outcome<document::Document> read = read_link(altered);
        REQUIRE_FALSE(read.ok());
        // A changed length may claim more than the cap; all else is damage.
        const ProblemCode code = read.problems().front().code;
        REQUIRE((code == ProblemCode::damaged_link || code == ProblemCode::too_large));
    }
}

TEST_CASE("a link of a later container is refused by its version") {
    const std::string link = write_link(document_of(full_text));
    CHECK(link_refusal("2" + link.substr(1)).sentence ==
          "This link is of version 2; this build reads version 1. Ask for the file.");
    CHECK(link_refusal("2" + link.substr(1)).code == ProblemCode::unknown_version);
    CHECK(link_refusal("x" + link.substr(1)).code == ProblemCode::damaged_link);
}

TEST_CASE("a link that would unfold to megabytes is stopped") {
    const std::vector<unsigned char> bomb = body_of(std::string(20'000'000, '0'));
    CHECK(bomb.size() < 24 * 1024); // fits into the longest link
    CHECK(link_refusal(forged((1u << 24) - 1, bomb)).code == ProblemCode::too_large);
    CHECK(link_refusal(forged(1000, bomb)).code == ProblemCode::damaged_link);
    CHECK(link_refusal(forged(document::max_document_bytes, bomb)).code == ProblemCode::damaged_link);
    CHECK(link_refusal("1." + std::string(40'000, 'A') + "e").code == ProblemCode::too_large);
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
    CHECK(document::same(*document, expected));
}
