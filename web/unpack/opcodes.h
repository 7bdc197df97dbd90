#pragma once

// How a module's opcodes are packed: by PPMd (Shkarin 2001, variant H), whose model takes what comes next from what came before,
// a tenth below LZMA here. Packer (web/pack) and unpacker start from the same model.
enum { opcodes_order = 16, opcodes_memory = 16 << 20 };
