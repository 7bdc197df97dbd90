// Unpacks a WebAssembly module that the build has sorted (join.h) and packed: some streams by PPMd (streams.h), all else as LZMA
// in the plain container (13 bytes of head: properties, size; then the stream). At the front stands, in four bytes each, how
// long each PPMd stream is, how many bytes it is packed into, and how many bytes of the past its model looks at. The page's
// compiled code comes that way, a third smaller than gzipped. The decoders are those of the LZMA software development kit,
// compiled to a few thousand bytes of WebAssembly that stand inside the page's script.
//
//   room(n)          n bytes of memory to put the packed bytes into; null when there are none
//   unpack(data, n)  the module's bytes, or null when the n packed ones are cut or damaged
//   size()           how many bytes unpack has made
//
// One packing is unpacked in one life of this module, so nothing is given back.
#include <emscripten/emscripten.h>
#include <stddef.h>
#include <stdint.h>

#include "LzmaDec.h"
#include "Ppmd7.h"
#include "join.h"

enum { stream_bytes = 12, front_bytes = stream_bytes * coded_count, head_bytes = 13, largest_bytes = 64 << 20 };

static size_t made_bytes;

// Memory is handed out from the end of what the module starts with, and never taken back.
extern unsigned char __heap_base;
static uintptr_t next_free;

EMSCRIPTEN_KEEPALIVE unsigned char* room(size_t n) {
    enum { page = 1 << 16 };
    if (next_free == 0) next_free = (uintptr_t)&__heap_base + 15 & ~(uintptr_t)15;
    const uintptr_t at = next_free, end = at + n + 15 & ~(uintptr_t)15;
    const size_t held = __builtin_wasm_memory_size(0) * page;
    if (end < at) return NULL;
    if (end > held && __builtin_wasm_memory_grow(0, (end - held + page - 1) / page) == SIZE_MAX) return NULL;
    next_free = end;
    return (unsigned char*)at;
}

EMSCRIPTEN_KEEPALIVE size_t size(void) { return made_bytes; }

static void* take(void* from, size_t n) { (void)from; return room(n); }
static void give(void* from, void* data) { (void)from; (void)data; }

static uint32_t number_at(const unsigned char* at) {
    return at[0] | (uint32_t)at[1] << 8 | (uint32_t)at[2] << 16 | (uint32_t)at[3] << 24;
}

typedef struct {
    IByteIn in;
    const unsigned char* at;
    const unsigned char* end;
} Source;

// Behind the end come zeros; what they decode to is found out by whoever uses it.
static Byte next_byte(void* source) {
    Source* s = source;
    return s->at < s->end ? *s->at++ : 0;
}

static int unpack_stream(CPpmd7* model, unsigned order, const unsigned char* packed, size_t n, Run* run) {
    unsigned char* out = room(run->count);
    if (!out) return 0;
    run->at = out;
    Ppmd7_Init(model, order);
    Source source = {{next_byte}, packed, packed + n};
    CPpmd7z_RangeDec coder;
    Ppmd7z_RangeDec_CreateVTable(&coder);
    coder.Stream = &source.in;
    if (!Ppmd7z_RangeDec_Init(&coder)) return 0;
    for (size_t k = 0; k < run->count; ++k) {
        const int symbol = Ppmd7_DecodeSymbol(model, &coder.p);
        if (symbol < 0) return 0;
        out[k] = (unsigned char)symbol;
    }
    return 1;
}

static unsigned char* unpack_rest(const unsigned char* packed, size_t n, size_t* made) {
    if (n <= head_bytes) return NULL;
    // Eight bytes of size; what this page carries fits in the lower four.
    const size_t length = number_at(packed + LZMA_PROPS_SIZE);
    if (length == 0 || length > largest_bytes) return NULL;
    unsigned char* out = room(length);
    if (!out) return NULL;
    ISzAlloc memory = {take, give};
    ELzmaStatus status;
    SizeT written = length, taken = n - head_bytes;
    const SRes result = LzmaDecode(out, &written, packed + head_bytes, &taken, packed, LZMA_PROPS_SIZE, LZMA_FINISH_ANY,
                                   &status, &memory);
    if (result != SZ_OK || written != length) return NULL;
    *made = written;
    return out;
}

EMSCRIPTEN_KEEPALIVE unsigned char* unpack(const unsigned char* packed, size_t n) {
    if (n <= front_bytes) return NULL;
    static CPpmd7 model;
    ISzAlloc memory = {take, give};
    Ppmd7_Construct(&model);
    if (!Ppmd7_Alloc(&model, model_memory, &memory)) return NULL;
    Run coded[coded_count];
    const unsigned char* at = packed + front_bytes;
    size_t left = n - front_bytes;
    for (int k = 0; k < coded_count; ++k) {
        const unsigned char* front = packed + stream_bytes * k;
        coded[k].count = number_at(front);
        const size_t bytes = number_at(front + 4), order = number_at(front + 8);
        if (coded[k].count > largest_bytes || bytes > left || order < least_order || order > most_order ||
            !unpack_stream(&model, order, at, bytes, &coded[k])) return NULL;
        at += bytes;
        left -= bytes;
    }
    size_t rest_bytes = 0;
    const unsigned char* rest = unpack_rest(at, left, &rest_bytes);
    return rest ? join(coded, rest, rest_bytes, &made_bytes) : NULL;
}
