// Unpacks a WebAssembly module that the build has sorted (join.h) and packed in the plain LZMA container (13 bytes of head:
// properties, size; then the stream). The page's compiled code comes that way, a quarter smaller than gzipped; the decoder is
// Igor Pavlov's own, of the LZMA software development kit. Compiled to a few thousand bytes of WebAssembly that stand inside
// the page's script.
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
#include "join.h"

enum { head_bytes = 13, largest_bytes = 64 << 20 };

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

EMSCRIPTEN_KEEPALIVE unsigned char* unpack(const unsigned char* packed, size_t n) {
    if (n <= head_bytes) return NULL;
    // Eight bytes of size, lowest first; what this page carries fits in four.
    size_t length = 0;
    for (int at = 3; at >= 0; --at) length = length << 8 | packed[LZMA_PROPS_SIZE + at];
    if (length == 0 || length > largest_bytes) return NULL;
    unsigned char* out = room(length);
    if (!out) return NULL;
    ISzAlloc memory = {take, give};
    ELzmaStatus status;
    SizeT written = length, taken = n - head_bytes;
    const SRes result = LzmaDecode(out, &written, packed + head_bytes, &taken, packed, LZMA_PROPS_SIZE, LZMA_FINISH_ANY,
                                   &status, &memory);
    if (result != SZ_OK || written != length) return NULL;
    return join(out, length, &made_bytes);
}
