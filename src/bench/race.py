#!/usr/bin/env python3
"""Times commands against each other, by turns, and prints medians and ratios to the first.
usage: race.py ROUNDS TIMEOUT < commands      one a line: NAME, TAB, command line
Wall and CPU time (user and system, children included) in seconds, peak memory of the largest process in MiB.
Statuses 0 and 1 are good (1 = done, with problems); any other ends the race."""
import json
import os
import shlex
import signal
import statistics
import sys
import time


def once(command, timeout):
    out = os.open(os.devnull, os.O_WRONLY)
    start = time.perf_counter()
    pid = os.posix_spawnp(command[0], command, os.environ, file_actions=[(os.POSIX_SPAWN_DUP2, out, 1)], setpgroup=0)
    signal.signal(signal.SIGALRM, lambda *_: os.killpg(pid, signal.SIGKILL))
    signal.alarm(timeout)
    _, status, used = os.wait4(pid, 0)
    signal.alarm(0)
    os.close(out)
    wall, code = time.perf_counter() - start, os.waitstatus_to_exitcode(status)
    if code not in (0, 1):
        sys.exit(f"status {code}: {shlex.join(command)}")
    return wall, used.ru_utime + used.ru_stime, used.ru_maxrss / 1024


def main(rounds, timeout):
    lines = [line.rstrip("\n").split("\t") for line in sys.stdin if line.strip()]
    runs = {name: [] for name, _ in lines}
    for _ in range(rounds):
        for name, command in lines:
            runs[name].append(once(shlex.split(command), timeout))
    median = {name: [statistics.median(r[i] for r in rs) for i in range(3)] for name, rs in runs.items()}
    first = median[lines[0][0]]
    print(f"{'':24}{'wall s':>9}{'min':>8}{'max':>8}{'CPU s':>9}{'MiB':>8}   ratio wall, CPU, memory")
    for name, m in median.items():
        walls = [r[0] for r in runs[name]]
        print(f"{name:24}{m[0]:9.2f}{min(walls):8.2f}{max(walls):8.2f}{m[1]:9.2f}{m[2]:8.0f}   {m[0] / first[0]:.2f}  {m[1] / first[1]:.2f}  {m[2] / first[2]:.2f}")
    json.dump(median, open(os.environ.get("RACE_RESULTS", os.devnull), "w"))


main(int(sys.argv[1]), int(sys.argv[2]))
