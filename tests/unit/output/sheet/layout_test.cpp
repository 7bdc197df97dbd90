#include "base/number_text.hpp"
#include "evenfall.hpp"
#include "look/font_data.hpp"
#include "output/sheet/composer.hpp"
#include "output/sheet/hatch.hpp"
#include "output/sheet/sheet.hpp"
#include "output/sheet/tiling.hpp"
#include "output/sheet/writers.hpp"
#include "output/square_code.hpp"
#include "support/limit_lures.hpp"
#include "support/presets.hpp"
#include "support/small_lures.hpp"
#include "support/soft_tails.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

using namespace evenfall;
using Catch::Matchers::WithinAbs;

namespace {

SheetOptions on(SheetPaper paper, SheetFormat format = SheetFormat::pdf) {
    SheetOptions options;
    options.format = format;
    options.paper = paper;
    options.typefaces = {
        {reinterpret_cast<const char*>(shell::look::font_regular), shell::look::font_regular_size},
        {reinterpret_cast<const char*>(shell::look::font_semibold), shell::look::font_semibold_size}};
    return options;
}

struct Bounds {
    double left = 1e9, top = 1e9, right = -1e9, bottom = -1e9;
    void take(double x, double y) {
        left = std::min(left, x), right = std::max(right, x), top = std::min(top, y),
        bottom = std::max(bottom, y);
    }
};

/// What shows of an item: its clip bounds it.
Bounds bounds(const sheet::Item& item, const sheet::Faces& faces) {
    Bounds out;
    if (const auto* text = std::get_if<sheet::Text>(&item)) {
        const auto& face = text->weight == sheet::Weight::semibold ? faces.semibold : faces.regular;
        const double width = face.width_mm(text->words, text->size_mm);
        const double share = text->anchor == sheet::Anchor::start    ? 0.0
                             : text->anchor == sheet::Anchor::middle ? 0.5
                                                                     : 1.0;
        out.take(text->at.x_mm - share * width, text->at.y_mm - 0.75 * text->size_mm);
        out.take(text->at.x_mm + (1.0 - share) * width, text->at.y_mm + 0.25 * text->size_mm);
        return out;
    }
    const auto& path = std::get<sheet::Path>(item);
    for (const auto& line : path.lines) {
        for (const auto& p : line.points) {
            if (path.clip) {
                out.take(std::clamp(p.x_mm, path.clip->left_mm, path.clip->right_mm()),
                         std::clamp(p.y_mm, path.clip->top_mm, path.clip->bottom_mm()));
            } else {
                out.take(p.x_mm, p.y_mm);
            }
        }
    }
    return out;
}

document::Document long_lure() {
    document::Document d = support::fish();
    for (auto* curve : {&d.shape.back, &d.shape.belly, &d.shape.half_width}) {
        for (auto& point : *curve)
            point.x_m *= 2.0;
    }
    for (auto& joint : d.joints)
        joint.at_m *= 2.0;
    for (auto& hole : d.holes)
        hole.x_m *= 2.0;
    for (auto& part : d.parts)
        part.at_m.x *= 2.0;
    for (auto& pocket : d.pockets)
        pocket.x_from_m *= 2.0, pocket.x_to_m *= 2.0;
    return d;
}

void check_within_margins(const document::Document& document, const SheetOptions& options) {
    const auto layout = sheet_layout(document, options);
    REQUIRE(layout.ok());
    const sheet::Faces faces{*sheet::Typeface::read(options.typefaces.regular),
                             *sheet::Typeface::read(options.typefaces.semibold)};
    for (const auto& page : layout->pages) {
        for (const auto& item : page.items) {
            const Bounds b = bounds(item, faces);
            if (b.left > b.right) continue;
            const auto* text = std::get_if<sheet::Text>(&item);
            INFO(page.title << ": " << b.left << ' ' << b.top << ' ' << b.right << ' ' << b.bottom << ' '
                            << (text ? text->words : ""));
            CHECK(b.left >= layout->margin_mm - 1e-6);
            CHECK(b.right <= layout->width_mm - layout->margin_mm + 1e-6);
            CHECK(b.top >= layout->margin_mm - 1e-6);
            CHECK(b.bottom <= layout->height_mm - layout->margin_mm + 1e-6);
        }
    }
}

/// Letters in no order, which no packing shortens, with or without blanks between them.
std::string drawn_text(std::mt19937& draw, std::size_t length, bool words) {
    std::string out;
    while (out.size() < length)
        out += words && out.size() % 9 == 8 ? ' ' : static_cast<char>('A' + draw() % 26u);
    return out;
}

/// As many entries as a document may have, each with as long a name and note as it may have.
document::Document wordiest(bool words, std::size_t readings) {
    std::mt19937 draw(7);
    document::Document d = support::at_the_limits();
    const auto text = [&] { return drawn_text(draw, document::max_text, words); };
    d.name = text();
    d.note = text();
    for (auto& name : d.segment_names)
        name = text();
    for (auto& hole : d.holes)
        hole.name = text();
    for (auto& part : d.parts)
        part.name = text();
    for (auto& coat : d.coats)
        coat.name = text();
    for (std::size_t n = 0; n < readings; ++n) {
        document::Reading reading;
        reading.mass_kg = evaluate(d)->answers.stages.front().mass.kg;
        reading.stage = Stage::carved;
        reading.note = text();
        d.log.push_back(reading);
    }
    return d;
}

} // namespace

