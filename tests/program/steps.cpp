// Laid before the C library by files_test.sh: counts the calls that a file is written with, from the lock on,
// and at the one numbered EVENFALL_STEP ends the process (EVENFALL_HOW=kill) or refuses it as a full disk
// would (refuse). EVENFALL_STEP_REACHED names a file that then tells the test that there was such a step.

#include <cerrno>
#include <csignal>
#include <cstdarg>
#include <cstdlib>
#include <cstring>
#include <dlfcn.h>
#include <fcntl.h>
#include <sys/types.h>
#include <unistd.h>

namespace {

int steps = -1; // −1: no lock yet

template <class F>
F original(const char* name, F) {
    return reinterpret_cast<F>(dlsym(RTLD_NEXT, name));
}

/// True where this call is to be refused.
bool stops_here() {
    const char* step = std::getenv("EVENFALL_STEP");
    if (steps < 0 || step == nullptr || ++steps != std::atoi(step)) return false;
    if (const char* reached = std::getenv("EVENFALL_STEP_REACHED")) {
        const int handle = original("creat", &creat)(reached, 0600);
        if (handle >= 0) original("close", &close)(handle);
    }
    if (std::strcmp(std::getenv("EVENFALL_HOW"), "kill") == 0) raise(SIGKILL);
    errno = ENOSPC;
    return true;
}

} // namespace

extern "C" {

int fcntl(int handle, int what, ...) {
    va_list more;
    va_start(more, what);
    void* given = va_arg(more, void*);
    va_end(more);
    if (what == F_SETLK && steps < 0) steps = 0;
    if (what == F_SETLK && stops_here()) return -1;
    return reinterpret_cast<int (*)(int, int, ...)>(dlsym(RTLD_NEXT, "fcntl"))(handle, what, given);
}
int fcntl64(int handle, int what, ...) {
    va_list more;
    va_start(more, what);
    void* given = va_arg(more, void*);
    va_end(more);
    return fcntl(handle, what, given);
}

ssize_t write(int handle, const void* bytes, size_t count) {
    return stops_here() ? -1 : original("write", &write)(handle, bytes, count);
}
int fsync(int handle) {
    return stops_here() ? -1 : original("fsync", &fsync)(handle);
}
int fchmod(int handle, mode_t mode) {
    return stops_here() ? -1 : original("fchmod", &fchmod)(handle, mode);
}
int rename(const char* from, const char* to) {
    return stops_here() ? -1 : original("rename", &rename)(from, to);
}
int unlink(const char* name) {
    const bool refused = stops_here();
    // A leaving that cannot be removed is no fault of the writer's.
    return original("unlink", &unlink)(name) == 0 && !refused ? 0 : -1;
}
int close(int handle) {
    static_cast<void>(stops_here()); // a refused close has closed all the same
    return original("close", &close)(handle);
}

} // extern "C"
