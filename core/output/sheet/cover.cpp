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

std::string water_words(const document::Water& water, const Numbers& in) {
    return in.temperature(water.temperature_c, 1) + " " + in.temperature_symbol() + ", " +
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

std::string target_words(const document::Targets& targets, const Numbers& in) {
    const std::string first =
        targets.by == document::TargetBy::fall
            ? "fall " + speed_text(targets.fall_m_s, in.units)
            : in.signed_mass(targets.in_water_kg) + " " + in.mass_symbol() + " in water";
    return first + ", hang " + number_text(targets.pitch_rad, Unit::degree, 1) + "°";
}

void add_code(Composer& pages, const SquareCode& code, Point corner) {
    const double square_mm = printed_square_mm(code);
    Path squares{{}, {}, ink, {}};
    for (const DarkRun& run : dark_runs(code)) {
        const double x0 = corner.x_mm + square_mm * run.column,
                     x1 = corner.x_mm + square_mm * (run.column + run.length);
        const double y = corner.y_mm + square_mm * run.row;
        squares.lines.push_back({{{x0, y}, {x1, y}, {x1, y + square_mm}, {x0, y + square_mm}}, true});
    }
    pages.add(std::move(squares));
}

/// The link as a square code on the right and what to do with it on the left. Nobody types a link: its text
/// is heard, never printed.
void add_link(Composer& pages, const SheetInput& job) {
    const std::string& address = job.options.address;
    const std::string share_text = write_link(job.document);
    const std::string link = address.empty() ? share_text : address + '#' + share_text;
    const Outcome<SquareCode> code = square_code(link);
    if (!code) {
        pages.heading("The recipe as a link");
        pages.paragraph("The link of this recipe is too long for a square code: send it from the page, or "
                        "take the recipe along as a file.");
        return;
    }
    constexpr double size_mm = 3.1, step = 1.32, gap_mm = 4.0;
    const double square_mm = printed_square_mm(*code);
    const double code_mm = square_mm * whole_side(*code);
    pages.heading("The recipe as a link", code_mm);
    const double top = pages.block(code_mm);
    const std::string words =
        address.empty() ? "This code holds the share text of the recipe. Behind # in the page's address it "
                          "opens the same lure again."
                        : "A phone's camera reads this code and opens the same lure again.";
    double y = top;
    for (const std::string& line :
         pages.lines_of(pages.said(words), pages.width_mm() - code_mm - gap_mm, size_mm, Weight::regular)) {
        pages.text({pages.left_mm(), y + size_mm}, line, size_mm);
        y += size_mm * step;
    }
    pages.say(words);
    pages.say(link);
    const double quiet_mm = square_mm * quiet_squares;
    add_code(pages, *code, {pages.left_mm() + pages.width_mm() - code_mm + quiet_mm, top + quiet_mm});
}

} // namespace

void add_cover(Composer& pages, const SheetInput& job) {
    const document::Document& d = job.document;
    const Answers& a = job.evaluation.answers;
    const double length = job.evaluation.body.lines->length_m();
    const Numbers& in = pages.numbers();
    const std::string gram = " " + in.mass_symbol();
    pages.new_page("Build sheet");
    if (!job.lacking.empty()) pages.caution(job.lacking);
    if (!d.note.empty()) pages.paragraph(d.note);
    const std::string pitch =
        a.pitch_rad ? number_text(*a.pitch_rad, Unit::degree, 1) + "°, nose up positive" : "none: rolls over";
    pages.table(
        {{"The lure", 1.0}, {"", 2.6}},
        {{{"Length", in.units.inches() ? in.length(length) + " in"
                                       : in.length(length) + " mm, " +
                                             units::inch_text(length, units::InchStep::sixteenth) + " in"}},
         {{"Segments", std::to_string(a.segments.size())}},
         {{"Wood", wood_words(d.wood)}},
         {{"Fished in", water_words(d.water, in)}},
         {{"Tub", water_words(d.tub, in)}},
         {{"Asked for", target_words(d.targets, in)}},
         {{"Finished mass", in.mass(a.mass.kg) + " ± " + in.mass(a.mass_sigma.kg) + gram}},
         {{"In water", in.signed_mass(a.in_water.kg) + " ± " + in.mass(a.in_water_sigma.kg) + gram}},
         {{"Fall", fall_text(a.fall, a.behaviour, in.units)}},
         {{"Hang", pitch}},
         {{"B above G", in.thickness(a.bg_m) + " " + in.length_symbol()}}});
    for (const Problem& warning : a.warnings)
        pages.caution(warning.sentence.text(in.units));
    pages.heading("Order of work");
    pages.table(
        {{"Step", 0.22}, {"Do", 2.4}, {"Then", 1.4}},
        {{{"1",
           std::string("Check ") + (in.units.inches() ? "the bar" : "both bars") +
               " at the foot of every page with a rule.",
           "Templates"}},
         {{"2", "Saw the body from the board, carve it to the section cards, weigh.", "Weigh-in: carved"}},
         {{"3", "Saw the joints, cut their relief, pockets and slots; drill.", "Drill table"}},
         {{"4", "Glue in eyes and hangers; fit the pins, not glued yet.", "Cut list"}},
         {{"5", "Fill, cap, seal; then the tub.", "Weigh-in: sealed"}},
         {{"6",
           "Pins out again. Paint, set glass eyes in, clear coat; weigh after each, with the pins on the "
           "scale.",
           "Coats"}},
         {{"7", "Set the pins for good, hang hooks and tail; the last weighing.", "Weigh-in: rigged"}}});
    add_link(pages, job);
}

} // namespace evenfall::sheet
