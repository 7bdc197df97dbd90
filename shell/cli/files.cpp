#include "cli/files.hpp"

#include <array>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <fcntl.h>
#include <string_view>
#include <sys/stat.h>
#include <unistd.h>
#include <utility>

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

/// "lure.json" → ".lure.json.evenfall-writing" in the same folder. Whoever has it locked may write the file.
std::string beside(const std::string& target) {
    const std::size_t name = target.rfind('/') + 1;
    return target.substr(0, name) + '.' + target.substr(name) + ".evenfall-writing";
}

/// The lock goes with the process, however it ends. Not flock: this one is known to network disks, too.
bool lock(int handle) {
    struct flock whole {};
    whole.l_type = F_WRLCK;
    whole.l_whence = SEEK_SET;
    return ::fcntl(handle, F_SETLK, &whole) == 0;
}

/// Whether the open file still has this name.
bool is_named(int handle, const std::string& name) {
    struct stat opened {
    }, named{};
    return ::fstat(handle, &opened) == 0 && ::lstat(name.c_str(), &named) == 0 &&
           opened.st_dev == named.st_dev && opened.st_ino == named.st_ino;
}

/// Makes the file of this name and locks it. Below 0 where that cannot be; errno is EBUSY then where somebody
/// else had it for half a minute.
int make_locked(const std::string& name, mode_t mode) {
    constexpr int most_tries = 6000;
    constexpr useconds_t wait_us = 5000;
    for (int tries = 0; tries < most_tries; ++tries) {
        int handle = ::open(name.c_str(), O_RDWR | O_CREAT | O_EXCL, mode);
        const bool is_ours = handle >= 0;
        if (!is_ours && errno != EEXIST) return -1;
        if (!is_ours) handle = ::open(name.c_str(), O_RDWR);
        if (handle < 0 && errno == ENOENT) continue; // whoever had it has just finished
        if (handle < 0) return -1;
        if (lock(handle)) {
            const bool is_still = is_named(handle, name);
            if (is_ours && is_still) return handle;
            // Nobody has it locked: its writer was killed.
            if (is_still) ::unlink(name.c_str());
            ::close(handle);
            continue;
        }
        const int why = errno;
        ::close(handle);
        if (why != EAGAIN && why != EACCES) {
            if (is_ours) ::unlink(name.c_str());
            errno = why;
            return -1;
        }
        ::usleep(wait_us);
    }
    errno = EBUSY;
    return -1;
}

bool write_all(int handle, std::string_view text) {
    while (!text.empty()) {
        const ssize_t written = ::write(handle, text.data(), text.size());
        if (written < 0 && errno == EINTR) continue;
        if (written < 0) return false;
        text.remove_prefix(static_cast<std::size_t>(written));
    }
    return true;
}

/// Gives the new file the owner and the mode of the old one.
bool take_after(int handle, const struct stat& old) {
    struct stat fresh {};
    if (::fstat(handle, &fresh) != 0) return false;
    const bool is_ours = fresh.st_uid == old.st_uid && fresh.st_gid == old.st_gid;
    return (is_ours || ::fchown(handle, old.st_uid, old.st_gid) == 0) &&
           ::fchmod(handle, old.st_mode & 07777) == 0;
}

/// A new name is on the disk when its folder is.
bool sync_folder(const std::string& target) {
    const std::size_t name = target.rfind('/') + 1;
    const int folder = ::open(name == 0 ? "." : target.substr(0, name).c_str(), O_RDONLY);
    if (folder < 0) return errno == EACCES; // one may write into it and not look: it is left to the disk
    const bool synced = ::fsync(folder) == 0 || errno == EINVAL; // a disk that knows nothing of that
    ::close(folder);
    return synced;
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

Outcome<HeldFile> HeldFile::hold(const std::string& path) {
    HeldFile held(path, path == "-" ? path : behind_links(path));
    if (path == "-") return held;
    struct stat old {};
    const bool is_there = ::stat(held.target_.c_str(), &old) == 0;
    if (is_there && ::access(held.target_.c_str(), W_OK) != 0) return file_problem(path, "written");
    if (is_there && !S_ISREG(old.st_mode)) return held;
    held.fresh_ = beside(held.target_);
    // Until it has the old one's mode nobody else may look into it; without an old one it is as the shell has
    // new files.
    held.handle_ = make_locked(held.fresh_, is_there ? 0600 : 0666);
    if (held.handle_ >= 0) return held;
    if (errno != EBUSY) return file_problem(path, "written");
    return Problem{
        ProblemCode::cannot_be_met, path, "",
        "The file “" + path +
            "” has been in the hands of another evenfall for half a minute. Nothing was changed: try again."};
}

HeldFile::HeldFile(HeldFile&& other) noexcept
    : path_(std::move(other.path_)), target_(std::move(other.target_)), fresh_(std::move(other.fresh_)),
      handle_(std::exchange(other.handle_, -1)) {}

HeldFile::~HeldFile() {
    if (handle_ < 0) return;
    ::unlink(fresh_.c_str());
    ::close(handle_);
}

Problems HeldFile::write(const std::string& text) {
    if (path_ == "-") {
        std::fwrite(text.data(), 1, text.size(), stdout);
        return {};
    }
    if (handle_ < 0) {
        const int handle = ::open(target_.c_str(), O_WRONLY);
        if (handle < 0) return {file_problem(path_, "written")};
        const bool written = write_all(handle, text);
        return ::close(handle) == 0 && written ? Problems{} : Problems{file_problem(path_, "written")};
    }
    struct stat old {};
    const bool is_there = ::stat(target_.c_str(), &old) == 0;
    if (is_there && !take_after(handle_, old)) return {file_problem(path_, "given its owner again")};
    if (!write_all(handle_, text) || ::fsync(handle_) != 0 || ::rename(fresh_.c_str(), target_.c_str()) != 0)
        return {file_problem(path_, "written")};
    ::close(std::exchange(handle_, -1));
    return sync_folder(target_) ? Problems{} : Problems{file_problem(path_, "made to last")};
}

Problems write_text_file(const std::string& path, const std::string& text) {
    Outcome<HeldFile> file = HeldFile::hold(path);
    return file.ok() ? file->write(text) : file.problems();
}

} // namespace evenfall::cli
