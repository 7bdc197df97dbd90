#include "cli/commands.hpp"
#include "cli/files.hpp"
#include "evenfall.hpp"
#include "output.hpp"

#include <cstdio>
#include <memory>

namespace evenfall::cli {
namespace {

/// A drawing of the code with its quiet border, half a millimetre a square.
std::string drawing_of(const SquareCode& code) {
    constexpr int border = 4; // ISO/IEC 18004:2015 §6.3.8, from memory
    const std::string side = std::to_string(code.side + 2 * border);
    const std::string edge_mm =
        std::to_string((code.side + 2 * border) / 2) + (code.side % 2 != 0 ? ".5mm" : "mm");
    std::string text = "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + edge_mm + "\" height=\"" +
                       edge_mm + "\" viewBox=\"0 0 ";
    text += side + " " + side + "\"><rect width=\"" + side + "\" height=\"" + side +
            "\" fill=\"#fff\"/><path d=\"";
    text += path_of(code, border) + "\" fill=\"#000\"/></svg>\n";
    return text;
}

struct LinkOptions {
    std::string preset, page;
    std::optional<std::string> code_to;
};

/// What a code of the lure holds: the page's address with the share text behind "#", or the share text alone.
std::string text_for_code(const std::string& link, const std::string& page) {
    return page.empty() ? link : page + '#' + link;
}

int run(const LinkOptions& o) {
    // Messengers cut or break longer addresses; the figure is common practice, no source.
    constexpr std::size_t comfortable_length = 1700;
    const Outcome<document::Document> document = load(o.preset);
    if (!document.ok()) return report(document.problems());
    const std::string text = write_link(*document);
    if (text.size() > document::max_link_bytes) {
        return report({{ProblemCode::too_large, "", "32 kB",
                        "A link of this lure would have " + std::to_string(text.size()) +
                            " characters, and none over 32 kB opens. Send the file instead."}});
    }
    if (o.code_to) {
        const Outcome<SquareCode> code = square_code(text_for_code(text, o.page));
        if (!code.ok()) return report(code.problems());
        if (const Problems problems = write_text_file(*o.code_to, drawing_of(*code)); !problems.empty())
            return report(problems);
        if (*o.code_to == "-") return done;
    }
    print(text + '\n');
    if (text.size() > comfortable_length) {
        std::fprintf(stderr,
                     "evenfall: This link has %zu characters; some messengers cut so long a one. Send the "
                     "file instead.\n",
                     text.size());
    }
    return done;
}

} // namespace

void link(Options& options) {
    const auto o =
        declare<LinkOptions>(options, "the share text of a preset; goes behind # in the page's address", run);
    options.text("--code", o->code_to, "FILE.svg", "and as a square code for a phone's camera");
    options.text("--page", o->page, "ADDRESS", "where the page lies, so that the code opens it there");
}

void open(Options& options) {
    const auto link = std::make_shared<std::string>();
    options.purpose("the preset in a share text or address");
    options.word("LINK", *link, "a link");
    options.run([link] {
        const Outcome<document::Document> document = read_link(*link);
        if (!document.ok()) return report(document.problems());
        print(write_document(*document));
        return done;
    });
}

} // namespace evenfall::cli
