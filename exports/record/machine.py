"""A record as JSON, for programs."""

from __future__ import annotations

import json
from dataclasses import asdict
from datetime import datetime
from typing import Any

from chamberwise.exports.record.content import RecordContent

FORMAT = 1


def record_json(record: RecordContent) -> str:
    """Return the record as JSON: keys in reading order, times as ISO 8601, seconds as numbers."""
    values: dict[str, Any] = {"format": FORMAT} | asdict(record)
    values["duration"] = record.duration
    return json.dumps(values, ensure_ascii=False, indent=2, default=_plain) + "\n"


def _plain(value: object) -> str:
    assert isinstance(value, datetime)
    return value.isoformat()
