"""What says on every page which paper this is and whether it still counts."""
