#pragma once

// The typeface's bytes, written into a source file by web/setup/subset_font.py at build time.

namespace evenfall::shell::look {

extern const unsigned char font_regular[];
extern const unsigned font_regular_size;
extern const unsigned char font_semibold[];
extern const unsigned font_semibold_size;

} // namespace evenfall::shell::look
