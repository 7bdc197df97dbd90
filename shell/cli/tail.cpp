#include "body.hpp"
#include "cli/commands.hpp"
#include "cli/table.hpp"
#include "cli/words.hpp"
#include "evenfall.hpp"
#include "output.hpp"

#include <memory>

namespace evenfall::cli {

namespace {

using units::Unit;
namespace soft = evenfall::tail;

std::string cubic(double m3) {
    return units::number_text(m3, Unit::cm3, 2) + " cm³";
}

std::string tail_text(const document::Document& d, const Evaluation& e, const soft::TailEffect& tail_effect,
                      const soft::TailCasting& pour, const soft::PourRequest& r, const Numbers& in) {
    const std::string gram = std::string(1, ' ').append(in.mass_symbol());
    using enum Table::Side;
    const Answers& with = e.answers;
    const Answers& without = tail_effect.without;
    Table trim({left, right, right, right, right});
    trim.row({"", "mass" + gram, "in water" + gram, "hang", "fall " + in.speed_symbol()});
    trim.row({"with its tail", in.mass(with.mass.kg), in.signed_mass(with.in_water.kg),
              degrees(with.pitch_rad), fall_speed(with.fall, in)});
    trim.row({"without", in.mass(without.mass.kg), in.signed_mass(without.in_water.kg),
              degrees(without.pitch_rad), fall_speed(without.fall, in)});
    Table blend({left, right, right, right});
    blend.row({"plastic", "parts", in.mass_symbol(), "ml"});
    for (std::size_t i = 0; i < soft::ingredient_count; ++i) {
        if (!(r.blend.of[i].parts > 0.0)) continue;
        blend.row({soft::ingredient_word(static_cast<soft::Ingredient>(i)),
                   units::number_text(r.blend.of[i].parts, Unit::one, 1), in.mass(pour.blend[i].mass_kg),
                   units::number_text(pour.blend[i].volume_m3, Unit::cm3, 2)});
    }
    std::string text =
        d.name + "\n\nTail of " + materials::name_of(d.tail->material) + ": " + cubic(pour.cast.volume_m3) +
        ", " + in.mass(tail_effect.own.mass.kg) + gram + ", in water " +
        in.signed_mass(tail_effect.own.in_water(with.water_density_kg_m3).kg) + gram + "\n\n" +
        trim.text(in) + "\n" + (soft::is_melted(*d.tail) ? cautions::plastisol : cautions::silicone) +
        "\n\nMould, " + (r.open ? "one open half" : "two halves") + "\n  cavity " + cubic(pour.cavity_m3) +
        ", frame inside " + in.length(pour.box_m.x, 0) + " × " + in.length(pour.box_m.z, 0) + " × " +
        in.length(pour.box_m.y, 0) + " " + in.length_symbol() + "\n  rubber " + cubic(pour.rubber.volume_m3) +
        ", " + in.mass(pour.rubber.mass_kg, 0) + gram + "\n\nPlastic for " + std::to_string(r.tails) +
        (r.tails == 1 ? " tail" : " tails") + "\n  poured " + in.mass(pour.poured_kg) + gram +
        (soft::is_melted(*d.tail) ? ", to heat " : ", to mix ") + in.mass(pour.heated_kg) + gram + "\n";
    text += blend.text(in);
    if (soft::is_melted(*d.tail))
        text += "\nSoft plastics of different makers may not mix or lie together.\n";
    return text;
}

struct TailOptions : PresetOptions {
    soft::PourRequest pour;
};

Ended run(const TailOptions& o, const Printing& in) {
    const Outcome<document::Document> document = load(o.preset);
    if (!document.ok()) return document.problems();
    if (!document->tail) {
        return Problem{ProblemCode::missing_key, "/tail", "",
                       "This lure has no tail by its shape: draw one, or give the preset a “tail”. A tail "
                       "weighed whole is a part."};
    }
    const auto evaluation = evaluate(*document);
    if (!evaluation.ok()) return evaluation.problems();
    const auto tail_effect = soft::tail_effect(*document, *evaluation);
    if (!tail_effect.ok()) return tail_effect.problems();
    const auto pour = soft::pour(*document->tail, evaluation->ledger, o.pour);
    if (!pour.ok()) return pour.problems();
    o.json ? print(output::tail_json(*document, *evaluation, *tail_effect, *pour))
           : print(tail_text(*document, *evaluation, *tail_effect, *pour, o.pour, in), in);
    return done;
}

} // namespace

void tail(Options& options) {
    const auto o = declare<TailOptions>(
        options, "a soft tail by its shape: mass, pull on the hang, mould and plastic", run);
    soft::PourRequest& pour = o->pour;
    options.read("--tails", read_whole, pour.tails, "N", "how many are cast");
    options.number("--sprue", pour.sprue, Unit::percent, "SHARE", "what stays in the sprue: 15%");
    options.number("--loss", pour.loss, Unit::percent, "SHARE", "what is lost: 10%");
    options.number("--shrink", pour.shrink, Unit::percent, "SHARE", "what the casting shrinks by: 2%");
    options.number("--wall", pour.wall_m, Unit::mm, "LENGTH", "of the mould round the tail: 8mm");
    options.number("--open", pour.open, Unit::one, "1",
                   "1 for one open half, cast on its side; two halves where not given");
    options.number("--rubber-density", pour.rubber_kg_m3, Unit::g_per_cm3, "DENSITY",
                   "of the mould's rubber");
    options.number("--by-volume", pour.blend.by_volume, Unit::one, "1",
                   "1 for parts by volume, with the densities");
    struct Names {
        const char *parts, *density, *what;
    };
    constexpr Names names[] = {{"--old", "--old-density", "plastic that was melted before"},
                               {"--fresh", "--fresh-density", "fresh plastic"},
                               {"--softener", "--softener-density", "softener"},
                               {"--hardener", "--hardener-density", "hardener"},
                               {"--colour", "--colour-density", "colour"}};
    static_assert(std::size(names) == soft::ingredient_count);
    for (std::size_t i = 0; i < std::size(names); ++i) {
        const std::string of = std::string(" of ") + names[i].what;
        options.number(names[i].parts, pour.blend.of[i].parts, Unit::one, "PARTS", ("parts" + of).c_str());
        options.number(names[i].density, pour.blend.of[i].kg_m3, Unit::g_per_cm3, "DENSITY",
                       ("density" + of).c_str());
    }
}

} // namespace evenfall::cli
