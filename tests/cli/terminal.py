"""Run a command on a terminal of its own and print what it shows: terminal.py COLUMNS [ANSWER...] -- COMMAND...

Each answer is typed, with Enter, when the program asks (what it shows ends with ": "); the answer ^D ends the input.
The exit code is the command's.
"""
import fcntl
import os
import pty
import select
import struct
import sys
import termios


def child(columns, command):
    pid, fd = pty.fork()
    if pid == 0:
        os.execvp(command[0], command)
    fcntl.ioctl(fd, termios.TIOCSWINSZ, struct.pack("HHHH", 24, columns, 0, 0))
    return pid, fd


def read(fd):
    try:
        ready, _, _ = select.select([fd], [], [], 60)
        return os.read(fd, 65536) if ready else b""
    except OSError:  # the other end is closed
        return b""


def main():
    cut = sys.argv.index("--")
    columns, answers, command = int(sys.argv[1]), sys.argv[2:cut], sys.argv[cut + 1:]
    # The size is set before the command looks at it.
    pid, fd = child(columns, ["sh", "-c", 'while [ "$(stty size)" != "24 %d" ]; do :; done; exec "$@"' % columns, "sh"] + command)
    shown = b""
    while True:
        more = read(fd)
        if not more:
            break
        shown += more
        if answers and shown.endswith(b": "):
            answer = answers.pop(0)
            os.write(fd, b"\x04" if answer == "^D" else answer.encode() + b"\n")
    os.close(fd)
    sys.stdout.write(shown.decode("utf-8", "backslashreplace").replace("\r\n", "\n"))
    sys.stdout.flush()
    sys.exit(os.waitstatus_to_exitcode(os.waitpid(pid, 0)[1]))


main()
