// A text in another language: numbers, names and parts of it, and catalogues that cannot be read.

#include "language.hpp"
#include "words/po.hpp"

#include <catch2/catch_test_macros.hpp>

#include <vector>

using namespace evenfall;
using words::Language;

namespace {

const std::string head = R"(msgid ""
msgstr ""
"Language: xx\n"
"Plural-Forms: nplurals=3; plural=(n==1 ? 0 : n%10>=2 && n%10<=4 && (n%100<10 || n%100>=20) ? 1 : 2);\n"
"X-Name: Test\n"
"X-Decimal-Sign: ,\n"
"X-Date: {day}.{month}.{year}\n"

)";

Language language(const std::string& entries) {
    auto out = Language::read(head + entries);
    REQUIRE(out.ok());
    return std::move(out).value();
}

std::string entry(const std::string& english, const std::string& other) {
    return "msgid \"" + english + "\"\nmsgstr \"" + other + "\"\n\n";
}

} // namespace

TEST_CASE("numbers with their units, signs, fractions and dates are put into a translation", "[words]") {
    const Language in = language(entry("Hole {} is full at {}.", "Loch {} ist bei {} voll.") +
                                 entry("{} of {}", "von {2} sind {1} getan") +
                                 entry("Read on {}", "Gelesen am {}") + entry("hang {}", "Lage {}"));
    CHECK(in.said("Hole 2 is full at 18.0 mm.") == "Loch 2 ist bei 18,0 mm voll.");
    CHECK(in.said("Hole 2 is full at 1 3/8 in.") == "Loch 2 ist bei 1 3/8 in voll.");
    CHECK(in.said("3 of 12") == "von 12 sind 3 getan");
    CHECK(in.said("Read on 2026-11-30") == "Gelesen am 30.11.2026");
    CHECK(in.said("hang \xE2\x88\x92"
                  "2.5°") == "Lage \xE2\x88\x92"
                             "2,5°");
    CHECK(in.said("0.75 s/ft") == "0,75 s/ft");
    CHECK(in.said("1.5.0") == "1.5.0");
    std::vector<std::string> unknown;
    CHECK(in.said("12.0\u00A0mm", &unknown) == "12,0\u00A0mm");
    CHECK(unknown.empty());
}

TEST_CASE("the word in is not taken for an inch where that leads nowhere", "[words]") {
    const Language in = language(entry("{} in water", "{} im Wasser") + entry("{} wide", "{} breit"));
    CHECK(in.said("2 in water") == "2 im Wasser");
    CHECK(in.said("2 in wide") == "2 in breit");
    CHECK(in.said("2.50 g in water") == "2,50 g im Wasser");
}

TEST_CASE("names stay as they are typed, words around them do not", "[words]") {
    const Language in =
        language(entry("Copy of {text}", "Kopie von {text}") +
                 entry("wall to {text} at {}", "Wand bei {2} zu {1}") + entry("the pin", "dem Stift"));
    CHECK(in.said("Copy of Blue one 1.5") == "Kopie von Blue one 1.5");
    CHECK(in.said("wall to the pin at 2.5 mm") == "Wand bei 2,5 mm zu dem Stift");
    // A template ends where the part of the sentence does.
    std::vector<std::string> unknown;
    CHECK(in.said("Copy of one; Copy of two", &unknown) == "Kopie von one; Kopie von two");
    CHECK(unknown == std::vector<std::string>{"one", "two"});
    CHECK(in.said("wall to hook 2 at 2.5 mm") == "Wand bei 2,5 mm zu hook 2");
}

TEST_CASE("a text of several parts is known by its parts, or stays English as a sentence", "[words]") {
    const Language in = language(entry("fall {}", "Fall {}") + entry("hang {}", "Lage {}") +
                                 entry("It floats.", "Er schwimmt.") + entry("both", "beides"));
    std::vector<std::string> unknown;
    CHECK(in.said("fall 1.5 s, hang 2.0°", &unknown) == "Fall 1,5 s, Lage 2,0°");
    CHECK(in.said("It floats. Now fall 1.5 s (both)", &unknown) == "Er schwimmt. Now fall 1,5 s (both)");
    CHECK(unknown == std::vector<std::string>{"Now fall 1.5 s (both)"});
    unknown.clear();
    CHECK(in.said("fall 1.5 s, slowly\nIt floats.", &unknown) == "fall 1,5 s, slowly\nEr schwimmt.");
    CHECK(unknown == std::vector<std::string>{"fall 1.5 s, slowly"});
    CHECK(in.said("", &unknown).empty());
    CHECK(in.said("{} {", &unknown) == "{} {");
}

TEST_CASE("a number chooses its form by the rule of the language", "[words]") {
    const Language in = language("msgid \"{} hole\"\nmsgid_plural \"{} holes\"\nmsgstr[0] \"{} dziura\"\n"
                                 "msgstr[1] \"{} dziury\"\nmsgstr[2] \"{} dziur\"\n");
    CHECK(in.said("1 hole") == "1 dziura");
    CHECK(in.said("2 holes") == "2 dziury");
    CHECK(in.said("5 holes") == "5 dziur");
    CHECK(in.said("12 holes") == "12 dziur");
    CHECK(in.said("22 holes") == "22 dziury");
    CHECK(in.said("0 holes") == "0 dziur");
}

TEST_CASE("a catalogue that is none is refused, with its line", "[words]") {
    const auto refused = [](const std::string& text) {
        const auto out = Language::read(text);
        REQUIRE_FALSE(out.ok());
        return out.problems().front().sentence.text(units::metric);
    };
    CHECK(refused("").find("head") != std::string::npos);
    CHECK(refused(head + "msgid Hole\n").find("Line 9") != std::string::npos);
    CHECK(refused(head + entry("Hole", "Loch {}")).find("Line 9") != std::string::npos);
    CHECK(refused(head + entry("Hole", "Loch") + entry("Hole", "Grube")).find("twice") != std::string::npos);
    CHECK_FALSE(words::PluralRule::read("nplurals=2; plural=(n !! 1);").ok());
    CHECK_FALSE(words::PluralRule::read("nplurals=1; plural=n != 1;").ok());
    CHECK_FALSE(words::PluralRule::read("nplurals=2; plural=" + std::string(1000, '(') + "n").ok());
    CHECK_FALSE(words::read_po("msgid \"a\"\nmsgstr \"b").ok());
}

TEST_CASE("every committed catalogue can be read, and says nothing twice over", "[words]") {
    REQUIRE_FALSE(words::catalogues().empty());
    for (const words::Catalogue& c : words::catalogues()) {
        INFO(c.code);
        const auto in = Language::read(c.text);
        if (!in.ok()) INFO(in.problems().front().sentence.text(units::metric));
        REQUIRE(in.ok());
        CHECK(in->code() == c.code);
        CHECK_FALSE(in->name().empty());
        // A text that has been translated already stays as it is, should it be asked for again.
        for (const auto& [english, others] : in->texts()) {
            for (const std::string& other : others) {
                if (in->texts().contains(other)) {
                    INFO(english << " → " << other);
                    CHECK(in->said(other) == other);
                }
            }
        }
    }
    CHECK(words::catalogue_of("de_CH.UTF-8") == words::catalogue_of("de"));
    CHECK(words::catalogue_of("de") != nullptr);
    CHECK(words::catalogue_of("C") == nullptr);
    CHECK(words::catalogue_of("") == nullptr);
    CHECK(words::catalogue_of("en_GB") == nullptr);
}
