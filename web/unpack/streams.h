#pragma once

// The streams of a sorted module, as web/setup/split_code.py has them: first those packed each by PPMd (Shkarin 2001, variant H,
// whose model takes what comes next from what came before), then those that LZMA packs with all else.
enum Stream { opcodes, load_offsets, store_offsets, other_offsets, branches, alignments, declarations, blocks, tables, others,
              long_constants, floats, doubles, locals_read, locals_set, locals_passed_on, constants_to_subtract, constants_to_keep,
              constants_to_mask_with, constants_to_load_from, constants_to_compare_with, coded_count,
              constants_to_add = coded_count, constants_to_call_with, constants_before_local, constants_to_store,
              constants_before_another, other_constants, calls, stream_count };

// What a model may take, and how many bytes of the past it looks at: PPMd's own limits.
enum { model_memory = 16 << 20, least_order = 2, most_order = 64 };
