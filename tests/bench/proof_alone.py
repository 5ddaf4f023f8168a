"""One large proof in a process of its own: prints its seconds, its states and its bytes."""

from __future__ import annotations

import json
import resource
import sys
import time

from chamberwise.engine.proof.prove import prove
from chamberwise.engine.proof.verdict import Holds

from tests.bench.proof_rules import eight_rules
from tests.bench.proof_synthetic import NAME, synthetic

FINDINGS = 9
MOST = 4_000_000
KILOBYTE = 1024 if sys.platform != "darwin" else 1


def main(steps: int, kept: int) -> None:
    """Prove eight rules of a synthetic pathway, and tell the memory that this took above Python."""
    library, rules = synthetic(steps, findings=FINDINGS, kept=kept), eight_rules(FINDINGS)
    before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    start = time.process_time()
    proof = prove(library, NAME, rules, most=MOST)
    took = time.process_time() - start
    assert all(isinstance(each, Holds) for each in proof.verdicts)
    after = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    print(json.dumps([took, proof.states, (after - before) * KILOBYTE]))


if __name__ == "__main__":
    main(int(sys.argv[1]), int(sys.argv[2]))
