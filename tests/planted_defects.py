"""Do the tests notice? Plants defects into the rules, one at a time, and tells which of them were caught.

Run it by name, it is no test: ``python tests/planted_defects.py --defects 200 --seed 1 --out planted.json``, where the
program and its extra ``dev`` are installed. It works in copies of the checkout and leaves the checkout as it is.

A defect is caught at import, where the rules refuse it (units that do not cancel, a line that is not there), or by the
first test that fails. Those that live are of two kinds: some changed a number of a job that was looked at, and no test
minded; some changed no number of any, and may be no defects at all. ``planted_kinds`` tells what is planted.
"""

from __future__ import annotations

import argparse
import json
import os
import pickle
import queue
import shutil
import subprocess
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Generator, Iterator, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing
from dataclasses import dataclass
from enum import Enum
from pathlib import Path
from random import Random

from planted_kinds import Defect, defects

STAGES: tuple[tuple[str, ...], ...] = (
    ("test_situations.py", "test_published.py", "test_functions.py", "test_levels.py", "test_tree.py"),
    (
        "test_*_reference.py",
        "test_order.py",
        "test_weather.py",
        "test_week_comparison.py",
        "test_truck_sharing.py",
        "test_declarations.py",
        "test_money.py",
        "test_double_counting.py",
        "test_cautions.py",
        "test_metric_twin.py",
    ),
    ("test_bid_sheet.py", "test_papers.py", "test_charts.py", "test_live_recalc.py"),
)
"""The files of tests by glob, wherever below ``tests``: the quick ones first, then those for what the first let live.

Not among them are tests that hold files that were made of the rules against the rules: they notice every change, also
of a number that is right either way.
"""
LOOK, PRINTS, NO_VALUES = Path(__file__).with_name("planted_look.py"), "prints.pickle", 4
"""What some jobs come to: the script, the file that it writes, and its exit code when the rules cannot be computed."""
NOT_COPIED = (".git", ".venv", "outputs", "__pycache__", ".*_cache", "*.egg-info")
PYTEST = ("-q", "-x", "-n0", "-p", "no:cacheprovider", "--tb=no", "-rfE", "--no-header")
PATIENCE = 6
"""So many times as long as without a defect may a stage take, and a minute more, before it counts as hung."""
PASSED, FAILED, INTERRUPTED, INTERNAL = range(4)
"""The exit codes of pytest that say something of the defect."""


class End(Enum):
    """What became of a defect."""

    IMPORT = "caught at import"
    TESTS = "caught by tests"
    LIVED = "changed a number and lived"
    NOTHING = "changed no number and lived"


@dataclass(frozen=True)
class Fate:
    """What became of a defect: who caught it, which lines it changed, and how long that took."""

    defect: Defect
    end: End
    by: str
    moved: tuple[str, ...]
    seconds: float


