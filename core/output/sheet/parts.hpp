#pragma once

// The parts of the sheet, each a function that adds to the pages.

#include "materials/bits.hpp"
#include "output/sheet/composer.hpp"
#include "output/sheet/sheet.hpp"
#include "workshop/joint_answers.hpp"
#include "workshop/resin_mix.hpp"

namespace evenfall::sheet {

/// Input of every part.
struct SheetInput {
    const document::Document& document;
    const Evaluation& evaluation;
    const SheetOptions& options;
    std::vector<double> coat_hours; ///< one per coat
    joints::JointsAnswer joints;    ///< empty where a hinge cannot be bent as drawn
    Problems hinge_problems;        ///< the reason
    std::string lacking{};          ///< lacking_text of this sheet, where its format cannot help itself
};

/// Something cut from wire, rod or other stock for one lure.
struct CutPiece {
    std::string what; ///< "Eye", "Pin", or a hole's fill material
    std::string where;
    double diameter_m = 0.0;
    double cut_m = 0.0; ///< without saw allowance
    double finished_m = 0.0;
    double bend_round_m = 0.0; ///< rod to bend it round; 0 = stays straight
    int count = 1;
    bits::BitOfEachSystem bits; ///< for its hole
};
/// Eyes and pins of the drawn hinges, nose to tail.
[[nodiscard]] std::vector<CutPiece> hinge_pieces(const SheetInput& job);
/// Wire of the described hangers.
[[nodiscard]] std::vector<CutPiece> hanger_pieces(const SheetInput& job);
/// Fills of the holes as lengths of their stock.
[[nodiscard]] std::vector<CutPiece> fill_pieces(const SheetInput& job);

void add_cover(Composer& pages, const SheetInput& job);
void add_board(Composer& pages, const SheetInput& job);
void add_side(Composer& pages, const SheetInput& job);
void add_top(Composer& pages, const SheetInput& job);
void add_joint_cuts(Composer& pages, const SheetInput& job);
void add_section_cards(Composer& pages, const SheetInput& job);
void add_drill_tables(Composer& pages, const SheetInput& job);
void add_bits(Composer& pages, const SheetInput& job);
void add_hinge_wire(Composer& pages, const SheetInput& job);
void add_cut_lists(Composer& pages, const SheetInput& job);
/// Adds nothing where no tail is drawn.
void add_soft_tail(Composer& pages, const SheetInput& job);
void add_coats(Composer& pages, const SheetInput& job);
void add_weigh_in(Composer& pages, const SheetInput& job);

/// A wait after a coat, in hours from the first one.
struct Wait {
    std::string name;
    double start_h = 0.0;
    double hours = 0.0;
};
/// One bar per wait, on a common scale.
void add_time_line(Composer& pages, const std::vector<Wait>& waits);

/// Several recipes: their lists merged.
void add_batch(Composer& pages, const std::vector<SheetInput>& jobs);

/// Which letters of a layout its typeface lacks, and on which pages, for the reader of a PDF; empty where it
/// has them all. A page on a screen and a drawing take such letters from another typeface.
[[nodiscard]] std::string lacking_text(const Layout& layout, const Faces& faces);

/// "35 %".
[[nodiscard]] std::string percent(double share);

/// Mass to mix or pour for a film of this mass, with what stays in cup and brush.
inline double to_mix_kg(double on_lures_kg) {
    return on_lures_kg / (1.0 - resin::usual_loss);
}

/// Mass of one entry of the document, all its lines of the ledger together.
[[nodiscard]] double ledger_kg(const SheetInput& job, ledger::Kind kind, std::size_t item);
/// Tail and tenon.
[[nodiscard]] inline double tail_kg(const SheetInput& job) {
    return ledger_kg(job, ledger::Kind::tail, 0) + ledger_kg(job, ledger::Kind::tail, 1);
}

/// Time until the next coat, by material [h]: common practice, no source. The product's label comes first.
[[nodiscard]] double usual_hours(const document::Coat& coat);

[[nodiscard]] std::string hole_name(const document::Document& document, std::size_t hole);
/// "1.92 s/ft, 159 mm/s"; where lengths are inches the one unit that is set.
[[nodiscard]] std::string speed_text(double metres_per_second, const units::UnitSet& units);
/// A speed_text, "floats" or "hangs still".
[[nodiscard]] std::string fall_text(const std::optional<Fall>& fall, Behaviour behaviour,
                                    const units::UnitSet& units);

} // namespace evenfall::sheet
