"""What a drill file says that cannot be: names that are nothing, cues that tell, dead ends."""
