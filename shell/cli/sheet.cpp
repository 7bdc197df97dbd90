#include "output/sheet/sheet.hpp"
#include "cli/commands.hpp"
#include "cli/files.hpp"
#include "look/font_data.hpp"

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

} // namespace

int sheet(const Arguments& arguments) {
    if (!arguments.write_to) {
        return report({{ProblemCode::missing_key, "-o", ".pdf, .html or .svg",
                        "“sheet” needs a file to write: -o FILE.pdf, .html or .svg."}});
    }
    const Outcome<SheetFormat> format = format_of(*arguments.write_to);
    if (!format.ok()) return report(format.problems());
    const Outcome<document::Document> document = load(arguments.operand);
    if (!document.ok()) return report(document.problems());
    SheetOptions options;
    options.format = *format;
    options.paper = arguments.letter ? SheetPaper::letter : SheetPaper::a4;
    options.lures = arguments.lures;
    if (arguments.station_m) options.station_m = *arguments.station_m;
    options.cure_hours = arguments.cure_hours;
    options.address = arguments.page;
    options.typefaces = {bytes(shell::look::font_regular, shell::look::font_regular_size),
                         bytes(shell::look::font_semibold, shell::look::font_semibold_size)};
    std::vector<BatchPart> batch{{*document, arguments.lures}};
    for (const auto& [path, lures] : arguments.also) {
        const Outcome<document::Document> further = load(path);
        if (!further.ok()) return report(further.problems());
        batch.push_back({*further, lures});
    }
    if (batch.size() > 1 && !arguments.cure_hours.empty()) {
        return report({{ProblemCode::unknown_key, "--cure", "",
                        "Waits can be given for one recipe only, not together with --also."}});
    }
    const Outcome<std::string> file =
        batch.size() > 1 ? build_batch_sheet(batch, options) : build_sheet(*document, options);
    if (!file.ok()) return report(file.problems());
    if (const Problems problems = write_text_file(*arguments.write_to, *file); !problems.empty())
        return report(problems);
    return done;
}

} // namespace evenfall::cli