TEST_CASE("a drawing that fits the window is one stretch") {
    const auto one = sheet::tiles(-2.0, 172.0, 174.0, 16.0);
    REQUIRE(one.size() == 1);
    CHECK(one[0].from_mm == -2.0);
    CHECK(one[0].to_mm == 172.0);
}

TEST_CASE("stretches cover the drawing, keep to the window and share the overlap") {
    for (const double length : {180.1, 234.0, 344.0, 400.0, 999.0}) {
        const auto all = sheet::tiles(-2.0, length - 2.0, 180.0, 16.0);
        REQUIRE(all.size() >= 2);
        CHECK(all.front().from_mm == -2.0);
        CHECK(all.back().to_mm == length - 2.0);
        for (std::size_t k = 0; k < all.size(); ++k) {
            CHECK(all[k].to_mm - all[k].from_mm <= 180.0 + 1e-9);
            if (k > 0) CHECK_THAT(all[k - 1].to_mm - all[k].from_mm, WithinAbs(16.0, 1e-9));
        }
        // One fewer would not reach.
        CHECK(180.0 + (180.0 - 16.0) * (static_cast<double>(all.size()) - 2.0) < length);
    }
}

TEST_CASE("hatching of a square has the length of its area over the spacing") {
    const std::vector<sheet::Point> square{{10, 10}, {30, 10}, {30, 30}, {10, 30}};
    double length = 0.0;
    for (const auto& line : sheet::hatch(square, 0.5))
        length +=
            std::hypot(line.points[1].x_mm - line.points[0].x_mm, line.points[1].y_mm - line.points[0].y_mm);
    CHECK_THAT(length, WithinAbs(400.0 / 0.5, 8.0));
}

TEST_CASE("nothing on the sheet lies outside the margins, on either paper, short lure and long, short tail "
          "and long") {
    document::Document tailed = support::fish();
    tailed.tail = support::straight_tail(0.250, 0.003, 0.012);
    tailed.tail->x_m = 0.150;
    for (const auto& document : {support::fish(), long_lure(), support::block_with_tail(), tailed}) {
        for (const SheetPaper paper : {SheetPaper::a4, SheetPaper::letter}) {
            check_within_margins(document, on(paper));
        }
    }
}

TEST_CASE(
    "nothing on the sheet of the fullest lure lies outside the margins, with names of one word and of many") {
    for (const bool words : {false, true})
        check_within_margins(wordiest(words, document::max_readings), on(SheetPaper::a4));
}

