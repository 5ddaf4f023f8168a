"""What changed between two versions, told to whoever has to approve it."""
