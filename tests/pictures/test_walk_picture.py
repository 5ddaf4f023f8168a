from __future__ import annotations

import re

from chamberwise.exports.record.standing import STANDING

from tests.pictures.walk_picture import picture


async def test_the_picture_is_the_same_each_time_and_fetches_nothing() -> None:
    first, second = await picture(), await picture()
    assert first == second
    assert set(re.findall(r"https?://[^\"' ]+", first)) == {"http://www.w3.org/2000/svg"}
    text = re.sub(r"<[^>]+>", " ", first).replace("&#160;", " ")
    assert STANDING in text
    assert "DRAFT" in text
