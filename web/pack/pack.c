// Packs a file by PPMd, with the memory of web/unpack/streams.h; runs in Node while the page is built.
//   pack ORDER IN OUT
#include <stdio.h>
#include <stdlib.h>

#include "Ppmd7.h"
#include "streams.h"

static void* take(void* from, size_t n) { (void)from; return malloc(n); }
static void give(void* from, void* data) { (void)from; free(data); }

typedef struct {
    IByteOut out;
    FILE* file;
} Sink;

static void put(void* sink, Byte byte) { fputc(byte, ((Sink*)sink)->file); }

int main(int count, char** words) {
    if (count != 4) return 2;
    FILE* in = fopen(words[2], "rb");
    Sink sink = {{put}, fopen(words[3], "wb")};
    if (!in || !sink.file) return 2;
    ISzAlloc memory = {take, give};
    CPpmd7 model;
    Ppmd7_Construct(&model);
    if (!Ppmd7_Alloc(&model, model_memory, &memory)) return 1;
    Ppmd7_Init(&model, (unsigned)atoi(words[1]));
    CPpmd7z_RangeEnc coder;
    coder.Stream = &sink.out;
    Ppmd7z_RangeEnc_Init(&coder);
    for (int byte; (byte = fgetc(in)) != EOF;) Ppmd7_EncodeSymbol(&model, &coder, byte);
    Ppmd7z_RangeEnc_FlushData(&coder);
    return ferror(in) || fclose(sink.file) != 0;
}
