"""An approval of a translation stands while neither the source nor the translation changes."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest
from chamberwise.engine.approval.translations import fallen_parts, seal_of_translation, stands
from chamberwise.engine.language.speaking import speaking
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Status
from chamberwise.engine.reading.library import Loaded
from chamberwise.engine.reading.translation_file import TranslatedText, TranslationFile
from chamberwise.engine.stamp.code import stamp_of
from chamberwise.engine.stamp.content import content_digest
from chamberwise.engine.translating.applying import THE_TRANSLATION, translated
from chamberwise.engine.translating.segments import VOCABULARY, originals, text_digest
from chamberwise.exports.control.content import DRAFT, UNREVIEWED, Control
from chamberwise.exports.control.extract import control_of
from chamberwise.exports.control.lines import approval
from chamberwise.exports.stamp.extract import stamp_shown
from chamberwise.exports.stamp.snapshot import snapshot

from tests.engine.local.stage import PATHWAY, below
from tests.support.build import TODAY

DAY = date(2026, 11, 20)


def approved_library() -> Loaded:
    """Return the small library as if its pathway had been approved in English."""
    base = below()
    pathways = {
        name: replace(each, status=Status.APPROVED, approved_by="Clinical lead", approved_on=DAY)
        for name, each in base.library.pathways.items()
    }
    return replace(base, library=Library(base.library.shared, pathways))


def file_of(name: str, loaded: Loaded) -> TranslationFile:
    """Return a translation that says every text as it is written: figures and denials agree."""
    texts = tuple(
        TranslatedText(at, text_digest(source), source.replace("0.5", "0,5"), (), source, "So.")
        for at, source in originals(loaded.library)[name].items()
    )
    file = TranslationFile(name, "de", texts, (), ("Translator",))
    return sealed(file)


def sealed(file: TranslationFile) -> TranslationFile:
    seal = seal_of_translation(file)
    return replace(file, is_called_approved=True, approved_by="Reader", approved_on=DAY, seal=seal)


def files(loaded: Loaded) -> list[TranslationFile]:
    return [file_of(PATHWAY, loaded), file_of(VOCABULARY, loaded)]


def said(file: TranslationFile, says: str) -> TranslationFile:
    """Return a file of which the first text says something else."""
    first, *rest = file.texts
    return replace(file, texts=(replace(first, says=says), *rest))


def control_for(told: Loaded) -> Control:
    pathway = told.library.pathways[PATHWAY]
    return control_of(pathway, "card", TODAY, "CODE", library=told.library)


def marks(told: Loaded) -> tuple[str, ...]:
    return control_for(told).marks


def test_an_approved_pathway_in_an_approved_translation_is_approved() -> None:
    base = approved_library()
    told = translated(base, "de", files(base))
    assert told.library.pathways[PATHWAY].is_approved
    assert told.fallen == {}
    with speaking("de"):
        assert not {_(DRAFT), _(UNREVIEWED)} & {*marks(told)}
        assert "Reader" in control_for(told).translation_by


def test_a_draft_stays_one_in_an_approved_translation() -> None:
    told = translated(below(), "de", files(below()))
    assert DRAFT in marks(told)


@pytest.mark.parametrize("which", [0, 1])
def test_one_file_that_nobody_approved_makes_it_a_draft(which: int) -> None:
    base = approved_library()
    several = files(base)
    several[which] = replace(several[which], is_called_approved=False)
    told = translated(base, "de", several)
    assert not told.library.pathways[PATHWAY].is_approved
    assert told.fallen == {PATHWAY: (THE_TRANSLATION,)}
    with speaking("de"):
        assert _(UNREVIEWED) in marks(told)
        control = control_for(told)
        assert not control.is_approved
        assert approval(control).endswith("Clinical lead")


def test_a_file_that_is_missing_makes_it_a_draft() -> None:
    base = approved_library()
    assert THE_TRANSLATION in translated(base, "de", files(base)[:1]).fallen[PATHWAY]


def test_any_edit_of_the_translation_takes_the_approval_back() -> None:
    file = file_of(PATHWAY, below())
    first, second, *_rest = file.texts
    assert stands(file)
    for texts in (
        said(file, "Anders").texts,
        (replace(first, accepted="Another reason."), *file.texts[1:]),
        file.texts[1:],
        (*file.texts, replace(first, at=("elsewhere",))),
    ):
        edited = replace(file, texts=texts)
        assert not stands(edited)
        assert fallen_parts(edited)
    assert not stands(replace(file, translators=("Translator", "Reader")))
    assert not stands(replace(file, language="fr"))
    assert stands(replace(file, texts=(second, first, *file.texts[2:])))


def test_any_edit_of_the_source_takes_the_approval_back() -> None:
    base = approved_library()
    several = files(base)
    pathway = base.library.pathways[PATHWAY]
    edited = replace(pathway, summary=f"{pathway.summary} And more.")
    library = Library(base.library.shared, {PATHWAY: edited})
    told = translated(replace(base, library=library), "de", several)
    assert not told.library.pathways[PATHWAY].is_approved


@pytest.mark.parametrize("by", ["Translator", "translator.", " TRANSLATOR"])
def test_nobody_approves_what_they_translated(by: str) -> None:
    assert not stands(replace(file_of(PATHWAY, below()), approved_by=by))


def test_an_approval_without_a_seal_a_day_or_a_translator_is_none() -> None:
    file = file_of(PATHWAY, below())
    assert not stands(replace(file, seal=None))
    assert not stands(replace(file, approved_on=None))
    assert not stands(sealed(replace(file, translators=())))


def test_a_stamp_says_that_only_the_translation_changed() -> None:
    from chamberwise.engine.stamp.copies import Copy, Register
    from chamberwise.engine.stamp.verdict import Superseded

    base = approved_library()
    several = files(base)
    old = translated(base, "de", several).library
    new = translated(base, "de", [sealed(said(several[0], "Anders")), several[1]]).library
    content = content_digest(old, PATHWAY)
    code = stamp_of(content, "pocket-card.de")
    copy = Copy(code, PATHWAY, "Title", "2", "pocket-card.de", "A4", DAY, content)
    register = Register((copy,), {content: snapshot(old, PATHWAY)})
    told = Superseded(code, (copy,), content_digest(new, PATHWAY))
    shown = stamp_shown(told, new, register, TODAY)
    assert shown.changed[0].startswith("Only the translation changed")
    pathway = replace(old.pathways[PATHWAY], title="Other")
    source = replace(old.translation, sources={PATHWAY: "another"})  # type: ignore[type-var]
    other = Library(old.shared, {PATHWAY: pathway}, None, source)
    shown = stamp_shown(told, other, register, TODAY)
    assert not any(each.startswith("Only the translation") for each in shown.changed)
