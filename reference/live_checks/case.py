"""A question for the Rust program, what an outside library says, and how far they may differ."""

import subprocess
from dataclasses import dataclass, field


@dataclass(frozen=True)
class Quantity:
    """What is compared: its name, its unit, and the difference allowed."""

    name: str
    unit: str
    allowed: float
    # The difference is divided by the library's value.
    relative: bool = False

    def difference(self, ours, theirs):
        off = abs(ours - theirs)
        if self.relative and theirs != 0.0:
            off /= abs(theirs)
        return off


@dataclass(frozen=True)
class Case:
    """A line of `crates/science/examples/bulk` and the wanted numbers in the order of its answer.

    `None` in place of a wanted number: that one is not compared.
    """

    line: str
    wanted: list  # of (Quantity, value) or None


@dataclass
class Score:
    """All comparisons of one quantity in one family."""

    quantity: Quantity
    compared: int = 0
    worst: float = 0.0
    worst_line: str = ""
    failures: list = field(default_factory=list)

    def note(self, case, ours, theirs):
        off = self.quantity.difference(ours, theirs)
        self.compared += 1
        # "not <=" so that a difference that is not a number fails.
        if not off <= self.quantity.allowed:
            self.failures.append((case.line, ours, theirs, off))
        if not off <= self.worst:
            self.worst, self.worst_line = off, case.line


def line(name, **values):
    """A question as text. Numbers go out with all their digits, lists with commas."""

    def text(value):
        if isinstance(value, (list, tuple)):
            return ",".join(text(v) for v in value)
        return value if isinstance(value, str) else repr(float(value))

    return " ".join([name, *(f"{key}={text(value)}" for key, value in values.items() if value is not None)])


def ask(program, cases):
    """The program's numbers for each case; a string where it refused."""
    questions = "".join(case.line + "\n" for case in cases)
    said = subprocess.run(program, input=questions, text=True, capture_output=True, check=False)
    if said.returncode != 0:
        raise SystemExit(f"{' '.join(program)} failed:\n{said.stderr}")
    answers = said.stdout.splitlines()
    if len(answers) != len(cases):
        raise SystemExit(f"{len(cases)} questions, {len(answers)} answers")
    return [a if a.startswith("refused") else [float(word) for word in a.split()] for a in answers]


def compare(cases, answers):
    """One score for each quantity, in the order met, and the lines that were refused."""
    scores, refused = {}, []
    for case, answer in zip(cases, answers):
        if isinstance(answer, str):
            refused.append((case.line, answer))
            continue
        if len(answer) != len(case.wanted):
            refused.append((case.line, f"{len(answer)} numbers where {len(case.wanted)} are wanted"))
            continue
        for ours, wanted in zip(answer, case.wanted):
            if wanted is not None:
                quantity, theirs = wanted
                scores.setdefault(quantity, Score(quantity)).note(case, ours, theirs)
    return list(scores.values()), refused