TEST_CASE("no sheet prints the text of a link, and one that no code holds is not heard either") {
    SheetOptions options = on(SheetPaper::a4, SheetFormat::html);
    const auto drawn = [&](const document::Document& document) {
        check_within_margins(document, options);
        const auto layout = sheet_layout(document, options);
        REQUIRE(layout.ok());
        std::string all;
        for (const auto& page : layout->pages) {
            for (const auto& item : page.items) {
                if (const auto* text = std::get_if<sheet::Text>(&item)) all += text->words + '\n';
            }
        }
        return all;
    };
    const auto with_notes = [](std::size_t readings, std::size_t length) {
        std::mt19937 draw(11);
        document::Document d = support::fish();
        for (std::size_t n = 0; n < readings; ++n) {
            document::Reading reading;
            reading.mass_kg = 0.03;
            reading.stage = Stage::carved;
            reading.note = drawn_text(draw, length, false);
            d.log.push_back(reading);
        }
        return d;
    };
    constexpr const char* too_long = "too long for a square code";
    for (const std::size_t readings : {0u, 5u, 50u, 200u}) {
        CAPTURE(readings);
        const document::Document d = with_notes(readings, readings < 200 ? 100 : document::max_text);
        const std::string link = write_link(d);
        const std::string seen = drawn(d);
        CHECK(seen.find("The recipe as a link") != std::string::npos);
        CHECK(seen.find(link.substr(0, 40)) == std::string::npos);
        const auto html = build_sheet(d, options);
        REQUIRE(html.ok());
        const bool fits = square_code(link).ok();
        CHECK(fits == (readings <= 5));
        CHECK((html->find(link) != std::string::npos) == fits);
        CHECK((seen.find(too_long) != std::string::npos) == !fits);
    }
}

TEST_CASE("a word longer than the line is cut where the line ends, between whole characters, and nothing of "
          "it is lost") {
    const SheetOptions options = on(SheetPaper::a4);
    const sheet::Faces faces{*sheet::Typeface::read(options.typefaces.regular),
                             *sheet::Typeface::read(options.typefaces.semibold)};
    const sheet::Composer pages({}, faces, "", "");
    std::mt19937 draw(3);
    std::string word;
    for (int k = 0; k < 3000; ++k)
        word += draw() % 5u == 0 ? std::string("ä") : std::string(1, static_cast<char>('!' + draw() % 90u));
    for (const double width : {0.1, 17.0, 90.0}) {
        const auto lines = pages.lines_of("so " + word, width, 2.6, sheet::Weight::regular);
        std::string whole;
        for (std::size_t k = 0; k < lines.size(); ++k) {
            const std::string& line = lines[k];
            REQUIRE_FALSE(line.empty());
            CHECK((static_cast<unsigned char>(line.front()) & 0xC0u) != 0x80u);
            whole += line;
            if (width < 1.0) continue;
            CHECK(pages.text_width_mm(line, 2.6) <= width);
            // The next character would not have fitted; before the word itself stands what was there.
            if (k == 0 || k + 1 == lines.size()) continue;
            const std::string next = lines[k + 1].substr(
                0, (static_cast<unsigned char>(lines[k + 1].front()) & 0x80u) != 0u ? 2 : 1);
            CHECK(pages.text_width_mm(line + next, 2.6) > width);
        }
        CHECK(whole == "so" + word);
    }
}

TEST_CASE(
    "a tail by its shape has a page at full size, spoken too, with the grams that its ledger lines weigh") {
    const document::Document d = support::block_with_tail();
    SheetOptions options = on(SheetPaper::a4);
    options.lures = 3;
    const auto layout = sheet_layout(d, options);
    REQUIRE(layout.ok());
    const auto page = std::find_if(layout->pages.begin(), layout->pages.end(),
                                   [](const sheet::Page& p) { return p.title == "Soft tail"; });
    REQUIRE(page != layout->pages.end());
    // 46 mm and a tenon of 12 mm: the widest closed outline is as long as the tail, the open one as long as
    // the tenon.
    double longest = 0.0, tenon = 0.0;
    for (const auto& item : page->items) {
        const auto* path = std::get_if<sheet::Path>(&item);
        if (path == nullptr || !path->clip || path->lines.size() != 1) continue;
        const auto& points = path->lines[0].points;
        const auto [least, most] = std::minmax_element(
            points.begin(), points.end(), [](const auto& a, const auto& b) { return a.x_mm < b.x_mm; });
        if (path->lines[0].closed)
            longest = std::max(longest, most->x_mm - least->x_mm);
        else if (points.size() == 4)
            tenon = most->x_mm - least->x_mm;
    }
    CHECK_THAT(longest, WithinAbs(46.0, 1e-9));
    CHECK_THAT(tenon, WithinAbs(12.0, 1e-9));
    const auto evaluation = evaluate(d);
    REQUIRE(evaluation.ok());
    double kg = 0.0;
    for (const auto& line : evaluation->ledger)
        kg += line.kind == ledger::Kind::tail ? line.mass_kg : 0.0;
    const std::string grams = units::number_text(kg, units::Unit::gram, 2);
    std::string spoken;
    for (const auto& said : page->said) {
        for (const auto& cell : said.cells)
            spoken += cell + '\n';
    }
    CHECK(spoken.find("Grams of plastic\n" + grams + '\n') != std::string::npos);
    CHECK(spoken.find("3 tails") != std::string::npos);
    CHECK(spoken.find("burns") != std::string::npos);
    const auto bare = sheet_layout(support::fish(), options);
    REQUIRE(bare.ok());
    CHECK(std::none_of(bare->pages.begin(), bare->pages.end(),
                       [](const sheet::Page& p) { return p.title == "Soft tail"; }));
}

