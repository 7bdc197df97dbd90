#include "cli/files.hpp"

#include <array>
#include <cerrno>
#include <cstdio>
#include <cstring>

namespace evenfall::cli {
namespace {

Problem file_problem(const std::string& path, const char* cannot) {
    return {ProblemCode::unknown_name, path, "",
            "The file “" + path + "” cannot be " + cannot + ": " + std::strerror(errno) + '.'};
}

}  // namespace

Outcome<std::string> read_text_file(const std::string& path, std::size_t most_bytes) {
    std::FILE* file = path == "-" ? stdin : std::fopen(path.c_str(), "rb");
    if (file == nullptr) return file_problem(path, "opened");
    std::string text;
    std::array<char, 16 * 1024> chunk{};
    while (text.size() <= most_bytes) {
        const std::size_t got = std::fread(chunk.data(), 1, chunk.size(), file);
        if (got == 0) break;
        text.append(chunk.data(), got);
    }
    const bool failed = std::ferror(file) != 0;
    if (failed) {
        Problem problem = file_problem(path, "read");
        if (file != stdin) std::fclose(file);
        return problem;
    }
    if (file != stdin) std::fclose(file);
    return text;
}

Problems write_text_file(const std::string& path, const std::string& text) {
    if (path == "-") {
        std::fwrite(text.data(), 1, text.size(), stdout);
        return {};
    }
    const std::string fresh = path + ".new";
    std::FILE* file = std::fopen(fresh.c_str(), "wb");
    if (file == nullptr) return {file_problem(path, "written")};
    const bool written = std::fwrite(text.data(), 1, text.size(), file) == text.size();
    const bool closed = std::fclose(file) == 0;
    if (written && closed && std::rename(fresh.c_str(), path.c_str()) == 0) return {};
    Problem problem = file_problem(path, "written");
    std::remove(fresh.c_str());
    return {problem};
}

}  // namespace evenfall::cli
