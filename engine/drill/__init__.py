"""The drill: a scenario with a truth that nobody sees, a journal of what was done, and its debrief.

It rehearses recall, sequence, the timing of decisions and who does what; never operative skill.
"""