TEST_CASE("a tail higher than the paper is refused by its name") {
    document::Document d = support::fish();
    d.tail = support::straight_tail(0.100, 0.003, 0.140);
    d.tail->x_m = 0.150;
    const auto out = build_sheet(d, on(SheetPaper::a4));
    REQUIRE_FALSE(out.ok());
    CHECK(out.problems().front().path == "/tail");
}

TEST_CASE("options off their limits are refused by name, not a number included") {
    const auto path = [](const SheetOptions& options) {
        const auto out = build_sheet(support::fish(), options);
        return out.ok() ? std::string("accepted") : out.problems().front().path;
    };
    SheetOptions options = on(SheetPaper::a4);
    CHECK(path(options) == "accepted");
    options.lures = 0;
    CHECK(path(options) == "/lures");
    options = on(SheetPaper::a4);
    options.station_m = std::numeric_limits<double>::quiet_NaN();
    CHECK(path(options) == "/station");
    options = on(SheetPaper::a4);
    options.cure_hours.assign(support::fish().coats.size() + 1, 1.0);
    CHECK(path(options) == "/cure_hours");
}

TEST_CASE("the link's code is drawn square for square on the first page, and none where the address is too "
          "long for a camera") {
    SheetOptions options = on(SheetPaper::a4);
    options.address = "https://bench.example/";
    // Only the code is filled with ink.
    const auto inked_mm2 = [&] {
        const auto layout = sheet_layout(support::fish(), options);
        REQUIRE(layout.ok());
        double area = 0.0;
        for (const auto& item : layout->pages.front().items) {
            const auto* path = std::get_if<sheet::Path>(&item);
            if (path == nullptr || !path->fill || path->fill->red != sheet::ink.red) continue;
            for (const auto& line : path->lines)
                area +=
                    (line.points[2].x_mm - line.points[0].x_mm) * (line.points[2].y_mm - line.points[0].y_mm);
        }
        return area;
    };
    const auto code = square_code(options.address + '#' + write_link(support::fish()));
    REQUIRE(code.ok());
    const auto dark = std::count(code->dark.begin(), code->dark.end(), true);
    CHECK_THAT(inked_mm2(), WithinAbs(0.25 * static_cast<double>(dark), 1e-6));
    // Names without sense cannot be packed: a link longer than any code holds.
    document::Document wordy = support::fish();
    std::mt19937 draw(7);
    wordy.holes.resize(document::max_holes, wordy.holes.front());
    for (auto& hole : wordy.holes) {
        for (int k = 0; k < 100; ++k)
            hole.name += static_cast<char>('a' + draw() % 26u);
    }
    REQUIRE_FALSE(square_code(options.address + '#' + write_link(wordy)).ok());
    options.format = SheetFormat::html;
    const auto html = build_sheet(wordy, options);
    REQUIRE(html.ok());
    CHECK(html->find("too long for a square code") != std::string::npos);
}

TEST_CASE("a typeface that is cut anywhere is refused or read, never overrun") {
    const SheetOptions whole = on(SheetPaper::a4);
    REQUIRE(sheet::Typeface::read(whole.typefaces.regular).ok());
    CHECK_FALSE(sheet::Typeface::read("").ok());
    for (std::size_t length = 1; length < 600; length += 7)
        CHECK_FALSE(sheet::Typeface::read(whole.typefaces.regular.substr(0, length)).ok());
}

