"""How hard the properties are tried: CHAMBERWISE_TESTS=thorough tries many more, at random.

Started in the background, a process ignores Ctrl-C, and so would every program that it starts; the
tests that press Ctrl-C need one that hears it.
"""

from __future__ import annotations

import os
import signal
import threading

from hypothesis import HealthCheck, settings

SLOW = [HealthCheck.too_slow, HealthCheck.data_too_large, HealthCheck.filter_too_much]

settings.register_profile(
    "small", max_examples=80, derandomize=True, deadline=None, suppress_health_check=SLOW
)
settings.register_profile(
    "thorough", max_examples=1000, deadline=None, suppress_health_check=SLOW, print_blob=True
)
settings.load_profile(os.environ.get("CHAMBERWISE_TESTS", "small"))
if threading.current_thread() is threading.main_thread():
    signal.signal(signal.SIGINT, signal.default_int_handler)
