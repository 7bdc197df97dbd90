#pragma once

#include <stddef.h>

// The module that web/setup/split_code.py has sorted into opcodes and all else, put back in order; null when they are damaged or
// there is no memory. *made becomes its size. Memory comes from room (unpack.c).
unsigned char* join(const unsigned char* codes, size_t code_count, const unsigned char* sorted, size_t n, size_t* made);