class Copy:
    """A copy of the checkout in which one defect after another is planted."""

    def __init__(self, checkout: Path, folder: Path) -> None:
        self.root, self.looks = folder / "checkout", folder / "looks"
        self.looks.mkdir(parents=True)
        shutil.copytree(checkout, self.root, ignore=shutil.ignore_patterns(*NOT_COPIED))
        self.whole: dict[str, str] = {}
        self.usual: dict[int, float] = {}

    def settle(self, stages: range) -> None:
        """Looks at it and tests it without any defect. Exits when a test fails: nothing could be said then."""
        code, said = self._look(cached=True)
        if code != 0:
            sys.exit(f"the rules cannot be computed as they are: {said}")
        self.whole = pickle.loads((self.looks / PRINTS).read_bytes())
        for stage in stages:
            started = time.monotonic()
            code, said = self._test(stage, None, cached=True)
            self.usual[stage] = time.monotonic() - started
            if code != PASSED:
                sys.exit(f"stage {stage + 1} does not pass as it is: {said}")

    def try_out(self, defect: Defect, stages: range) -> Fate:
        """Plants a defect, sees what comes of it, and takes it out again."""
        started = time.monotonic()
        path = self.root / defect.file
        content, times = path.read_bytes(), path.stat()
        path.write_bytes(defect.planted(content))
        try:
            end, by, moved = self._fate(stages)
        finally:
            path.write_bytes(content)
            os.utime(path, ns=(times.st_atime_ns, times.st_mtime_ns))
        return Fate(defect, end, by, moved, round(time.monotonic() - started, 1))

    def _fate(self, stages: range) -> tuple[End, str, tuple[str, ...]]:
        code, said = self._look()
        if code not in (0, NO_VALUES):
            return End.IMPORT, said, ()
        moved = self._moved() if code == 0 else ("not computed",)
        for stage in stages:
            outcome, said = self._test(stage, self.usual[stage] * PATIENCE + 60)
            if outcome != PASSED:
                return End.TESTS, said, moved
        return (End.LIVED if moved else End.NOTHING), "", moved

    def _moved(self) -> tuple[str, ...]:
        """The lines that come to something else in some job."""
        now = pickle.loads((self.looks / PRINTS).read_bytes())
        return tuple(name for name in self.whole | now if self.whole.get(name) != now.get(name))

    def _look(self, cached: bool = False) -> tuple[int, str]:
        """The exit code of a look, and the last that it said."""
        try:
            done = self._run([str(LOOK), str(self.root), str(self.looks)], 120, cached)
        except subprocess.TimeoutExpired:
            return NO_VALUES, "it did not come to an end"
        return done.returncode, (done.stderr.strip().splitlines() or [""])[-1][:300]

    def _test(self, stage: int, patience: float | None, cached: bool = False) -> tuple[int, str]:
        """The exit code of a stage, and the test that failed first."""
        try:
            done = self._run(["-m", "pytest", *PYTEST, *self._files(stage)], patience, cached)
        except subprocess.TimeoutExpired:
            return INTERRUPTED, f"stage {stage + 1} did not come to an end"
        if done.returncode > INTERNAL:
            sys.exit(f"pytest could not be run: {done.stdout[-600:]}{done.stderr[-600:]}")
        failed = [line for line in done.stdout.splitlines() if line.startswith(("FAILED ", "ERROR "))]
        return done.returncode, failed[0].split(" - ")[0].split(" ", 1)[1] if failed else done.stdout[-200:]

    def _files(self, stage: int) -> Iterator[str]:
        for glob in STAGES[stage]:
            found = sorted((self.root / "tests").rglob(glob))
            if not found:
                sys.exit(f"no file of tests is called {glob}")
            yield from (path.relative_to(self.root).as_posix() for path in found)

    def _run(self, command: Sequence[str], seconds: float | None, cached: bool) -> subprocess.CompletedProcess[str]:
        """Runs Python in the copy. Only the sources without a defect leave compiled files behind, which stay right.

        Nothing but Python is found there: a spreadsheet program would take longer than all the tests.
        """
        own = os.pathsep.join(str(self.root / each) for each in ("", "tests", "tests/support"))
        environment = os.environ | {"PYTHONPATH": own, "PATH": str(self.looks)}
        environment.pop("FLATWORK_WITNESSES", None)
        if not cached:
            environment["PYTHONDONTWRITEBYTECODE"] = "1"
        return subprocess.run(
            [sys.executable, *command],
            cwd=self.root, env=environment, timeout=seconds, capture_output=True, text=True, check=False,
        )  # fmt: skip


def drawn(checkout: Path, seed: int, count: int) -> list[Defect]:
    """So many different defects: a kind by lot, then one of that kind."""
    chance = Random(seed)
    found = {kind: list(those) for kind, those in sorted(defects(checkout).items())}
    picked: list[Defect] = []
    while len(picked) < count and found:
        kind = chance.choice(sorted(found))
        picked.append(found[kind].pop(chance.randrange(len(found[kind]))))
        if not found[kind]:
            del found[kind]
    return picked


def fates(checkout: Path, planted: Sequence[Defect], stages: range, jobs: int) -> Generator[Fate, None, None]:
    """What becomes of each, in the order in which that is known."""
    with tempfile.TemporaryDirectory() as folder:
        free: queue.Queue[Copy] = queue.Queue()
        for number in range(jobs):
            copy = Copy(checkout, Path(folder) / str(number))
            copy.settle(stages)
            seconds = ", ".join(f"{each:.0f}" for each in copy.usual.values())
            print(f"copy {number + 1} passes as it is; its stages take so many seconds: {seconds}", flush=True)
            free.put(copy)

        def tried(defect: Defect) -> Fate:
            copy = free.get()
            try:
                return copy.try_out(defect, stages)
            finally:
                free.put(copy)

        pool = ThreadPoolExecutor(jobs)
        try:
            yield from pool.map(tried, planted)
        finally:
            pool.shutdown(cancel_futures=True)


def told(fate: Fate) -> str:
    """What became of one, on a line."""
    return f"{fate.end.value}: {fate.defect.said}  [{fate.by.split('::')[0]}, {fate.seconds} s]"


