#include "base/number_text.hpp"
#include "body/tail_loft.hpp"
#include "cli/commands.hpp"
#include "cli/settings.hpp"
#include "cli/table.hpp"
#include "cli/words.hpp"
#include "output/tail_json.hpp"

#include <cmath>

namespace evenfall::cli {

namespace {

using units::Unit;
namespace soft = evenfall::tail;

std::string cubic(double m3) {
    return units::number_text(m3, Unit::cm3, 2) + " cm³";
}

std::string tail_text(const document::Document& d, const Evaluation& e, const soft::Pull& pull,
                      const soft::Pour& pour, const soft::PourRequest& r) {
    using enum Table::Side;
    const Answers& with = e.answers;
    const Answers& without = pull.without;
    Table trim({left, right, right, right, right});
    trim.row({"", "mass g", "in water g", "hang", "fall mm/s"});
    trim.row({"with its tail", grams(with.mass_kg), signed_grams(with.in_water_kg), degrees(with.pitch_rad),
              fall_mm_s(with.fall)});
    trim.row({"without", grams(without.mass_kg), signed_grams(without.in_water_kg),
              degrees(without.pitch_rad), fall_mm_s(without.fall)});
    Table blend({left, right, right, right});
    blend.row({"plastic", "parts", "g", "ml"});
    for (std::size_t i = 0; i < soft::ingredient_count; ++i) {
        if (!(r.blend.of[i].parts > 0.0)) continue;
        blend.row({soft::ingredient_word(static_cast<soft::Ingredient>(i)),
                   units::number_text(r.blend.of[i].parts, Unit::one, 1), grams(pour.blend[i].mass_kg),
                   units::number_text(pour.blend[i].volume_m3, Unit::cm3, 2)});
    }
    std::string text =
        d.name + "\n\nTail of " + material_name(d.tail->material) + ": " + cubic(pour.cast.volume_m3) + ", " +
        grams(pull.own.mass.kg) + " g, in water " +
        signed_grams(pull.own.in_water(with.water_density_kg_m3).kg) + " g\n\n" + trim.text() + "\nMould, " +
        (r.open ? "one open half" : "two halves") + "\n  cavity " + cubic(pour.cavity_m3) +
        ", frame inside " + millimetres(pour.box_m.x, 0) + " × " + millimetres(pour.box_m.z, 0) + " × " +
        millimetres(pour.box_m.y, 0) + " mm\n  rubber " + cubic(pour.rubber.volume_m3) + ", " +
        grams(pour.rubber.mass_kg, 0) + " g\n\nPlastic for " + std::to_string(r.tails) +
        (r.tails == 1 ? " tail" : " tails") + "\n  poured " + grams(pour.poured_kg) +
        (soft::is_melted(*d.tail) ? " g, to heat " : " g, to mix ") + grams(pour.heated_kg) + " g\n";
    text += blend.text();
    if (!soft::is_melted(*d.tail))
        return text +
               "\nSilicone sets by itself: parts, times, gloves and fresh air as its label has them.\n";
    text += "\nHot plastisol burns deep and clings: gloves, long sleeves, eyes covered. Heat it slowly in "
            "moving air and never past\n"
            "its label's heat: overheated it gives off acid fumes. A drop of water in mould or cup makes it "
            "spit: both bone dry.\n"
            "Soft plastics of different makers may not mix or lie together. The label comes first.\n";
    return text;
}

} // namespace

int tail(const Arguments& arguments) {
    soft::PourRequest r;
    double tails = 1.0, open = 0.0, by_volume = 0.0;
    auto& of = r.blend.of;
    const Setting list[] = {{"--tails", Unit::one, &tails},
                            {"--shrink", Unit::percent, &r.shrink},
                            {"--sprue", Unit::percent, &r.sprue},
                            {"--loss", Unit::percent, &r.loss},
                            {"--wall", Unit::mm, &r.wall_m},
                            {"--open", Unit::one, &open},
                            {"--rubber-density", Unit::g_per_cm3, &r.rubber_kg_m3},
                            {"--by-volume", Unit::one, &by_volume},
                            {"--old", Unit::one, &of[0].parts},
                            {"--fresh", Unit::one, &of[1].parts},
                            {"--softener", Unit::one, &of[2].parts},
                            {"--hardener", Unit::one, &of[3].parts},
                            {"--colour", Unit::one, &of[4].parts},
                            {"--old-density", Unit::g_per_cm3, &of[0].kg_m3},
                            {"--fresh-density", Unit::g_per_cm3, &of[1].kg_m3},
                            {"--softener-density", Unit::g_per_cm3, &of[2].kg_m3},
                            {"--hardener-density", Unit::g_per_cm3, &of[3].kg_m3},
                            {"--colour-density", Unit::g_per_cm3, &of[4].kg_m3}};
    if (const Problems problems = take_settings(arguments, list); !problems.empty()) return report(problems);
    if (tails != std::floor(tails) || std::abs(tails) > 1e6)
        return report(
            {{ProblemCode::out_of_range, "/tails", "1 to 1000", "Tails come whole, 1 to 1000 of them."}});
    r.tails = static_cast<int>(tails);
    r.open = open != 0.0;
    r.blend.by_volume = by_volume != 0.0;
    const Outcome<document::Document> document = load(arguments.operand);
    if (!document.ok()) return report(document.problems());
    if (!document->tail) {
        return report({{ProblemCode::missing_key, "/tail", "",
                        "This lure has no tail by its shape: draw one, or give the preset a “tail”. A tail "
                        "weighed whole is a part."}});
    }
    const auto evaluation = evaluate(*document);
    if (!evaluation.ok()) return report(evaluation.problems());
    const auto pull = soft::pull(*document, *evaluation);
    if (!pull.ok()) return report(pull.problems());
    const auto pour = soft::pour(*document->tail, evaluation->ledger, r);
    if (!pour.ok()) return report(pour.problems());
    print(arguments.json ? output::tail_json(*document, *evaluation, *pull, *pour)
                         : tail_text(*document, *evaluation, *pull, *pour, r));
    return done;
}

} // namespace evenfall::cli
