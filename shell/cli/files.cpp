#include "cli/files.hpp"

#include <array>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace evenfall::cli {
namespace {

Problem file_problem(const std::string& path, const char* cannot) {
    return {ProblemCode::unknown_name, path, "",
            "The file “" + path + "” cannot be " + cannot + ": " + std::strerror(errno) + '.'};
}

/// The file that a chain of symbolic links ends at, whether it is there or not.
std::string behind_links(std::string path) {
    constexpr int most_links = 40;
    for (int i = 0; i < most_links; ++i) {
        std::array<char, 4096> to{};
        const ssize_t length = ::readlink(path.c_str(), to.data(), to.size());
        if (length < 0) break; // no link
        const std::string target(to.data(), static_cast<std::size_t>(length));
        const std::size_t folder = target[0] == '/' ? std::string::npos : path.rfind('/');
        path = folder == std::string::npos ? target : path.substr(0, folder + 1) + target;
    }
    return path;
}

/// Opens a file beside `target` that nobody else has; its name goes into `fresh`. Below 0 where there can be
/// none.
int open_beside(const std::string& target, mode_t mode, std::string& fresh) {
    constexpr int most_tries = 1000;
    for (int i = 0; i < most_tries; ++i) {
        fresh = target + ".new" + std::to_string(i);
        const int handle = ::open(fresh.c_str(), O_WRONLY | O_CREAT | O_EXCL, mode);
        if (handle >= 0 || errno != EEXIST) return handle;
    }
    return -1;
}

} // namespace

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
    const std::string target = behind_links(path);
    struct stat old {};
    const bool is_there = ::stat(target.c_str(), &old) == 0;
    // What is no file, a pipe for one, has nothing that could be lost, and stays what it is.
    const bool is_file = !is_there || S_ISREG(old.st_mode);
    if (is_there && ::access(target.c_str(), W_OK) != 0) return {file_problem(path, "written")};
    std::string fresh;
    // Until it has the old one's mode nobody else may look into it; without an old one it is as the shell has
    // new files.
    const int handle =
        is_file ? open_beside(target, is_there ? 0600 : 0666, fresh) : ::open(target.c_str(), O_WRONLY);
    std::FILE* file = handle < 0 ? nullptr : ::fdopen(handle, "wb");
    if (file == nullptr) return {file_problem(path, "written")};
    const bool written = std::fwrite(text.data(), 1, text.size(), file) == text.size();
    // Where a disk knows nothing of that, the file is kept all the same.
    if (is_file && is_there) static_cast<void>(::fchmod(handle, old.st_mode & 07777));
    const bool closed = std::fclose(file) == 0;
    if (written && closed && (!is_file || std::rename(fresh.c_str(), target.c_str()) == 0)) return {};
    Problem problem = file_problem(path, "written");
    if (is_file) std::remove(fresh.c_str());
    return {problem};
}

} // namespace evenfall::cli