TEST_CASE("a body too tall for the paper is refused") {
    document::Document document = support::fish();
    document.holes.clear();
    document.parts.clear();
    document.pockets.clear();
    for (auto& point : document.shape.back)
        point.value += 0.075;
    for (auto& point : document.shape.belly)
        point.value -= 0.075;
    const auto out = build_sheet(document, on(SheetPaper::a4));
    REQUIRE_FALSE(out.ok());
    CHECK(out.problems().front().path == "/shape");
}

TEST_CASE("millimetres are written without a locale, an exponent or a negative zero") {
    CHECK(sheet::mm_number(12.5) == "12.5");
    CHECK(sheet::mm_number(-0.0001) == "0");
    CHECK(sheet::mm_number(-3.0625) == "-3.063");
    CHECK(sheet::mm_number(100000.0) == "100000");
    CHECK(sheet::mm_number(0.007) == "0.007");
}

TEST_CASE(
    "the sheet's typefaces have the letters of the languages that are written in Latin, Greek and Cyrillic",
    "[sheet]") {
    // Alphabets beyond Latin-1, as dictionaries order them (common knowledge): Polish, Czech and Slovak,
    // Hungarian, Romanian, Turkish, Baltic, Welsh, Esperanto, Greek, Russian, Ukrainian, Serbian.
    const std::string words =
        "ąćęłńóśźżĄĆĘŁŃÓŚŹŻ áčďéěíňóřšťúůýžĚŘŠŤŮŽĺľŕĹĽŔ őűŐŰ ăâîșțĂÂÎȘȚşţ ğıİşĞŞ āčēģīķļņšūžėįųĀĒĢĪĶĻŅŪĖĮŲ "
        "ŵŷŴŶ "
        "ĉĝĥĵŝŭĈĜĤĴŜŬ ẞ αβγδεζηθικλμνξοπρσςτυφχψωάέήίόύώϊϋΐΰ ΑΒΓΔΕΖΗΘΙΚΛΜΝΞΟΠΡΣΤΥΦΧΨΩ "
        "абвгдеёжзийклмнопрстуфхцчшщъыьэюя АБВГДЕЁЖЗИЙКЛМНОПРСТУФХЦЧШЩЪЫЬЭЮЯ ґєіїҐЄІЇ ђјљњћџЂЈЉЊЋЏ";
    const SheetOptions options = on(SheetPaper::a4);
    const sheet::Faces faces{*sheet::Typeface::read(options.typefaces.regular),
                             *sheet::Typeface::read(options.typefaces.semibold)};
    for (const char32_t c : sheet::characters(words)) {
        CAPTURE(static_cast<unsigned>(c));
        CHECK(faces.regular.glyph(c) != 0);
        CHECK(faces.semibold.glyph(c) != 0);
    }
}

TEST_CASE("letters that the typeface lacks are told on the first page of a PDF, and only there", "[sheet]") {
    document::Document d = support::preset_named("reedline-120");
    d.coats.back().name = "\xE9\x87\xA3"; // U+91E3
    const auto says = [&](SheetFormat format) {
        const auto layout = sheet_layout(d, on(SheetPaper::a4, format));
        REQUIRE(layout.ok());
        std::string all;
        for (const auto& said : layout->pages.front().said)
            for (const std::string& cell : said.cells)
                all += cell + '\n';
        return all;
    };
    CHECK(says(SheetFormat::pdf)
              .find("The typeface of this sheet lacks U+91E3: a box stands for each. Pages: “Coats "
                    "and time”.") != std::string::npos);
    CHECK(says(SheetFormat::svg).find("lacks") == std::string::npos);
    d.coats.back().name = "Żółw";
    CHECK(says(SheetFormat::pdf).find("lacks") == std::string::npos);
}

TEST_CASE("letters that XML cannot write never reach a drawing", "[sheet]") {
    CHECK(sheet::xml("a\xEF\xBF\xBE"
                     "b\xEF\xBF\xBF<") == "a\xEF\xBF\xBD"
                                          "b\xEF\xBF\xBD&lt;");
}
