#include "base/number_text.hpp"
#include "document/link.hpp"
#include "materials/woods.hpp"
#include "output/sheet/parts.hpp"
#include "output/square_code.hpp"

#include <algorithm>

namespace evenfall::sheet {

namespace {

using units::number_text;
using units::Unit;

std::string water_words(const document::Water& water) {
    return number_text(water.temperature_c, Unit::celsius, 1) + " °C, " +
           (water.salinity_g_kg > 0.0 ? number_text(water.salinity_g_kg, Unit::g_per_kg, 1) + " g/kg of salt"
                                      : std::string("fresh"));
}

std::string wood_words(const document::Wood& wood) {
    const materials::Wood* known = materials::find_wood(wood.species);
    return (known != nullptr ? std::string(known->name) : wood.species) +
           (wood.density_kg_m3
                ? ", weighed " + number_text(*wood.density_kg_m3, Unit::g_per_cm3, 3) + " g/cm³"
                : ", " + number_text(wood.moisture_percent, Unit::one, 0) +
                      " % moisture, density from the table");
}

std::string target_words(const document::Targets& targets) {
    const std::string first = targets.by == document::TargetBy::fall
                                  ? "fall " + number_text(targets.fall_m_s, Unit::s_per_ft, 2) + " s/ft, " +
                                        number_text(targets.fall_m_s, Unit::mm_per_s, 0) + " mm/s"
                                  : signed_g_text(targets.in_water_kg) + " g in water";
    return first + ", pitch " + number_text(targets.pitch_rad, Unit::degree, 1) + "°";
}

/// Half a millimetre, which a phone reads at arm's length; the quiet zone of four squares is part of the code
/// (ISO/IEC 18004:2015, 6.3.8, from memory).
constexpr double square_mm = 0.5;
constexpr int border = 4;

void add_code(Composer& pages, const SquareCode& code, Point corner) {
    Path squares{{}, {}, ink, {}};
    for (const DarkRun& run : dark_runs(code)) {
        const double x0 = corner.x_mm + square_mm * run.column,
                     x1 = corner.x_mm + square_mm * (run.column + run.length);
        const double y = corner.y_mm + square_mm * run.row;
        squares.lines.push_back({{{x0, y}, {x1, y}, {x1, y + square_mm}, {x0, y + square_mm}}, true});
    }
    pages.add(std::move(squares));
}

/// The link as text on the left and, where a camera can read it, as a square code on the right.
void add_link(Composer& pages, const SheetInput& job) {
    constexpr double size = 2.6, words_size = 2.8, step = 1.32;
    const std::string& address = job.options.address;
    const std::string link =
        address.empty() ? write_link(job.document) : address + '#' + write_link(job.document);
    std::string words =
        address.empty()
            ? "Type or copy this share text, in one piece without blanks, to open the same lure again:"
            : "This address opens the same lure again; it is one piece without blanks:";
    const Outcome<SquareCode> code = square_code(link);
    if (!code) words = code.problems().front().sentence + ' ' + words;
    const double code_mm = code ? square_mm * (code->side + 2 * border) : 0.0;
    const double width = pages.width_mm() - code_mm;
    const auto lines = pages.lines_of(words, width, words_size, Weight::regular);
    const auto link_lines = pages.lines_of(link, width, size, Weight::regular);
    const double text_mm = step * (words_size * static_cast<double>(lines.size()) +
                                   size * static_cast<double>(link_lines.size())) +
                           1.0;
    const double height = std::max(code_mm, text_mm);
    if (Composer::heading_mm + height > pages.whole_room_mm()) {
        pages.heading("The recipe as a link");
        pages.paragraph("This recipe is too long to be printed as a link. Take it along as a file.");
        return;
    }
    pages.heading("The recipe as a link", height);
    const double top = pages.block(height);
    double y = top;
    const auto set = [&](const std::vector<std::string>& list, double size_mm, Colour colour) {
        for (const std::string& one : list) {
            pages.text({pages.left_mm(), y + size_mm}, one, size_mm, Weight::regular, Anchor::start, colour);
            y += size_mm * step;
        }
    };
    set(lines, words_size, soft_ink);
    y += 1.0;
    set(link_lines, size, ink);
    pages.say(words);
    pages.say(link);
    if (code)
        add_code(pages, *code, {pages.left_mm() + width + square_mm * border, top + square_mm * border});
}

} // namespace

void add_cover(Composer& pages, const SheetInput& job) {
    const document::Document& d = job.document;
    const Answers& a = job.evaluation.answers;
    const double length = job.evaluation.body.lines->length_m();
    pages.new_page("Build sheet");
    if (!d.note.empty()) pages.paragraph(d.note);
    const std::string pitch =
        a.pitch_rad ? number_text(*a.pitch_rad, Unit::degree, 1) + "°, nose up positive" : "none: rolls over";
    pages.table({{"The lure", 1.0}, {"", 2.6}},
                {{{"Length",
                   mm_text(length) + " mm, " + units::inch_text(length, units::InchStep::sixteenth) + " in"}},
                 {{"Segments", std::to_string(a.segments.size())}},
                 {{"Wood", wood_words(d.wood)}},
                 {{"Fished in", water_words(d.water)}},
                 {{"Tub", water_words(d.tub)}},
                 {{"Asked for", target_words(d.targets)}},
                 {{"Finished mass", g_text(a.mass.kg) + " ± " + g_text(a.mass_sigma.kg) + " g"}},
                 {{"In water", signed_g_text(a.in_water.kg) + " ± " + g_text(a.in_water_sigma.kg) + " g"}},
                 {{"Fall", fall_text(a.fall, a.in_water)}},
                 {{"Hang pitch", pitch}},
                 {{"B above G", mm_text(a.bg_m, 2) + " mm"}}});
    for (const Problem& warning : a.warnings)
        pages.caution(warning.sentence);
    pages.heading("Order of work");
    pages.table(
        {{"Step", 0.22}, {"Do", 2.4}, {"Then", 1.4}},
        {{{"1", "Check both bars at the foot of every page with a rule.", "Templates"}},
         {{"2", "Saw the body from the board, carve it to the section cards, weigh.", "Weigh-in: carved"}},
         {{"3", "Saw the joints, cut their relief, pockets and slots; drill.", "Drill table"}},
         {{"4", "Set eyes, pins and hangers.", "Cut list"}},
         {{"5", "Fill, cap, seal; then the tub.", "Weigh-in: sealed"}},
         {{"6", "Paint and clear coat, weigh after each.", "Coats"}},
         {{"7", "Hang hooks and tail; the last weighing.", "Weigh-in: rigged"}}});
    add_link(pages, job);
}

} // namespace evenfall::sheet
