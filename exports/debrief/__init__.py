"""The debrief of a drill: one page on screen and on paper."""
