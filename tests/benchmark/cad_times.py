"""Times the CAD program's own library on board files: argv = passes, file …

Prints for each file and pass the milliseconds of LoadBoard and of BuildConnectivity; start-up and import of the
library are not in them. Exit code 9: the library is not installed.
"""
import sys
import time

try:
    import pcbnew
except ImportError:
    sys.exit(9)

for path in sys.argv[2:]:
    for _ in range(int(sys.argv[1])):
        start = time.perf_counter()
        board = pcbnew.LoadBoard(path)
        loaded = time.perf_counter()
        board.BuildConnectivity()
        done = time.perf_counter()
        print("ms", (loaded - start) * 1e3, (done - loaded) * 1e3, flush=True)
