"""How each tone looks: the sixteen colours of the user's own palette, and never colour alone."""

from __future__ import annotations

from chamberwise.tui.present.parts import Tone

LOOKS = {
    Tone.PLAIN: "",
    Tone.STRONG: "bold",
    Tone.CALM: "",
    Tone.KEY: "bold reverse",
    Tone.HEADING: "bold reverse",
    Tone.MARK: "bold underline",
    Tone.DANGER: "bold ansi_bright_white on ansi_red",
    Tone.WARNING: "bold ansi_black on ansi_bright_yellow",
    Tone.CAUTION: "bold ansi_black on ansi_yellow",
    Tone.NOTICE: "bold ansi_bright_white on ansi_blue",
    Tone.STALE: "bold ansi_magenta",
}
