#pragma once

// The build sheet: true to size on paper, for the workshop.

#include "answers/answers.hpp"
#include "ledger/fold.hpp"
#include "output/sheet/model.hpp"
#include "words/language.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace evenfall {

enum class SheetFormat {
    html,
    svg,
    pdf,
    html_pages, ///< only the pages of the HTML, for a page that has their typefaces and styles
                ///< (output/sheet/writers.hpp)
};
enum class SheetPaper { a4, letter };

/// Letter where lengths are inches, else A4.
[[nodiscard]] constexpr SheetPaper usual_paper(const units::UnitSet& units) {
    return units.inches() ? SheetPaper::letter : SheetPaper::a4;
}

/// The two typefaces that the sheet is set in and embeds: OpenType files with CFF outlines. Passed in,
/// because the page has them in memory already and must not contain them twice.
struct SheetTypefaces {
    std::string_view regular;
    std::string_view semibold;
};

struct SheetOptions {
    SheetFormat format = SheetFormat::html;
    units::UnitSet units = units::metric; ///< of all that is printed
    words::Speech speech{};               ///< its language
    std::optional<SheetPaper> paper;      ///< where absent: usual_paper
    int lures = 1;                        ///< 1 to 500: how many are made from this recipe
    std::optional<double> station_m; ///< between section cards, 2 to 100 mm; where absent 10 mm or 1/2 in
    std::vector<double>
        cure_hours; ///< per coat in order of application, 0 to 1000 h; empty = usual hours (usual_hours())
    std::string
        address; ///< address of the page that opens share texts, without '#'; empty = the share text alone
    SheetTypefaces typefaces;
};

/// Document → the whole file as bytes. The same document and options give the same bytes, natively and in the
/// page: no clock, no locale. Refuses what evaluate() refuses; options outside their limits ("/lures" …); a
/// drawing too tall for the paper; a typeface that cannot be read.
[[nodiscard]] Outcome<std::string> build_sheet(const document::Document& document,
                                               const SheetOptions& options);

/// A number of lures from one recipe of a batch.
struct BatchPart {
    document::Document document;
    int lures = 1;
};

/// Several recipes made together: fills, parts and coats merged, with the waits. 1 to 40 recipes;
/// `options.lures` and `options.cure_hours` are ignored (usual waits are used). Otherwise as build_sheet.
[[nodiscard]] Outcome<std::string> build_batch_sheet(const std::vector<BatchPart>& batch,
                                                     const SheetOptions& options);

/// The pages before they become a file; for tests.
[[nodiscard]] Outcome<sheet::Layout> sheet_layout(const document::Document& document,
                                                  const SheetOptions& options);

} // namespace evenfall
