#include "document/text_code.hpp"

#include <catch2/catch_test_macros.hpp>

#include <cmath>
#include <random>
#include <string>

using namespace evenfall::document;

namespace {

std::string drawn(std::mt19937& draw, std::size_t length, unsigned letters) {
    std::string text(length, ' ');
    for (char& c : text)
        c = static_cast<char>(draw() % letters);
    return text;
}

} // namespace

TEST_CASE("a text comes back from its code, by a model that has read the same") {
    std::mt19937 draw(5);
    for (const char* read : {"", "{\"evenfall\":2,\"name\":"}) {
        const TextModel model(read);
        for (const unsigned letters : {1u, 2u, 10u, 256u}) {
            for (const std::size_t length : {0u, 1u, 2u, 7u, 300u, 5000u}) {
                const std::string text = drawn(draw, length, letters);
                const auto bytes = coded_text(text, model);
                CHECK(decoded_text(bytes, length, model) == text);
            }
        }
    }
}

TEST_CASE("a code is hardly longer than its text, and short where the text repeats itself") {
    std::mt19937 draw(6);
    const TextModel model("");
    CHECK(coded_text(drawn(draw, 5000, 256), model).size() < 5100);
    const std::string once = drawn(draw, 500, 256);
    const std::size_t alone = coded_text(once, model).size();
    CHECK(coded_text(once + once, model).size() < alone + 60);
    CHECK(coded_text(once, TextModel(once)).size() < 60);
    CHECK(coded_text("", model).size() == 1);
}

TEST_CASE("letters drawn alike for each other cost what information theory says; Shannon 1948, theorem 9") {
    std::mt19937 draw(8);
    const std::string digits = drawn(draw, 20'000, 10);
    const double least = 20'000 * std::log2(10.0) / 8.0;
    const auto size = static_cast<double>(coded_text(digits, TextModel("")).size());
    CHECK(size > least);
    CHECK(size < 1.06 * least);
}

TEST_CASE("a code with a byte too many or of another length is refused or gives another text") {
    std::mt19937 draw(9);
    const TextModel model("");
    const std::string text = drawn(draw, 200, 64);
    const auto bytes = coded_text(text, model);
    auto longer = bytes;
    longer.push_back(0);
    CHECK_FALSE(decoded_text(longer, text.size(), model));
    CHECK_FALSE(decoded_text(bytes, text.size() + 50, model));
    CHECK_FALSE(decoded_text(bytes, text.size() - 50, model));
    CHECK_FALSE(decoded_text({}, 0, model));
    for (std::size_t at = 0; at < bytes.size(); ++at) {
        auto changed = bytes;
        changed[at] ^= 0x10;
        CHECK(decoded_text(changed, text.size(), model) != text);
    }
}

TEST_CASE("a chance is never nought nor one, and the guesses of link version 2 never change") {
    std::mt19937 draw(10);
    TextModel model("one text, read before: {\"at_mm\":12.5}");
    unsigned long long hash = 14695981039346656037ULL; // 64-bit FNV-1a (Fowler, Noll and Vo)
    for (int k = 0; k < 40'000; ++k) {
        REQUIRE(model.chance() > 0);
        REQUIRE(model.chance() < TextModel::one);
        hash = (hash ^ model.chance()) * 1099511628211ULL;
        model.learn(k < 20'000 ? draw() % 3u == 0 : false);
    }
    CHECK(hash == 13158724025311554177ULL);
}
