#pragma once

// The build sheet: paper for the bench, true to size.

#include "answers/answers.hpp"
#include "ledger/fold.hpp"
#include "output/sheet/model.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace evenfall {

enum class SheetFormat {
    html,
    svg,
    pdf,
    html_leaves, ///< the pages of the HTML alone, for a page that has their faces and rules
                 ///< (sheet/writers.hpp)
};
enum class SheetPaper { a4, letter };

/// The two faces that the sheet is set in and carries within itself: OpenType files with CFF outlines. Handed
/// in, since the page has them in its memory already and must not carry them twice.
struct SheetTypefaces {
    std::string_view regular;
    std::string_view semibold;
};

struct SheetOptions {
    SheetFormat format = SheetFormat::html;
    SheetPaper paper = SheetPaper::a4;
    int lures = 1;            ///< 1 to 500: how many are made from this recipe
    double station_m = 0.010; ///< between section cards, 2 to 100 mm
    std::vector<double>
        cure_hours; ///< per coat in order of work, 0 to 1000 h; empty = usual hours (coat_hours.hpp)
    std::string
        address; ///< of the page that opens share texts, without '#'; empty = the share text stands alone
    SheetTypefaces typefaces;
};

/// Document → the whole file as bytes. The same bytes for the same document and options, native and page: no
/// clock, no locale. Refuses what evaluate() refuses; options off their limits ("/lures" …); a drawing too
/// tall for the paper; a typeface that cannot be read.
[[nodiscard]] Outcome<std::string> build_sheet(const document::Document& document, const SheetOptions& options);

/// Some lures from one recipe of a batch.
struct BatchPart {
    document::Document document;
    int lures = 1;
};

/// Several recipes made together: fills, parts and coats merged, with the waits. 1 to 40 recipes;
/// `options.lures` and `options.cure_hours` are not read (the usual waits are). Otherwise as build_sheet.
[[nodiscard]] Outcome<std::string> build_batch_sheet(const std::vector<BatchPart>& batch,
                                                     const SheetOptions& options);

/// The pages before they become a file: what the tests measure.
[[nodiscard]] Outcome<sheet::Layout> sheet_layout(const document::Document& document,
                                                  const SheetOptions& options);

} // namespace evenfall
