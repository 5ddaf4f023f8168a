"""Whether runs get better, by published sums whose every parameter is printed beside them."""
