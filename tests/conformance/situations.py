"""Every situation, by stage."""

from __future__ import annotations

from tests.conformance import (
    situations_begin,
    situations_closing,
    situations_comfort,
    situations_dropped,
    situations_lens,
    situations_lens_in,
    situations_new_lens,
    situations_nucleus,
    situations_vitreous,
)
from tests.conformance.situation import Situation

SITUATIONS: tuple[Situation, ...] = (
    *situations_begin.SITUATIONS,
    *situations_comfort.SITUATIONS,
    *situations_nucleus.SITUATIONS,
    *situations_vitreous.SITUATIONS,
    *situations_lens_in.SITUATIONS,
    *situations_lens.SITUATIONS,
    *situations_new_lens.SITUATIONS,
    *situations_dropped.SITUATIONS,
    *situations_closing.SITUATIONS,
)
