#pragma once

#include <stddef.h>

// The module that web/setup/split_code.py has sorted into `sorted`, n bytes, put back in order; null when they are damaged or
// there is no memory. *made becomes its size. Memory comes from room (unpack.c).
unsigned char* join(const unsigned char* sorted, size_t n, size_t* made);
