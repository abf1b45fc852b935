"""Run what README shows, and compare what it shows of the answers: readme_runs.py README.md TODAY

The indented blocks from the first that makes a logbook on: a block that begins with the program's name, or a loop, is
run by the shell, and must end well; a block that does not is a piece of the answer before it, "..." standing for what
is left out.  Blanks count as one, since the width may differ.
"""
import re
import subprocess
import sys


def blocks(path):
    block = []
    with open(path, encoding="utf-8") as f:
        for line in f.read().splitlines() + [""]:
            if line.startswith("    ") and line.strip():
                block.append(line[4:])
            elif block:
                yield block
                block = []


def run(block, today):
    script = 'splitpin() { "$SPLITPIN" --today ' + today + ' "$@"; }\n' + "\n".join(block) + "\n"
    done = subprocess.run(["sh", "-e", "-c", script], stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True,
                          encoding="utf-8", timeout=60)
    if done.returncode:
        sys.exit("README: exit code %d of:\n%s\n%s" % (done.returncode, "\n".join(block), done.stdout))
    return {" ".join(line.split()) for line in done.stdout.splitlines()}


def main(path, today):
    begun, said, n = False, set(), 0
    for block in blocks(path):
        command = re.match(r"(\$ )?splitpin |for .* do$", block[0])
        begun = begun or re.match(r"splitpin new ", block[0])
        if not begun:
            continue
        if command:
            said = run(block, today)
            n += 1
            continue
        for line in block:
            if line.strip() != "..." and " ".join(line.split()) not in said:
                sys.exit("README shows this, the program does not:\n%s\n\nbut:\n%s" % (line, "\n".join(sorted(said))))
    assert n >= 6, f"README shows only {n} blocks of commands"
    print(n, "blocks of commands run as they stand in README")


main(*sys.argv[1:])
