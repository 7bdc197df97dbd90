#pragma once

#include "evenfall.hpp"

#include <cstddef>
#include <string>
#include <utility>

namespace evenfall::cli {

/// The text of a file, or of standard input for "-". Stops one byte past `most_bytes`: the reader refuses by
/// size.
[[nodiscard]] Outcome<std::string> read_text_file(const std::string& path, std::size_t most_bytes);

/// A file that is going to be written. As long as this is held no other run of this program writes it, so
/// that what is read of it in between is still there when it is written. The file need not be there yet.
class HeldFile {
public:
    /// Waits for others who hold it, half a minute at most. "-" is standard output; that, and what is no file
    /// (a pipe), is not held but only written.
    [[nodiscard]] static Outcome<HeldFile> hold(const std::string& path);

    HeldFile(HeldFile&& other) noexcept;
    HeldFile(const HeldFile&) = delete;
    HeldFile& operator=(const HeldFile&) = delete;
    ~HeldFile();

    /// Writes the whole file, once. At every moment the old file is there or the new one; without a problem
    /// the new one is on the disk, with the mode and the owner of the old one, and a symbolic link goes on
    /// pointing at it. A second hard link keeps the old text.
    [[nodiscard]] Problems write(const std::string& text);

private:
    HeldFile(std::string path, std::string target) : path_(std::move(path)), target_(std::move(target)) {}

    std::string path_;   ///< as it was named
    std::string target_; ///< behind symbolic links
    std::string fresh_;  ///< the new file while it is written; locked, and empty until then
    int handle_ = -1;    ///< of the new file; −1 where nothing is held
};

/// HeldFile::hold and write in one, for what is not made from the file itself.
[[nodiscard]] Problems write_text_file(const std::string& path, const std::string& text);

} // namespace evenfall::cli
