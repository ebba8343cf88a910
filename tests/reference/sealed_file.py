"""The sealed file's format, read and written by another program: PyNaCl's bindings of libsodium, from the description in
core/care/sealed_file.h alone.

    sealed_file.py open  FROM TO    the passphrase on standard input
    sealed_file.py seal  FROM TO    with the least cost and a fixed salt, so that the same input gives the same key
"""
import struct
import sys
import unicodedata

from nacl import bindings, pwhash

MAGIC = b"SYRDSEAL"
HEADER = struct.Struct("<8sHHQQ16sI24s")
PIECE = 65536


def key_of(passphrase, salt, passes, memory):
    letters = unicodedata.normalize("NFC", passphrase).encode("utf-8")
    return pwhash.argon2id.kdf(32, letters, salt, opslimit=passes, memlimit=memory)


def open_file(data, passphrase):
    header = data[: HEADER.size]
    magic, form, derivation, passes, memory, salt, piece, stream = HEADER.unpack(header)
    assert (magic, form, derivation, piece) == (MAGIC, 1, 1, PIECE)
    state = bindings.crypto_secretstream_xchacha20poly1305_state()
    bindings.crypto_secretstream_xchacha20poly1305_init_pull(state, stream, key_of(passphrase, salt, passes, memory))
    plain, at, tag = b"", HEADER.size, None
    step = PIECE + bindings.crypto_secretstream_xchacha20poly1305_ABYTES
    while tag != bindings.crypto_secretstream_xchacha20poly1305_TAG_FINAL:
        sealed = data[at : at + step]
        assert sealed, "the end is missing"
        more = header if at == HEADER.size else None
        part, tag = bindings.crypto_secretstream_xchacha20poly1305_pull(state, sealed, more)
        plain += part
        at += len(sealed)
    assert at == len(data), "something follows the end"
    return plain


def seal_file(plain, passphrase):
    salt, passes, memory = bytes(range(16)), 2, 19 << 20
    state = bindings.crypto_secretstream_xchacha20poly1305_state()
    stream = bindings.crypto_secretstream_xchacha20poly1305_init_push(state, key_of(passphrase, salt, passes, memory))
    header = HEADER.pack(MAGIC, 1, 1, passes, memory, salt, PIECE, stream)
    sealed, at = header, 0
    while True:
        part = plain[at : at + PIECE]
        at += PIECE
        last = len(part) < PIECE
        tag = (
            bindings.crypto_secretstream_xchacha20poly1305_TAG_FINAL
            if last
            else bindings.crypto_secretstream_xchacha20poly1305_TAG_MESSAGE
        )
        more = header if at == PIECE else None
        sealed += bindings.crypto_secretstream_xchacha20poly1305_push(state, part, more, tag)
        if last:
            return sealed


def main():
    deed, source, target = sys.argv[1:]
    passphrase = sys.stdin.read()
    with open(source, "rb") as file:
        data = file.read()
    made = open_file(data, passphrase) if deed == "open" else seal_file(data, passphrase)
    with open(target, "wb") as file:
        file.write(made)


main()
