"""Line mode: one prompt, numbered answers, no cursor control; for pipes, speech and braille."""
