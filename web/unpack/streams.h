#pragma once

// The streams of a sorted module, as web/setup/split_code.py has them: first those packed each by PPMd (Shkarin 2001, variant H,
// whose model takes what comes next from what came before), then those that LZMA packs with all else.
enum Stream { opcodes, offsets, branches, alignments, declarations, others, long_constants, floats, coded_count,
              locals = coded_count, constants, calls, stream_count };

// What a model may take, and how many bytes of the past it looks at: PPMd's own limits.
enum { model_memory = 16 << 20, least_order = 2, most_order = 64 };
