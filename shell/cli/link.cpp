#include "cli/commands.hpp"
#include "cli/files.hpp"
#include "evenfall.hpp"
#include "output.hpp"

#include <cstdio>
#include <memory>

namespace evenfall::cli {
namespace {

/// A drawing of the code with its quiet zone, as large as it is printed on a sheet.
std::string drawing_of(const SquareCode& code) {
    const std::string side = std::to_string(whole_side(code));
    const std::string edge =
        units::number_text(printed_square_mm(code) * whole_side(code), units::Unit::one, 1) + "mm";
    std::string text = "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + edge + "\" height=\"" + edge +
                       "\" viewBox=\"0 0 ";
    text += side + " " + side + "\"><rect width=\"" + side + "\" height=\"" + side +
            "\" fill=\"#fff\"/><path d=\"";
    text += path_of(code) + "\" fill=\"#000\"/></svg>\n";
    return text;
}

struct LinkOptions {
    std::string preset, page;
    std::optional<std::string> code_to;
    bool without_log = false;
};

/// How long the address is, whether a code holds it, and whether messengers do.
void tell_size(std::size_t length, const Outcome<SquareCode>& code, const Printing& in) {
    // Messengers cut or break longer addresses; the figure is common practice, no source.
    constexpr std::size_t comfortable_length = 1700;
    std::string told = std::to_string(length) + " characters; ";
    if (code.ok()) {
        const std::string side = std::to_string(code->side);
        told += "a square code of " + side + " by " + side + " holds them.";
    } else {
        told += "no square code holds them.";
    }
    if (length > comfortable_length) told += " Some messengers cut so long a link; send the file instead.";
    std::fprintf(stderr, "evenfall: %s\n", in.speech.said(told).c_str());
}

Ended run(const LinkOptions& o, const Printing& in) {
    Outcome<document::Document> document = load(o.preset);
    if (!document.ok()) return document.problems();
    if (o.without_log) document->log.clear();
    const std::string text = write_link(*document);
    if (text.size() > document::max_link_bytes) {
        return Problem{ProblemCode::too_large, "", "32 kB",
                       "A link of this lure would have " + std::to_string(text.size()) +
                           " characters, and none over 32 kB opens. Send the file instead."};
    }
    // What a code holds: the page's address with the share text behind "#", or the share text alone.
    const std::string address = o.page.empty() ? text : o.page + '#' + text;
    const Outcome<SquareCode> code = square_code(address);
    if (o.code_to) {
        if (!code.ok()) return code.problems();
        if (const Problems problems = write_text_file(*o.code_to, drawing_of(*code)); !problems.empty())
            return problems;
    }
    if (o.code_to != "-") print(text + '\n');
    tell_size(address.size(), code, in);
    return done;
}

} // namespace

void link(Options& options) {
    const auto o =
        declare<LinkOptions>(options, "the share text of a preset; goes behind # in the page's address", run);
    options.text("--code", o->code_to, "FILE.svg", "and as a square code for a phone's camera");
    options.text("--page", o->page, "ADDRESS", "where the page lies, so that the code opens it there");
    options.flag("--without-log", o->without_log, "leave the bench log out; what it taught stays");
    options.remark("Says besides how many characters it has and whether a square code holds them.");
}

void open(Options& options) {
    const auto link = std::make_shared<std::string>();
    options.purpose("the preset in a share text or address");
    options.word("LINK", *link, "a link");
    options.run([link](const Printing&) -> Ended {
        const Outcome<document::Document> document = read_link(*link);
        if (!document.ok()) return document.problems();
        print(write_document(*document));
        return done;
    });
}

} // namespace evenfall::cli
