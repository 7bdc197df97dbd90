#include "cli/commands.hpp"
#include "cli/files.hpp"
#include "look/font_data.hpp"
#include "output.hpp"

#include <memory>

namespace evenfall::cli {
namespace {

std::string_view bytes(const unsigned char* data, unsigned size) {
    return {reinterpret_cast<const char*>(data), size};
}

bool ends_in(const std::string& text, std::string_view end) {
    return text.size() > end.size() && text.compare(text.size() - end.size(), end.size(), end) == 0;
}

/// The format is the file's ending.
Outcome<SheetFormat> format_of(const std::string& path) {
    if (ends_in(path, ".pdf")) return SheetFormat::pdf;
    if (ends_in(path, ".html")) return SheetFormat::html;
    if (ends_in(path, ".svg")) return SheetFormat::svg;
    return Problem{ProblemCode::unknown_name, "-o", ".pdf, .html or .svg",
                   "The sheet's file must end in .pdf, .html or .svg; “" + path + "” does not."};
}

struct Batch {
    std::string preset;
    int lures = 1;
};

struct SheetWords {
    std::string preset;
    std::vector<Batch> batch{{}}; ///< the first is `preset`, the others come with --also
    std::optional<std::string> write_to;
    SheetOptions sheet;
};

Ended run(const SheetWords& o, const Printing& in) {
    if (!o.write_to) {
        return Problem{ProblemCode::missing_key, "-o", ".pdf, .html or .svg",
                       "“sheet” needs a file to write: -o FILE.pdf, .html or .svg."};
    }
    const Outcome<SheetFormat> format = format_of(*o.write_to);
    if (!format.ok()) return format.problems();
    std::vector<BatchPart> batch;
    for (const Batch& one : o.batch) {
        const Outcome<document::Document> document = load(batch.empty() ? o.preset : one.preset);
        if (!document.ok()) return document.problems();
        batch.push_back({*document, one.lures});
    }
    SheetOptions options = o.sheet;
    options.format = *format;
    options.units = in.units;
    options.speech = in.speech;
    options.lures = batch.front().lures;
    options.typefaces = {bytes(shell::look::font_regular, shell::look::font_regular_size),
                         bytes(shell::look::font_semibold, shell::look::font_semibold_size)};
    if (batch.size() > 1 && !options.cure_hours.empty()) {
        return Problem{ProblemCode::unknown_key, "--cure", "",
                       "Waits can be given for one recipe only, not together with --also."};
    }
    const Outcome<std::string> file =
        batch.size() > 1 ? build_batch_sheet(batch, options) : build_sheet(batch.front().document, options);
    if (!file.ok()) return file.problems();
    if (const Problems problems = write_text_file(*o.write_to, *file); !problems.empty()) return problems;
    return done;
}

} // namespace

void sheet(Options& options) {
    const auto o = std::make_shared<SheetWords>();
    options.purpose("the build sheet, true to size, as PDF, HTML or SVG");
    options.preset(o->preset);
    options.text("-o,--output", o->write_to, "FILE", "FILE.pdf, .html or .svg");
    options.add("--paper", "a4|letter", "letter where not given with inches, else A4",
                [o](const std::string& text) -> Problems {
                    if (text != "a4" && text != "letter")
                        return {misuse("--paper", "The paper is a4 or letter, not “" + text + "”.")};
                    o->sheet.paper = text == "letter" ? SheetPaper::letter : SheetPaper::a4;
                    return {};
                });
    options.add("--lures", "N", "how many are made from the recipe", [o](const std::string& text) {
        const Outcome<int> lures = read_whole(text, "--lures");
        if (lures.ok()) o->batch.back().lures = *lures;
        return lures.ok() ? Problems{} : lures.problems();
    });
    options.add("--also", "PRESET",
                "a further recipe: one merged list of the whole batch is written instead;\n"
                "a --lures behind it counts for it",
                [o](const std::string& text) {
                    o->batch.push_back({text});
                    return Problems{};
                });
    options.number("--station", o->sheet.station_m, units::Unit::mm, "LENGTH",
                   "between section cards: 10mm or 1/2in where not given");
    options.read("--cure", read_numbers, o->sheet.cure_hours, "HOURS,HOURS,…",
                 "the wait after each coat, in order of work");
    options.text("--page", o->sheet.address, "ADDRESS",
                 "where the page lies, so that link and code on the sheet open it there");
    options.run([o](const Printing& in) { return run(*o, in); });
}

} // namespace evenfall::cli