def report(done: Sequence[Fate]) -> str:
    """The table by kind, who caught how many, and whatever lived."""
    lines = [f"{'kind':48}{'planted':>8}" + "".join(f"{_heading(end):>12}" for end in End)]
    kinds = {
        kind: [each for each in done if each.defect.kind == kind] for kind in sorted({f.defect.kind for f in done})
    }
    for name, those in [*kinds.items(), ("all", done)]:
        counts = Counter(each.end for each in those)
        lines.append(f"{name:48}{len(those):>8}" + "".join(f"{counts[end]:>12}" for end in End))
    counts = Counter(each.end for each in done)
    caught = counts[End.IMPORT] + counts[End.TESTS]
    lines.append(f"\nOf {len(done)}, {caught} were caught, {counts[End.LIVED]} changed a number and lived.")
    lines.append("\nWhat caught them first:")
    by = Counter(each.by.split("::")[0] for each in done if each.end is End.TESTS)
    lines += [f"  {times:>4}  {file}" for file, times in by.most_common()]
    for end in (End.LIVED, End.NOTHING):
        lines.append(f"\n{end.value.capitalize()}:")
        lines += [f"  {each.defect.said}{_moved(each)}" for each in done if each.end is end]
    return "\n".join(lines)


def _heading(end: End) -> str:
    return {End.IMPORT: "at import", End.TESTS: "by tests", End.LIVED: "lived", End.NOTHING: "no number"}[end]


def _moved(fate: Fate) -> str:
    if not fate.moved:
        return ""
    return f"\n        changed {len(fate.moved)} lines, first {', '.join(fate.moved[:3])}"


def kept(done: Sequence[Fate], said: argparse.Namespace, path: Path) -> None:
    """Writes what is known so far."""
    counts = Counter(each.end for each in done)
    facts = {
        "seed": said.seed,
        "asked": said.defects,
        "stages": [list(each) for each in STAGES[: said.to_stage]],
        "planted": len(done),
        **{end.value: counts[end] for end in End},
        "defects": [
            {
                "file": each.defect.file, "line": each.defect.line, "kind": each.defect.kind, "was": each.defect.was,
                "becomes": each.defect.becomes, "end": each.end.value, "by": each.by, "moved": each.moved,
                "seconds": each.seconds,
            }
            for each in done
        ],
    }  # fmt: skip
    new = path.with_name(f"{path.name}.new")
    new.write_text(json.dumps(facts, indent=1, ensure_ascii=False), encoding="utf-8")
    new.replace(path)


def earlier(checkout: Path, path: Path) -> list[Fate]:
    """The results of an earlier run, for the defects that could still be planted."""
    known = {_name(vars(each)): each for those in defects(checkout).values() for each in those}
    facts = json.loads(path.read_text(encoding="utf-8"))["defects"]
    return [
        Fate(known[_name(each)], End(each["end"]), each["by"], tuple(each["moved"]), each["seconds"])
        for each in facts
        if _name(each) in known
    ]


def _name(facts: Mapping[str, object]) -> tuple[object, ...]:
    return tuple(facts[each] for each in ("file", "line", "kind", "was", "becomes"))


def asked() -> argparse.Namespace:
    """What the command line says."""
    here = Path(__file__).resolve()
    checkout = next(each for each in here.parents if (each / "calc").is_dir() or each == here.parents[-1])
    parser = argparse.ArgumentParser(description=(__doc__ or "").split("\n\n", maxsplit=1)[0])
    parser.add_argument("--defects", type=int, default=200, help="how many are planted")
    parser.add_argument("--seed", type=int, default=1, help="which ones")
    parser.add_argument("--jobs", type=int, default=1, help="how many are tried at a time, each in a copy of its own")
    stages = range(1, len(STAGES) + 1)
    parser.add_argument(
        "--from-stage", type=int, default=1, choices=stages, help="the first stage of tests that is run"
    )
    parser.add_argument("--to-stage", type=int, default=len(STAGES), choices=stages, help="the last one")
    parser.add_argument("--lived", type=Path, help="results of an earlier run: only what lived there is tried again")
    parser.add_argument("--checkout", type=Path, default=checkout, help="the checkout that is copied")
    parser.add_argument("--out", type=Path, default=Path("planted.json"), help="where the results go, as they come")
    parser.add_argument("--minutes", type=float, default=float("inf"), help="begin no further one after so long")
    parser.add_argument("--list", action="store_true", help="only say which ones would be planted")
    return parser.parse_args()


def main() -> None:
    """Plants, tries and tells."""
    said = asked()
    done = earlier(said.checkout, said.lived) if said.lived else []
    planted = [each.defect for each in done if each.end in (End.LIVED, End.NOTHING)]
    done = [each for each in done if each.defect not in planted]
    if not said.lived:
        planted = drawn(said.checkout, said.seed, said.defects)
    if said.list:
        print("\n".join(each.said for each in planted))
        return
    stop = time.monotonic() + said.minutes * 60
    with closing(fates(said.checkout, planted, range(said.from_stage - 1, said.to_stage), said.jobs)) as coming:
        for fate in coming:
            done.append(fate)
            kept(done, said, said.out)
            print(f"{len(done):>4}  {told(fate)}", flush=True)
            if time.monotonic() > stop:
                break
    print(f"\n{report(done)}")


if __name__ == "__main__":
    main()
