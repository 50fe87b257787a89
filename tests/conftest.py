"""What every test shares: no clock decides whether a property holds."""

from __future__ import annotations

import os

from hypothesis import HealthCheck, settings

# Shared machines stall now and then, so no example is failed for being slow. A failing example is
# printed with the lines that bring it back.
settings.register_profile(
    "usual", deadline=None, print_blob=True, suppress_health_check=[HealthCheck.too_slow]
)
settings.register_profile("thorough", settings.get_profile("usual"), max_examples=2000)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "usual"))
