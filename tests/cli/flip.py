"""Flip the lowest bit of one byte: flip.py FILE TEXT [N] flips the first byte of the N-th place (from 0) where TEXT
stands in the file.  Without N: how many places there are."""
import re
import sys


def main():
    path, text = sys.argv[1:3]
    with open(path, "r+b") as f:
        places = [m.start() for m in re.finditer(re.escape(text.encode()), f.read())]
        if len(sys.argv) < 4:
            print(len(places))
            return
        f.seek(places[int(sys.argv[3])])
        byte = f.read(1)
        f.seek(-1, 1)
        f.write(bytes([byte[0] ^ 1]))


main()
