"""Who stands for a content: an approval is given to one digest and counts for no other."""
