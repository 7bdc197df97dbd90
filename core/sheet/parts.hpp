#pragma once

// The pieces of the sheet, each a function that adds to the pages.

#include "sheet/composer.hpp"
#include "sheet/sheet.hpp"

namespace evenfall::sheet {

/// What every piece reads.
struct Job {
    const preset::Document& document;
    const Evaluation& evaluation;
    const SheetOptions& options;
    std::vector<double> coat_hours;  ///< one per coat
};

void add_cover(Composer& pages, const Job& job);
void add_blank(Composer& pages, const Job& job);
void add_side(Composer& pages, const Job& job);
void add_top(Composer& pages, const Job& job);
void add_joint_cuts(Composer& pages, const Job& job);
void add_section_cards(Composer& pages, const Job& job);
void add_drill_tables(Composer& pages, const Job& job);
void add_cut_lists(Composer& pages, const Job& job);
void add_coats(Composer& pages, const Job& job);
void add_weigh_in(Composer& pages, const Job& job);

/// Several recipes at once: their lists merged.
void add_batch(Composer& pages, const std::vector<Job>& jobs);

/// What stays in cup and brush, as a share of what stays on the lure: common practice, no source.
inline constexpr double left_in_cup = 0.5;

/// What one entry of the document weighs, all its lines of the ledger together.
[[nodiscard]] double ledger_kg(const Job& job, ledger::Kind kind, std::size_t item);

/// Until the next coat may follow, by material [h]: common practice, no source. The product's label goes before.
[[nodiscard]] double usual_hours(const preset::Coat& coat);

// Numbers as the bench reads them.
[[nodiscard]] std::string mm_text(double metres, int decimals = 1);
[[nodiscard]] std::string g_text(double kilograms, int decimals = 2);
[[nodiscard]] std::string signed_g_text(double kilograms);
[[nodiscard]] std::string bit_inch_text(double diameter_m);  ///< nearest 64th; "near …" where that is 0.05 mm off or more
[[nodiscard]] std::string hole_name(const preset::Document& document, std::size_t hole);
[[nodiscard]] std::string material_text(const std::string& id);
[[nodiscard]] std::string fall_text(const std::optional<Fall>& fall);  ///< "1.92 s/ft, 159 mm/s", or "floats"
[[nodiscard]] const char* stage_text(Stage stage);

}  // namespace evenfall::sheet
