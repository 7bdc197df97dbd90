"""Sorts a WebAssembly module's code by what its bytes mean, so that packers find more that repeats: all opcodes by themselves,
all offsets of loads in the next stream, and so on. web/unpack/join.c puts them back in order, byte for byte; the streams,
their order and the head are known to both.

The head of what is not coded stream by stream, numbers of four bytes, lowest first: bytes of the whole module; functions; bytes
up to the first function's; then of each of the PLAIN streams as many as there are. After it come the module's bytes up to the
first function, those streams, and the bytes behind the last function.

WebAssembly Core Specification 2.0, chapter 5 (binary format), with the exception handling that engines brought first (try, catch,
rethrow, delegate).
"""

# Packed each by itself, by PPMd with a model of so many bytes of the past: what packed this page best.
CODED = {"opcodes": 16, "offsets of loads": 8, "offsets of stores": 8, "other offsets": 8, "branches": 3, "alignments": 4,
         "declarations": 4, "blocks": 3, "tables": 3, "others": 3, "long constants": 8, "floats": 4, "doubles": 8,
         "locals read": 8, "locals set": 2, "locals passed on": 2, "constants to subtract": 2, "constants to keep": 2,
         "constants to mask with": 4, "constants to load from": 3, "constants to compare with": 2}
# Packed together with all that is no code. A constant is of one kind with those before the same opcode.
PLAIN = ("constants to add", "constants to call with", "constants before a local", "constants to store",
         "constants before another", "other constants", "calls")
CODE_SECTION = 10
# log2 of the natural alignment of the loads and stores 0x28 to 0x3e.
NATURAL = bytes((2, 3, 2, 3, 0, 0, 1, 1, 0, 0, 1, 1, 2, 2, 2, 3, 2, 3, 0, 1, 0, 1, 2))
# Opcodes with one number behind them, by the stream that it goes to.
ONE_NUMBER = {0x42: "long constants", 0x10: "calls",
              0x0C: "branches", 0x0D: "branches", 0x09: "branches", 0x18: "branches", 0x02: "blocks", 0x03: "blocks",
              0x04: "blocks", 0x06: "blocks", 0x07: "others", 0x08: "others", 0x23: "others", 0x24: "others", 0x3F: "others",
              0x40: "others"}
LOCALS = {0x20: "locals read", 0x21: "locals set", 0x22: "locals passed on"}
MOST_LOCALS = 50000  # what browsers take
OFFSETS = {0x28: "offsets of loads", 0x36: "offsets of stores"}
CONSTANTS = {0x6A: "constants to add", 0x10: "constants to call with", 0x6B: "constants to subtract", 0x20: "constants before a local",
             0x36: "constants to store", 0x41: "constants before another", 0x21: "constants to keep", 0x71: "constants to mask with",
             0x28: "constants to load from", 0x46: "constants to compare with"}
OPENS = {0x02, 0x03, 0x04, 0x06}   # block, loop, if, try
CLOSES = {0x0B, 0x18}              # end, delegate
BARE = {0x00, 0x01, 0x05, 0x0B, 0x0F, 0x19, 0x1A, 0x1B, *range(0x45, 0xC5)}


class Reader:
    def __init__(self, data, at):
        self.data = data
        self.at = at

    def byte(self):
        self.at += 1
        return self.data[self.at - 1]

    def number(self):
        """A number in LEB128: its bytes and its value, taken as unsigned."""
        start, value, shift = self.at, 0, 0
        while True:
            byte = self.byte()
            value |= (byte & 0x7F) << shift
            shift += 7
            if byte < 0x80:
                return self.data[start:self.at], value

    def bytes(self, count):
        self.at += count
        return self.data[self.at - count:self.at]


def leb(value):
    """A number in LEB128 of no more bytes than it wants."""
    text = bytearray()
    while value > 0x7F:
        text.append(value & 0x7F | 0x80)
        value >>= 7
    text.append(value)
    return bytes(text)


def take_local(reader, latest):
    """A local by how lately its function used one: 0 the last, then those before it, then those not used yet by their numbers. Which
    of the last few is said again and again; which number they have differs from function to function."""
    text, which = reader.number()
    if text != leb(which) or which >= MOST_LOCALS:
        raise ValueError(f"local {which} is written longer than it must be, or is one too many")
    latest.extend(range(len(latest), which + 1))
    rank = latest.index(which)
    latest.insert(0, latest.pop(rank))
    return leb(rank)


def take_instruction(reader, streams, latest):
    """One instruction into the streams; returns by how much it opens or closes blocks."""
    opcode = reader.byte()
    streams["opcodes"].append(opcode)
    if opcode in LOCALS:
        streams[LOCALS[opcode]] += take_local(reader, latest)
    elif opcode in ONE_NUMBER:
        streams[ONE_NUMBER[opcode]] += reader.number()[0]
    elif 0x28 <= opcode <= 0x3E:
        streams["alignments"].append(NATURAL[opcode - 0x28] ^ reader.byte())
        streams[OFFSETS.get(opcode, "other offsets")] += reader.number()[0]
    elif opcode == 0x41:
        text = reader.number()[0]
        streams[CONSTANTS.get(reader.data[reader.at], "other constants")] += text
    elif opcode == 0x11:  # call_indirect
        streams["others"] += reader.number()[0] + reader.number()[0]
    elif opcode == 0x0E:  # br_table
        text, count = reader.number()
        streams["tables"] += text
        for _ in range(count + 1):
            streams["tables"] += reader.number()[0]
    elif opcode == 0x43:
        streams["floats"] += reader.bytes(4)
    elif opcode == 0x44:
        streams["doubles"] += reader.bytes(8)
    elif opcode == 0xFC:
        text, which = reader.number()
        if which > 7 and which not in (10, 11):
            raise ValueError(f"opcode fc {which} is not known here")
        streams["others"] += text + reader.bytes({10: 2, 11: 1}.get(which, 0))
    elif opcode not in BARE:
        raise ValueError(f"opcode {opcode:#x} is not known here")
    return (opcode in OPENS) - (opcode in CLOSES)


def take_function(reader, streams):
    start = reader.at
    size_text, size = reader.number()
    if size_text != leb(size):
        raise ValueError("the size of a function is written longer than it must be")
    end = reader.at + size
    text, kinds = reader.number()
    streams["declarations"] += text
    for _ in range(kinds):
        streams["declarations"] += reader.number()[0] + reader.bytes(1)
    depth = 1
    latest = []
    while depth > 0:
        depth += take_instruction(reader, streams, latest)
    if reader.at != end:
        raise ValueError(f"the function at {start} does not end where it says")


def split(module):
    """The CODED streams, and all other bytes of the module, sorted. Raises ValueError where it holds an instruction that is not known here."""
    reader = Reader(module, 8)
    while True:
        section = reader.byte()
        _, size = reader.number()
        if section == CODE_SECTION:
            break
        reader.at += size
    _, functions = reader.number()
    first = reader.at
    streams = {name: bytearray() for name in (*CODED, *PLAIN)}
    for _ in range(functions):
        take_function(reader, streams)
    numbers = [len(module), functions, first, *(len(streams[name]) for name in PLAIN)]
    rest = b"".join([*(number.to_bytes(4, "little") for number in numbers), module[:first],
                     *(streams[name] for name in PLAIN), module[reader.at:]])
    return {name: bytes(streams[name]) for name in CODED}, rest
