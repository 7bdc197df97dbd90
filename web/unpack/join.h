#pragma once

#include <stddef.h>

#include "unpack/streams.h"

// Bytes of one stream.
typedef struct {
    const unsigned char* at;
    size_t count;
} Run;

// The module that web/setup/split_code.py has sorted into coded streams and all else, put back in order; null when they are
// damaged or there is no memory. *made becomes its size. Memory comes from room (unpack.c).
unsigned char* join(const Run coded[coded_count], const unsigned char* rest, size_t n, size_t* made);
