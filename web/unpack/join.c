// Puts a module's code back in order; what is in which stream stands in web/setup/split_code.py. A damaged stream may be read
// beyond its end, within this module's own memory: what comes of it no browser takes for a module.
#include "join.h"

#include <stdint.h>
#include <string.h>

unsigned char* room(size_t n);

enum { head_numbers = 3 + stream_count - coded_count, head_bytes = 4 * head_numbers, largest_module = 64 << 20,
       largest_size_bytes = 5, longest_instruction = 16 };

static const unsigned char* from[stream_count];
static const unsigned char* code_end;
static unsigned char* out;
static unsigned char* out_end;

static void copy(enum Stream stream, size_t n) {
    while (n-- > 0) *out++ = *from[stream]++;
}

// A number in LEB128; its value is wanted by few.
static uint32_t copy_number(enum Stream stream) {
    uint32_t value = 0;
    for (int shift = 0;; shift += 7) {
        const unsigned char byte = *from[stream]++;
        *out++ = byte;
        if (shift < 32) value |= (uint32_t)(byte & 0x7F) << shift;
        if (byte < 0x80) return value;
    }
}

static void put_number(size_t value) {
    for (; value > 0x7F; value >>= 7) *out++ = (unsigned char)((value & 0x7F) | 0x80);
    *out++ = (unsigned char)value;
}

// The locals of the function, the last used first; those not used yet stand behind them by their numbers, and are put down when
// one of them is asked for. What asks for more of them than browsers take is damaged.
static uint32_t latest[50000];
static size_t known_locals;

static void put_local(enum Stream stream) {
    size_t rank = 0;
    for (int shift = 0;; shift += 7) {
        const unsigned char byte = *from[stream]++;
        if (shift < 21) rank |= (size_t)(byte & 0x7F) << shift;
        if (byte < 0x80) break;
    }
    if (rank >= sizeof latest / sizeof *latest) rank = 0;
    for (; known_locals <= rank; ++known_locals) latest[known_locals] = (uint32_t)known_locals;
    const uint32_t which = latest[rank];
    memmove(latest + 1, latest, rank * sizeof *latest);
    latest[0] = which;
    put_number(which);
}

// Constants are parted by the opcode behind them.
static enum Stream constants_before(unsigned char opcode) {
    switch (opcode) {
        case 0x6A: return constants_to_add;
        case 0x10: return constants_to_call_with;
        case 0x6B: return constants_to_subtract;
        case 0x20: return constants_before_local;
        case 0x36: return constants_to_store;
        case 0x41: return constants_before_another;
        case 0x21: return constants_to_keep;
        case 0x71: return constants_to_mask_with;
        case 0x28: return constants_to_load_from;
        case 0x46: return constants_to_compare_with;
    }
    return other_constants;
}

// By how much it opens or closes blocks.
static int instruction(void) {
    static const unsigned char natural[] = {2, 3, 2, 3, 0, 0, 1, 1, 0, 0, 1, 1, 2, 2, 2, 3, 2, 3, 0, 1, 0, 1, 2};
    const unsigned char opcode = *from[opcodes]++;
    *out++ = opcode;
    switch (opcode) {
        case 0x20: put_local(locals_read); return 0;
        case 0x21: put_local(locals_set); return 0;
        case 0x22: put_local(locals_passed_on); return 0;
        case 0x41: copy_number(from[opcodes] < code_end ? constants_before(*from[opcodes]) : other_constants); return 0;
        case 0x42: copy_number(long_constants); return 0;
        case 0x43: copy(floats, 4); return 0;
        case 0x44: copy(doubles, 8); return 0;
        case 0x10: copy_number(calls); return 0;
        case 0x09: case 0x0C: case 0x0D: copy_number(branches); return 0;
        case 0x18: copy_number(branches); return -1;
        case 0x02: case 0x03: case 0x04: case 0x06: copy_number(blocks); return 1;
        case 0x11: copy_number(others); copy_number(others); return 0;
        case 0x07: case 0x08: case 0x23: case 0x24: case 0x3F: case 0x40: copy_number(others); return 0;
        case 0x0E:
            for (uint32_t left = copy_number(tables) + 1; left > 0 && out < out_end; --left) copy_number(tables);
            return 0;
        case 0xFC: {
            const uint32_t which = copy_number(others);
            copy(others, which == 10 ? 2 : which == 11 ? 1 : 0);
            return 0;
        }
        case 0x0B: return -1;
    }
    if (opcode >= 0x28 && opcode <= 0x3E) {
        *out++ = *from[alignments]++ ^ natural[opcode - 0x28];
        copy_number(opcode == 0x28 ? load_offsets : opcode == 0x36 ? store_offsets : other_offsets);
    }
    return 0;
}

// A function's size stands before it and is known behind it only.
static int function(void) {
    unsigned char* const start = out;
    out += largest_size_bytes;
    unsigned char* const body = out;
    for (uint32_t kinds = copy_number(declarations); kinds > 0 && out < out_end; --kinds) {
        copy_number(declarations);
        copy(declarations, 1);
    }
    known_locals = 0;
    for (int depth = 1; depth > 0; depth += instruction()) {
        if (out > out_end || from[opcodes] == code_end) return 0;
    }
    const size_t size = (size_t)(out - body);
    out = start;
    put_number(size);
    memmove(out, body, size);
    out += size;
    return 1;
}

unsigned char* join(const Run coded[coded_count], const unsigned char* rest, size_t n, size_t* made) {
    uint32_t numbers[head_numbers];
    if (n < head_bytes) return NULL;
    memcpy(numbers, rest, head_bytes);
    const uint32_t whole = numbers[0], functions = numbers[1], first = numbers[2];
    if (whole > largest_module || first > whole || first > n - head_bytes) return NULL;
    // The last instruction before a look at the end may go beyond it, and so may the size's bytes.
    unsigned char* const module = room(whole + largest_size_bytes + longest_instruction);
    if (!module) return NULL;
    const unsigned char* at = rest + head_bytes + first;
    size_t left = n - head_bytes - first;
    for (int stream = 0; stream < coded_count; ++stream) from[stream] = coded[stream].at;
    code_end = coded[opcodes].at + coded[opcodes].count;
    for (int stream = coded_count; stream < stream_count; ++stream) {
        const uint32_t length = numbers[3 + stream - coded_count];
        if (length > left) return NULL;
        from[stream] = at;
        at += length;
        left -= length;
    }
    memcpy(module, rest + head_bytes, first);
    out = module + first;
    out_end = module + whole + largest_size_bytes;
    for (uint32_t k = 0; k < functions; ++k) {
        if (!function()) return NULL;
    }
    if ((size_t)(out - module) + left != whole) return NULL;
    memcpy(out, at, left);
    *made = whole;
    return module;
}
