#include "base/version.hpp"
#include "cli/commands.hpp"
#include "cli/files.hpp"

#include <cstdio>

namespace evenfall::cli {

void print(const std::string& text) {
    std::fwrite(text.data(), 1, text.size(), stdout);
}

int report(const Problems& problems) {
    for (const Problem& problem : problems) {
        const std::string where = problem.path.empty() ? std::string() : "  [" + problem.path + ']';
        std::fprintf(stderr, "evenfall: %s%s\n", problem.sentence.c_str(), where.c_str());
    }
    return bad_input;
}

Outcome<document::Document> load(const std::string& path) {
    const Outcome<std::string> text = read_text_file(path, document::max_document_bytes);
    if (!text.ok()) return text.problems();
    return read_document(*text);
}

Problems keep(const std::string& path, const document::Document& document) {
    const std::string text = write_document(document);
    if (const auto again = read_document(text); !again.ok()) return again.problems();
    return write_text_file(path, text);
}

namespace {

int run(const std::vector<std::string>& words) {
    const Outcome<Arguments> arguments = read_arguments(words);
    if (!arguments.ok()) return report(arguments.problems());
    switch (arguments->command) {
    case Command::weigh:
        return weigh(*arguments);
    case Command::lead:
        return lead(*arguments);
    case Command::fall:
        return fall(*arguments);
    case Command::log:
        return log(*arguments);
    case Command::chance:
        return chance(*arguments);
    case Command::joints:
        return joints(*arguments);
    case Command::link:
        return link(*arguments);
    case Command::open:
        return open(*arguments);
    case Command::sheet:
        return sheet(*arguments);
    case Command::woods:
        return woods(*arguments);
    case Command::metals:
        return metals(*arguments);
    case Command::trace:
        return trace(*arguments);
    case Command::stock:
        return stock(*arguments);
    case Command::glue:
        return glue(*arguments);
    case Command::block:
        return block(*arguments);
    case Command::resin:
        return resin(*arguments);
    case Command::tail:
        return tail(*arguments);
    case Command::version:
        print("evenfall " + std::string(version()) + ", documents of version " +
              std::to_string(document::document_version) + '\n');
        return done;
    case Command::help:
        break;
    }
    print(usage_text());
    return done;
}

} // namespace
} // namespace evenfall::cli

int main(int count, char** words) {
    const int status =
        evenfall::cli::run(std::vector<std::string>(words + (count > 0 ? 1 : 0), words + count));
    const bool told = std::fflush(stdout) == 0 && std::ferror(stdout) == 0;
    if (!told)
        return evenfall::cli::report({{evenfall::ProblemCode::too_large, "", "",
                                       "Not everything could be printed: is there room where it goes?"}});
    return status;
}
