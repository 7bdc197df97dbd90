#include "cli/commands.hpp"

#include <cstdio>

namespace evenfall::cli {

int link(const Arguments& arguments) {
    // Messengers cut or break longer addresses; the figure is common practice, no source.
    constexpr std::size_t comfortable_length = 1700;
    const Outcome<preset::Document> document = load(arguments.operand);
    if (!document.ok()) return report(document.problems());
    const std::string text = write_link(*document);
    print(text + '\n');
    if (text.size() > comfortable_length) {
        std::fprintf(stderr, "evenfall: This link has %zu characters; some messengers cut so long a one. Send the file instead.\n", text.size());
    }
    return done;
}

int open(const Arguments& arguments) {
    const Outcome<preset::Document> document = read_link(arguments.operand);
    if (!document.ok()) return report(document.problems());
    print(write_document(*document));
    return done;
}

}  // namespace evenfall::cli
