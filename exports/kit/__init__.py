"""The kit list: for the lid of the box and the trolley door."""
